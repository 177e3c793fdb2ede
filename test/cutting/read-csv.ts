/** Reads CSV text as RFC 4180 has it, written apart from the writer. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charAt(i);
    if (quoted && c === '"' && text.charAt(i + 1) === '"') { cell += '"'; i++; }
    else if (c === '"') quoted = !quoted;
    else if (!quoted && c === ',') { rows.at(-1)?.push(cell); cell = ''; }
    else if (!quoted && c === '\r' && text.charAt(i + 1) === '\n') { rows.at(-1)?.push(cell); cell = ''; rows.push([]); i++; }
    else cell += c;
  }
  rows.pop();
  return rows;
}
