import type { Nodes } from 'mdast';

/** Neighbouring texts become one, and empty ones go: what escapes a text looks at its neighbours. */
export function joinTexts<T extends Nodes>(nodes: readonly T[]): T[] {
  const joined: T[] = [];
  for (const node of nodes) {
    const last = joined.at(-1);
    if (node.type === 'text' && last?.type === 'text')
      joined[joined.length - 1] = { ...last, value: last.value + node.value };
    else if (!(node.type === 'text' && node.value === '')) joined.push(node);
  }
  return joined;
}
