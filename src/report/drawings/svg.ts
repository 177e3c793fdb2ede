import type { Element, ElementContent } from 'xast';
import { cleanText } from '../clean-text.js';

/** Attributes by their SVG names; numbers are rounded on the way in. */
export type Attributes = Readonly<Record<string, string | number>>;

/** A point on the sheet: x to the right, y downwards, in sheet units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * What a number right between two of them goes up by, hundredths: what its last bits hold differs from engine to
 * engine.
 */
const tie = 1e-6;

/** Numbers on a sheet keep two decimals, and never `-0`: the same plan always gives the same file. */
export function sheetNumber(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing was given ${value} as a coordinate`);
  return Math.round(value * 100 + tie) / 100 + 0;
}

/** One SVG element. The only other text in a drawing enters through `words`. */
export function shape(name: string, attributes: Attributes, children: readonly ElementContent[] = []): Element {
  const written: Record<string, string> = {};
  for (const [key, value] of Object.entries(attributes))
    written[key] = typeof value === 'number' ? String(sheetNumber(value)) : value;
  return { type: 'element', name, attributes: written, children: [...children] };
}

/** Text content, cleaned; it is escaped when the drawing is written. */
export const words = (text: string): ElementContent => ({ type: 'text', value: cleanText(text) });

/** The `d` of a path through points; closed when asked. */
export function pathOf(points: readonly Point[], closed = false): string {
  const steps = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${sheetNumber(p.x)} ${sheetNumber(p.y)}`);
  return steps.join(' ') + (closed ? ' Z' : '');
}

const references: Readonly<Record<string, string>> = { '&': '&#x26;', '<': '&#x3C;', '>': '&#x3E;', '"': '&#x22;' };
const escaped = (text: string): string =>
  /[&<>"]/u.test(text) ? text.replace(/[&<>"]/gu, (sign) => references[sign]!) : text;

/** An element as XML. Its names are the drawings' own; whatever else is in it is escaped. */
function written({ name, attributes, children }: Element): string {
  let text = `<${name}`;
  for (const key in attributes) text += ` ${key}="${escaped(attributes[key] ?? '')}"`;
  if (children.length === 0) return `${text} />`;
  text += '>';
  for (const child of children) {
    if (child.type === 'element') text += written(child);
    else if (child.type === 'text') text += escaped(child.value);
    else throw new TypeError(`a drawing holds ${child.type}`);
  }
  return `${text}</${name}>`;
}

/**
 * The file. A drawing is elements and texts and nothing else of XML; a library for all of it took a thirtieth of an
 * audit.
 */
export const writeSvg = (svg: Element): string => `${written(svg)}\n`;
