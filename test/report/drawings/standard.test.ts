import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { darkerFill, dash, ink, inTheDark, sheetWidth, softInk, textSize, typeface, paperFill, weight, woodFill } from '../../../src/report/drawings/drawing-standard.js';
import { overlap } from '../../../src/report/drawings/labels.js';
import { screenStyle } from '../../../src/report/html-style.js';
import { contactSheet } from '../../tools/contact-sheet.js';
import { groups } from '../../tools/contact-sheet-pictures.js';
import { labelsOf, readXml, sheetOf } from '../svg-reading.js';

const kinds = groups();
const pictures = kinds.flatMap(({ title, shown }) => shown.flatMap(({ caption, picture }) => (picture === null ? [] : [{ name: `${title}: ${caption}`, svg: picture.svg }])));

/** The white edge around letters, which is no line. */
const halo = 3;

describe('every kind of picture keeps to the one drawing standard', () => {
  it.each(pictures)('$name', ({ svg }) => {
    const { tags } = readXml(svg);
    const used = (attribute: string): ReadonlySet<string> => new Set(tags.map(({ attributes }) => attributes[attribute]).filter((value): value is string => value !== undefined));
    const within = (attribute: string, allowed: readonly (string | number)[]): void => expect([...used(attribute)].filter((value) => !allowed.map(String).includes(value)), attribute).toEqual([]);
    within('stroke-width', [...Object.values(weight), halo]);
    within('stroke-dasharray', Object.values(dash));
    within('stroke', [ink, softInk, darkerFill, paperFill]);
    within('fill', [ink, softInk, woodFill, darkerFill, paperFill, 'none']);
    within('font-size', Object.values(textSize));
    within('font-family', [typeface]);
  });

  it.each(pictures)('carries its own white, so that it reads wherever it is shown, and fetches nothing: $name', ({ svg }) => {
    const { tags } = readXml(svg);
    const { width, height } = sheetOf(svg);
    expect(width).toBe(sheetWidth);
    const [ground] = tags.filter(({ name }) => !['svg', 'title', 'desc'].includes(name));
    expect(ground).toMatchObject({ name: 'rect', attributes: { x: '0', y: '0', width: String(width), height: String(height), fill: '#fff' } });
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/href|url\(|http|@import|currentColor/u);
  });

  it.each(pictures)('no label on another or off the sheet: $name', ({ svg }) => {
    const labels = labelsOf(svg);
    const { width, height } = sheetOf(svg);
    const off = labels.filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height);
    expect(off.map(({ text }) => text)).toEqual([]);
    expect(labels.flatMap((a, i) => labels.slice(i + 1).filter((b) => overlap(a.box, b.box) >= 1).map((b) => `${a.text} on ${b.text}`))).toEqual([]);
  });

  it('inches alone in pictures of plans in inches, millimetres alone in the others', () => {
    for (const { title, shown } of kinds) {
      for (const { caption, picture } of shown) {
        const said = picture === null ? '' : labelsOf(picture.svg).map(({ text }) => text).join('\n');
        expect(said, `${title}: ${caption}`).not.toMatch(caption.includes('inches') ? /\d (?:mm|N|kg)\b/u : /\d (?:lbf|lb)\b|\d in(?![a-z ])/u);
      }
    }
  });
});

describe('on a dark page', () => {
  /** Contrast of two greys by WCAG 2.2, relative luminance. */
  const contrast = (a: string, b: string): number => {
    const [low, high] = [a, b].map(luminance).sort((x, y) => x - y) as [number, number];
    return (high + 0.05) / (low + 0.05);
  };
  const luminance = (colour: string): number => {
    const digits = colour.length === 4 ? [...colour.slice(1)].map((d) => d + d) : (colour.slice(1).match(/../gu) ?? []);
    const linear = digits.map((d) => parseInt(d, 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * (linear[0] ?? 0) + 0.7152 * (linear[1] ?? 0) + 0.0722 * (linear[2] ?? 0);
  };
  const dark = (colour: string): string => inTheDark[colour] ?? expect.fail(`${colour} has no counterpart`);

  it.each([ink, softInk].flatMap((line) => [paperFill, woodFill, darkerFill].map((fill) => [line, fill] as const)))('%s on %s keeps 4.5:1, light and dark', (line, fill) => {
    expect(contrast(line, fill)).toBeGreaterThan(4.5);
    expect(contrast(dark(line), dark(fill))).toBeGreaterThan(4.5);
  });

  it('every colour of every picture gives way on the page', () => {
    for (const colour of [ink, softInk, paperFill, woodFill, darkerFill]) {
      expect(screenStyle).toContain(`figure svg [fill="${colour}"] { fill: ${dark(colour)}; }`);
      expect(screenStyle).toContain(`figure svg [stroke="${colour}"] { stroke: ${dark(colour)}; }`);
    }
  });
});

describe('the contact sheet', () => {
  const sheet = contactSheet();

  it('holds them all, each with ids of its own', () => {
    const { tags } = readXml(sheet);
    expect(tags.filter(({ name }) => name === 'svg')).toHaveLength(1 + pictures.length);
    const ids = tags.flatMap(({ attributes }) => attributes['id'] ?? []);
    expect(ids).toHaveLength(2 * pictures.length);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { attributes } of tags) for (const id of attributes['aria-labelledby']?.split(' ') ?? []) expect(ids).toContain(id);
  });

  it('is the same every time and small enough to open', () => {
    expect(contactSheet()).toBe(sheet);
    expect(sheet.length).toBeLessThan(1.5e6);
  });
});

it('shows every drawing on the contact sheet: one that is not there is measured by nobody', () => {
  const here = (path: string): string => new URL(path, import.meta.url).pathname;
  const folder = here('../../../src/report/drawings');
  const shown = ['../../tools/contact-sheet-pictures.ts', '../../../src/report/sections/board-pictures.ts'].map((file) => readFileSync(here(file), 'utf8')).join('\n');
  const drawings = readdirSync(folder).filter((name) => name !== 'picture.ts' && readFileSync(`${folder}/${name}`, 'utf8').includes('finishPicture('));
  expect(drawings.length).toBeGreaterThan(8);
  expect(drawings.filter((name) => !shown.includes(`drawings/${name.replace(/\.ts$/, '.js')}'`))).toEqual([]);
});
