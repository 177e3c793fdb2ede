import { describe, expect, test } from 'vitest';
import { contrast, isGrey, readColour } from './colours.js';
import { paints, seenTexts, unfold } from './in-page.js';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

/** Least contrast of text of any size: WCAG 2.2, success criterion 1.4.3 at level AA (from memory). */
const least = 4.5;

describe('text stands out from what is behind it', () => {
  test('the measure agrees with known pairs: black on white 21, #767676 on white just passes, #777777 just does not (memory)', () => {
    const white = readColour('rgb(255, 255, 255)');
    expect(contrast(white, readColour('rgb(0, 0, 0)'))).toBeCloseTo(21, 9);
    expect(contrast(readColour('rgb(118, 118, 118)'), white)).toBeGreaterThan(least);
    expect(contrast(readColour('rgb(119, 119, 119)'), white)).toBeLessThan(least);
    expect(contrast(white, white)).toBe(1);
  });

  test('pale words are found, on the page and in a drawing', async () => {
    const { page } = await browser().open(pages().nook.file);
    await page.evaluate(() => {
      const title = document.querySelector('h1');
      const label = document.querySelector<SVGTextElement>('main svg text');
      if (title !== null) title.style.color = '#999';
      if (label !== null) label.style.fill = '#bbb';
    });
    const pale = (await page.evaluate(seenTexts)).filter(({ ink, ground }) => contrast(readColour(ink), readColour(ground)) < least);
    expect(new Set(pale.map(({ drawn }) => drawn))).toEqual(new Set([true, false]));
    await page.close();
  });

  test.each([['by day', { scheme: 'light' }], ['in the dark', { scheme: 'dark' }], ['on paper', { media: 'print' }], ['on paper, from a dark screen', { media: 'print', scheme: 'dark' }]] as const)('%s at least 4.5 to 1 (WCAG AA), words of drawings included', async (_, look) => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file, look);
      const seen = await page.evaluate(seenTexts);
      expect(seen.filter(({ drawn }) => drawn).length).toBeGreaterThan(5);
      expect(seen.filter(({ drawn }) => !drawn).length).toBeGreaterThan(150);
      const weak = seen.filter(({ ink, ground }) => contrast(readColour(ink), readColour(ground)) < least);
      expect({ name, weak }).toEqual({ name, weak: [] });
      await page.close();
    }
  });

  test('the page is dark when the reader asks for dark, and its drawings with it; on paper both are white', async () => {
    const black = readColour('rgb(0, 0, 0)');
    for (const { file } of pages().all) {
      for (const media of ['screen', 'print'] as const) {
        const { page } = await browser().open(file, { media, scheme: 'dark' });
        const [body, drawing] = await page.evaluate(() =>
          [document.body, document.querySelector('figure svg rect')].map((e) =>
            e === null ? '' : e instanceof SVGElement ? getComputedStyle(e).fill : getComputedStyle(e).backgroundColor));
        for (const ground of [body ?? '', drawing ?? '']) {
          if (media === 'screen') expect(contrast(readColour(ground), black)).toBeLessThan(1.3);
          else expect(readColour(ground)).toEqual(readColour('rgb(255, 255, 255)'));
        }
        await page.close();
      }
    }
  });
});

describe('nothing hangs on colour', () => {
  test('on paper everything is black, white or grey, so a black-and-white printer loses nothing', async () => {
    for (const { name, file } of pages().all) {
      for (const scheme of ['light', 'dark'] as const) {
        const { page } = await browser().open(file, { media: 'print', scheme });
        const found = await page.evaluate(paints);
        expect(found.length).toBeGreaterThan(3);
        expect({ name, coloured: found.filter((css) => !isGrey(readColour(css))) }).toEqual({ name, coloured: [] });
        await page.close();
      }
    }
  });

  test('the verdict is a word, in the head line of the page’s first part and in every check', async () => {
    for (const { file, said } of pages().all) {
      const { page } = await browser().open(file);
      await page.evaluate(unfold);
      const word = /^(?:\S )?(CLEAR|CAUTION|UNKNOWN|STOP) /mu.exec(said)?.[1] ?? 'no verdict';
      const verdict = page.getByRole('region', { name: 'Verdict', exact: true });
      expect(await verdict.getByRole('blockquote').first().innerText()).toMatch(new RegExp(`^[●▲◆✕]\\s${word}: `, 'iu'));
      const checks = await page.getByRole('region', { name: 'The checks', exact: true }).getByRole('listitem').allInnerTexts();
      expect(checks.length).toBeGreaterThan(20);
      expect(checks.filter((line) => !/^(?:●\sClear|▲\sCaution|◆\sUnknown|✕\sStop)[,:]/u.test(line))).toEqual([]);
      await page.close();
    }
  });
});
