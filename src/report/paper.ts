import type { Element, ElementContent } from 'hast';

/** A part of the page: its heading and what stands under it. */
export interface PagePart {
  readonly id: string;
  readonly name: string;
  readonly children: readonly Element[];
}

/** Pictures that go on paper: the frame with its sizes, the boards to cut, and where each board goes. The others show in lines what stands beside them in words. */
const picturesOnPaper: ReadonlySet<string> = new Set(['front.svg', 'boards.svg', 'boards-2.svg', 'boards-3.svg']);

/** Pictures, headings and parts that say how to cut and build: kept off the paper of a plan that must not be cut, so that nobody takes it to the saw. */
const forTheSaw: ReadonlySet<string> = new Set(['boards.svg', 'boards-2.svg', 'boards-3.svg', 'At the saw, in this order', 'Stretching', 'Order of work']);

/** Parts of which only the paragraphs in bold go on paper: the rest is read once, at a desk, and what can be done stands under the changes. */
const onlyBold: ReadonlySet<string> = new Set(['Will it warp or twist?']);

/** Parts that stay on the screen whole, read at a desk as well. */
const leftOff: ReadonlySet<string> = new Set(['What if I am a little off?', 'What this rests on']);

/** The part with the verdict, the part whose lines are checks, and the part that says every check that is not clear with what to do about it. */
const verdict = 'Verdict';
const checks = 'The checks';
const advice = 'What to change';

/** Class of what is shown on the screen only. */
export const screenOnly = 'screen';

/**
 * Marks what stays on the screen, so that the paper holds what one needs beside the bench: the verdict, every check that is not clear,
 * the lists, the sheets, the cautions and the blanks. Nothing that is not clear is left off.
 */
export function forPaper(parts: readonly PagePart[]): readonly PagePart[] {
  const advised = wordsOf(parts.filter(({ name }) => name === advice || name === verdict).flatMap(({ children }) => children));
  const last = lastPlaces(parts);
  const stopped = mustNotBeCut(parts);
  return parts.map((part) => {
    const listed = part.name === checks && part.children.some(({ tagName }) => tagName === 'ul');
    let under = part.name;
    const marked = part.children.map((block) => {
      if (isHeading(block)) under = words(block);
      if (leftOff.has(part.name) || (stopped && [part.name, under, pictureName(block)].some((name) => forTheSaw.has(name)))) return off(block);
      if (isHeading(block)) return block;
      if (listed && block.tagName === 'ul') return unsaid(block, advised);
      if (onlyBold.has(part.name) && (block.tagName === 'ul' || !hasBold(block))) return off(block);
      if (isPicture(block)) return picturesOnPaper.has(pictureName(block)) || pictureName(block).startsWith('place') ? block : off(block);
      return block.tagName === 'p' && (listed || part.name === verdict || last.get(words(block)) !== block) ? off(block) : block;
    });
    return { ...part, children: bareHeadings(marked) };
  });
}

/** True when the verdict is a stop: the sentence set apart in the first part begins with that word. */
const mustNotBeCut = (parts: readonly PagePart[]): boolean => /^Stop:/u.test(words(parts[0]?.children.find(({ tagName }) => tagName === 'blockquote') ?? nothing));

/** What the paper says of what it leaves off; null when it leaves off nothing. */
export function paperNote(parts: readonly PagePart[]): string | null {
  const short = parts.filter(({ children }) => children.some(leavesOff));
  if (short.length === 0) return null;
  const clear = short.filter(({ name }) => name === checks).flatMap(({ children }) => children).flatMap(lines).filter((line) => isClear(words(line))).length;
  const names = short.map(({ name }) => `“${name}”`);
  const and = names.length === 1 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
  const cut = mustNotBeCut(parts) ? ' How to cut and build it is left off too, because it must not be cut as it stands.' : '';
  return `Shortened for paper. Every check that is not clear stands above${clear === 0 ? '' : `; the ${clear} that are clear stand on the screen only`}.${cut} The page on the screen says more under ${and}.`;
}

/** True for what is marked to stay on the screen. */
export const isOff = (node: Element): boolean => Array.isArray(node.properties['className']) && node.properties['className'].includes(screenOnly);

const off = (node: Element): Element => ({ ...node, properties: { ...node.properties, className: [screenOnly] } });
const leavesOff = (node: Element): boolean => isOff(node) || elementsIn(node).some(leavesOff);

/** Of a list of checks only the lines that are not clear and that the advice has not said word for word. */
function unsaid(list: Element, advised: string): Element {
  const children = list.children.map((line) => (line.type === 'element' && (isClear(words(line)) || advised.includes(said(words(line)))) ? off(line) : line));
  const marked = { ...list, children };
  return lines(marked).every(isOff) ? off(marked) : marked;
}

/** The sentence of a check without the verdict before it and the place behind it. */
const said = (line: string): string => line.replace(/^(?:Caution|Unknown|Stop)(?:, [^:]*)?: /u, '').replace(/ \([^()]*\)$/u, '');
const isClear = (line: string): boolean => /^Clear[,:]/u.test(line);

/** A heading under which nothing is left goes too. */
function bareHeadings(blocks: readonly Element[]): readonly Element[] {
  return blocks.map((block, i) => {
    if (!isHeading(block) || isOff(block)) return block;
    const rest = blocks.slice(i + 1);
    const end = rest.findIndex((next) => isHeading(next) && next.tagName <= block.tagName);
    return (end < 0 ? rest : rest.slice(0, end)).every((under) => isOff(under) || isHeading(under)) ? off(block) : block;
  });
}

/** Where each paragraph stands for the last time: a sentence said in several parts is printed once. */
function lastPlaces(parts: readonly PagePart[]): ReadonlyMap<string, Element> {
  const last = new Map<string, Element>();
  for (const { children } of parts) for (const block of children) if (block.tagName === 'p') last.set(words(block), block);
  return last;
}

const nothing: Element = { type: 'element', tagName: 'p', properties: {}, children: [] };
const isHeading = ({ tagName }: Element): boolean => /^h[1-3]$/u.test(tagName);
const elementsIn = (node: Element): readonly Element[] => node.children.filter((child): child is Element => child.type === 'element');
const lines = (block: Element): readonly Element[] => elementsIn(block).filter(({ tagName }) => tagName === 'li');
const hasBold = (node: Element): boolean => node.tagName === 'strong' || elementsIn(node).some(hasBold);
const isPicture = ({ tagName, children }: Element): boolean => tagName === 'p' && children.length === 1 && children[0]?.type === 'element' && children[0].tagName === 'img';
const pictureName = (block: Element): string => (isPicture(block) ? String(elementsIn(block)[0]?.properties['src'] ?? '') : '');
const wordsOf = (nodes: readonly ElementContent[]): string => nodes.map(words).join('\n');

/** The text of a node with its white space as one reads it. */
export const words = (node: ElementContent): string => plain(node).replace(/\s+/gu, ' ').trim();
const plain = (node: ElementContent): string => (node.type === 'text' ? node.value : node.type === 'element' ? node.children.map(plain).join('') : '');
