import type { Nodes, PhrasingContent, RootContent, Text } from 'mdast';
import { anchors } from './anchors.js';
import { joinTexts } from './join-texts.js';

/** Blocks in which the name of a part, in quotes, leads to that part. Headings stay as they are. */
export const linkedParts = (blocks: readonly RootContent[]): RootContent[] => linkerTo(titlesOf(blocks))(blocks);

/** The names of the parts, in their order. */
export const titlesOf = (blocks: readonly RootContent[]): readonly string[] =>
  blocks.flatMap((block) => (block.type === 'heading' && block.depth === 2 ? [plain(block)] : []));

/** The same for some of the blocks of a document whose parts have these names. */
export function linkerTo(titles: readonly string[]): (blocks: readonly RootContent[]) => RootContent[] {
  const addresses = new Map(
    [...anchors(titles).entries()].map(([i, address]) => [titles[i] ?? '', address] as const).reverse(),
  );
  const link = (node: Text): PhrasingContent[] => {
    if (!node.value.includes('“')) return [node];
    return node.value.split(/(?<=“)([^“”]+)(?=”)/u).map((piece, i): PhrasingContent => {
      const address = i % 2 === 1 ? addresses.get(piece) : undefined;
      return address === undefined
        ? { type: 'text', value: piece }
        : { type: 'link', url: `#${address}`, children: [{ type: 'text', value: piece }] };
    });
  };
  const within = <T extends Nodes>(node: T): T => {
    if (node.type === 'heading' || node.type === 'link' || !('children' in node)) return node;
    const children: Nodes[] = [];
    for (const child of node.children) {
      if (child.type === 'text') children.push(...link(child));
      else children.push(within(child));
    }
    // Most parts name no other: they stay the very parts that were given.
    const joined = joinTexts(children);
    const same = joined.length === node.children.length && joined.every((child, i) => child === node.children[i]);
    return same ? node : { ...node, children: joined };
  };
  return (blocks) => blocks.map(within);
}

const plain = (node: Nodes): string =>
  'value' in node ? node.value : 'children' in node ? node.children.map(plain).join('') : '';
