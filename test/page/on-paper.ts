/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
// What runs inside the page. The function is sent there by itself, so it may use nothing from outside it.

/** What is wrong with the text of a page as it lies on paper, and how high its card is, in CSS pixels. */
export interface OnPaper {
  readonly texts: number;
  /** Texts that reach past the sheet or out of their cell. */
  readonly clipped: readonly string[];
  /** Pairs of texts that lie on each other. */
  readonly overlapped: readonly string[];
  /** Words broken over two lines. */
  readonly broken: readonly string[];
  /** Numbers on another line than their unit. */
  readonly parted: readonly string[];
  /** Null where the page has no card. */
  readonly card_px: number | null;
}

/** Measures every text that is shown. */
export function onPaper(): OnPaper {
  const wide = document.documentElement.clientWidth;
  const clipped: string[] = [];
  const broken: string[] = [];
  const parted: string[] = [];
  const boxes: { readonly words: string; readonly box: DOMRect }[] = [];
  const rectsOf = (node: Node, from: number, to: number): readonly DOMRect[] => {
    const range = document.createRange();
    range.setStart(node, from);
    range.setEnd(node, to);
    return [...range.getClientRects()].filter(({ width, height }) => width > 0 && height > 0);
  };
  const lines = (rects: readonly DOMRect[]): number => new Set(rects.map(({ top }) => Math.round(top))).size;
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const text = node.nodeValue ?? '';
    // Lettering of drawings is measured where they are drawn; what only ears shall find is clipped on purpose.
    const hidden = node.parentElement === null || node.parentElement.closest('svg, style') !== null || getComputedStyle(node.parentElement).clipPath !== 'none';
    if (text.trim() === '' || hidden) continue;
    const rects = rectsOf(node, 0, text.length);
    if (rects.length === 0) continue;
    const words = text.trim().slice(0, 60);
    const cell = node.parentElement?.closest('td, th') ?? null;
    if (rects.some(({ left, right }) => left < -1 || right > wide + 1) || (cell !== null && cell.scrollWidth > cell.clientWidth + 1)) clipped.push(words);
    for (const box of rects) boxes.push({ words, box });
    for (const word of text.matchAll(/[\p{L}\d]+/gu)) if (lines(rectsOf(node, word.index, word.index + word[0].length)) > 1) broken.push(word[0]);
    for (const amount of text.matchAll(/\d\s(?:mm|in|ft|kg|lb|N|Hz|%|°|ml)(?![\p{L}\d])/gu)) if (lines(rectsOf(node, amount.index, amount.index + amount[0].length)) > 1) parted.push(amount[0]);
  }
  boxes.sort((a, b) => a.box.top - b.box.top);
  const overlapped: string[] = [];
  boxes.forEach(({ words, box }, i) => {
    for (let j = i + 1; j < boxes.length && (boxes[j] as (typeof boxes)[0]).box.top < box.bottom - 3; j++) {
      const other = boxes[j] as (typeof boxes)[0];
      if (other.box.left < box.right - 2 && other.box.right > box.left + 2) overlapped.push(`${words} / ${other.words}`);
    }
  });
  return { texts: boxes.length, clipped, overlapped, broken, parted, card_px: document.querySelector('.card')?.getBoundingClientRect().height ?? null };
}
