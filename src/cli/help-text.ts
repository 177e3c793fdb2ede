import type { Help } from 'commander';

/** Help is no wider than this, and narrower on a narrow terminal. */
const widest = 80;
const narrowest = 40;

/** Columns that help may take here. */
export const helpWidth = (): number =>
  Math.max(narrowest, Math.min(widest, process.stdout.columns ?? (Number(process.env['COLUMNS']) || widest)));

/** How help is laid out: descriptions wrap beside their names on a narrow terminal as well. */
export const helpLayout: Partial<Help> = { minWidthToWrap: 24, sortSubcommands: false };

/**
 * One line of text, wrapped; what goes on is indented as its line is, a command by more and with the sign by which a
 * shell reads on.
 */
function wrapped(line: string, width: number): readonly string[] {
  if (line.length <= width) return [line];
  const indent = /^ */u.exec(line)?.[0] ?? '';
  const command = line.trimStart().startsWith('sightdown ');
  const [room, more] = command ? [width - 2, `${indent}  `] : [width, indent];
  const lines: string[] = [];
  let now = indent;
  for (const word of line.trim().match(/(?:"[^"]*"|\S)+/gu) ?? []) {
    const next = now.trim() === '' ? `${now}${word}` : `${now} ${word}`;
    if (next.length > room && now.trim() !== '') {
      lines.push(command ? `${now} \\` : now);
      now = `${more}${word}`;
    } else now = next;
  }
  return [...lines, now];
}

/** Lines that belong to one paragraph as one; what is indented, and what follows a heading, stays by itself. */
function paragraphs(text: string): readonly string[] {
  const lines: string[] = [];
  for (const line of text.split('\n')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && line !== '' && ![last, line].some((one) => one.startsWith(' ')) && !last.endsWith(':'))
      lines.push(`${lines.pop()} ${line}`);
    else lines.push(line);
  }
  return lines;
}

/** Text for under a command's help, wrapped to the terminal when it is shown. */
export const under =
  (text: string): (() => string) =>
  () =>
    paragraphs(text)
      .flatMap((line) => wrapped(line, helpWidth()))
      .join('\n');
