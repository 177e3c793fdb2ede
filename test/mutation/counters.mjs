/**
 * A source text in which every place of a fault sets its number in a global list when it is reached. Places may lie
 * within each other, never across.
 */
export function withCounters(source, faults) {
  const opening = new Map();
  const closing = new Map();
  const add = (map, at, text) => map.set(at, [...(map.get(at) ?? []), text]);
  const reached = (n) => `globalThis.faultsReached[${n}]=1`;
  /** The widest first, so that at one place the outer opens first and closes last. */
  for (const { start, end, kind, n } of [...faults].sort((p, q) => q.end - q.start - (p.end - p.start))) {
    if (kind === 'extreme') {
      /** The name after `Math.`: the dot gives way to brackets. */
      add(opening, start, `[(${reached(n)},'`);
      add(closing, end, "')]");
      continue;
    }
    add(opening, start, `(${reached(n)},`);
    closing.set(end, [')', ...(closing.get(end) ?? [])]);
  }
  let text = '';
  for (let at = 0; at <= source.length; at++) {
    text += (closing.get(at) ?? []).join('') + (opening.get(at) ?? []).join('');
    if (!(source[at] === '.' && opening.get(at + 1)?.[0]?.startsWith('['))) text += source[at] ?? '';
  }
  return text;
}
