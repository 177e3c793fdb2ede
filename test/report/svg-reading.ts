import { textWidth, type Box } from '../../src/report/drawings/labels.js';
import type { Point } from '../../src/report/drawings/svg.js';

/** One element of a drawing as written. */
export interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

const entity: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Characters behind XML references; anything else with an ampersand is an error. */
export function unescaped(text: string): string {
  return text.replace(/&(#x[0-9a-f]+|#\d+|[a-z]+);|&/giu, (whole, name: string | undefined) => {
    if (name?.startsWith('#x') === true || name?.startsWith('#X') === true) return String.fromCodePoint(Number.parseInt(name.slice(2), 16));
    if (name?.startsWith('#') === true) return String.fromCodePoint(Number(name.slice(1)));
    const known = name === undefined ? undefined : entity[name];
    if (known === undefined) throw new Error(`a bare ampersand or an unknown reference: ${whole}`);
    return known;
  });
}

/** Reads strict XML: quoted attributes, balanced tags, nothing raw. Throws where a file breaks one of these rules. */
export function readXml(xml: string): { readonly tags: readonly Tag[]; readonly texts: readonly { readonly inside: string; readonly text: string }[] } {
  const tags: Tag[] = [];
  const texts: { inside: string; text: string }[] = [];
  const open: string[] = [];
  const token = /<(\/?)([a-z]+)((?:\s+[a-z:-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/giuy;
  let at = 0;
  while (at < xml.length) {
    token.lastIndex = at;
    const found = token.exec(xml);
    if (found === null) throw new Error(`not XML at ${at}: ${xml.slice(at, at + 40)}`);
    at = token.lastIndex;
    const [, closing = '', name = '', attributes = '', selfClosing = '', text] = found;
    if (text !== undefined) texts.push({ inside: open.at(-1) ?? '', text: unescaped(text) });
    else if (closing === '/') {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
    } else {
      tags.push({ name, attributes: Object.fromEntries([...attributes.matchAll(/([a-z:-]+)="([^"]*)"/giu)].map(([, key = '', value = '']) => [key, unescaped(value)])) });
      if (selfClosing !== '/') open.push(name);
    }
  }
  if (open.length > 0) throw new Error(`never closed: ${open.join(' ')}`);
  return { tags, texts };
}

/** Corner points of every path of a drawing, or of its closed outlines alone. */
export function pathsOf(svg: string, closedOnly = false): readonly (readonly Point[])[] {
  return readXml(svg).tags.filter(({ name, attributes }) => name === 'path' && (!closedOnly || attributes['d']?.endsWith('Z') === true)).map(({ attributes }) =>
    [...(attributes['d'] ?? '').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(([, x, y]) => ({ x: Number(x), y: Number(y) })));
}

/** Width and height of the box around points. */
export function sizeOf(points: readonly Point[]): { readonly width: number; readonly height: number } {
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  return { width: span(points.map((p) => p.x)), height: span(points.map((p) => p.y)) };
}

/** Every label with the rectangle it takes, worked out again from the written file. */
export function labelsOf(svg: string): readonly { readonly text: string; readonly box: Box }[] {
  const { tags, texts } = readXml(svg);
  const written = texts.filter(({ inside }) => inside === 'text');
  return tags.filter(({ name }) => name === 'text').map(({ attributes: a }, i) => {
    const text = written[i]?.text ?? '';
    const size = Number(a['font-size']);
    const long = textWidth(text, size);
    const tall = size * 0.9;
    const before = a['text-anchor'] === 'start' ? 0 : a['text-anchor'] === 'middle' ? long / 2 : long;
    const turn = /rotate\(-90 (-?[\d.]+) (-?[\d.]+)\)/u.exec(a['transform'] ?? '');
    if (turn !== null) return { text, box: { x: Number(turn[1]) - tall / 2, y: Number(turn[2]) - (long - before), width: tall, height: long } };
    return { text, box: { x: Number(a['x']) - before, y: Number(a['y']) - size * 0.35 - tall / 2, width: long, height: tall } };
  });
}

/** Size of the sheet. */
export function sheetOf(svg: string): { readonly width: number; readonly height: number } {
  const root = readXml(svg).tags[0];
  return { width: Number(root?.attributes['width']), height: Number(root?.attributes['height']) };
}
