import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { setInText } from '../../src/base/yaml-edit.js';

const text = `# A shelf for the hall
plan: 1
name: "Hall, left"        # as one enters
face: { width: 900 mm, height: 60 cm }   # outside

bars:
  stock: strip-19x38   # what was there
  # the wide side out
  lay: edge
crossbars:
  - { runs: upright, at: 1/2 }   # one
  - runs: level # two
corners: { nails: none }
`;

describe('one value changed in a text', () => {
  test('leaves every other character where it was', () => {
    expect(setInText(text, ['face', 'width'], '35-3/8 in')).toBe(text.replace('900 mm', '35-3/8 in'));
    expect(setInText(text, ['bars', 'lay'], 'flat')).toBe(text.replace('lay: edge', 'lay: flat'));
    expect(setInText(text, ['crossbars', 1, 'runs'], 'upright')).toBe(text.replace('runs: level', 'runs: upright'));
  });

  test.each(['a, b', '}', '# no', 'yes: no', "it's", '"', '', ' x', '12', 'null', '[1]', '{ a: b }', '- a', '2 ft 11 in', 'é'])('quotes %j so that it reads back as itself', (value) => {
    for (const path of [['name'], ['face', 'height'], ['bars', 'stock']]) {
      const changed = setInText(text, path, value) as string;
      const read = parse(changed) as Record<string, unknown>;
      expect(path.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], read)).toBe(value);
    }
  });

  test('makes the blocks that are missing, on one line', () => {
    expect(setInText(text, ['cloth', 'fixing', 'every'], '40 mm')).toBe(`${text}cloth: { fixing: { every: 40 mm } }\n`);
    expect(setInText(text, ['corners', 'nails', 'each'], 2)).toContain('corners: { nails: { each: 2 } }');
    expect(setInText(text, ['crossbars', 2], { runs: 'level', at: '1/3' })).toContain('  - { runs: level, at: 1/3 }\n');
    expect(setInText(text, ['boards', 0], { for: 'top' })).toBe(`${text}boards:\n  - { for: top }\n`);
  });

  test('takes a value away, and what is left empty with it, but no comment', () => {
    expect(parse(setInText(text, ['corners', 'nails'], undefined) as string)).not.toHaveProperty('corners');
    const less = setInText(text, ['bars', 'stock'], undefined) as string;
    expect(less).toContain('# what was there');
    expect(parse(less)).toMatchObject({ bars: { lay: 'edge' } });
    const none = setInText(setInText(text, ['crossbars', 0], undefined) as string, ['crossbars', 0], undefined) as string;
    expect(parse(none)).not.toHaveProperty('crossbars');
    for (const note of ['# one', '# two']) expect(none).toContain(note);
    expect(setInText(text, ['never', 'there'], undefined)).toBe(text);
  });

  test('keeps its hands off what it cannot change', () => {
    expect(setInText('a: [', ['a'], 1)).toBeNull();
    expect(setInText('- a\n', ['a'], 1)).toBeNull();
    expect(setInText('a: &x { b: 1 }\nc: *x\n', ['c', 'b'], 2)).toBeNull();
    expect(setInText('a: &x { b: 1 }\nc: *x\n', ['c'], 2)).toBeNull();
  });
});
