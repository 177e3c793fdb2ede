import { expect, test } from 'vitest';
import { texts } from './sources.js';

const columns = 120;

/** A text, a pattern or a piece of one that runs past the margin: it is not broken, because it is read or searched for as one. */
const holdsText = (line: string): boolean => /['"`].{30,}|\/[^/*\s].{30,}\/[gimuy]*/u.test(line);

/** Lines past the margin that hold no long text of their own, and do not stand inside one that began above. */
function tooLong(text: string): readonly number[] {
  let inside = false;
  return text.split('\n').flatMap((line, i) => {
    const began = inside;
    if ((line.replaceAll('\\`', '').match(/`/gu) ?? []).length % 2 === 1) inside = !inside;
    return line.length > columns && !began && !inside && !holdsText(line) ? [i + 1] : [];
  });
}

test('lines end within 120 columns, but for a text that is not broken: `npm run format` breaks them', () => {
  const found = [...texts].flatMap(([file, text]) => tooLong(text).map((line) => `${file}:${line}`));
  expect(found).toEqual([]);
});

test('a line that is too long is found', () => {
  expect(tooLong(`const a = ${'b + '.repeat(40)}c;`)).toEqual([1]);
  expect(tooLong(`const a = '${'b '.repeat(80)}';`)).toEqual([]);
  expect(tooLong(`const a = \`\n${'b '.repeat(80)}\n\`;`)).toEqual([]);
});
