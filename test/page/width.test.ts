import { describe, expect, test } from 'vitest';
import { paper, phone, tablet } from './browser.js';
import { seenTexts, tooWide } from './in-page.js';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

describe('nothing runs off the side', () => {
  test('a page that is too wide is seen to be', async () => {
    const { page } = await browser().open(pages().nook.file);
    await page.evaluate(() => {
      const wide = document.createElement('p');
      wide.textContent = 'x'.repeat(200);
      wide.style.whiteSpace = 'nowrap';
      wide.style.width = '1000px';
      document.querySelector('main')?.append(wide);
    });
    const found = await page.evaluate(tooWide);
    expect(found.page_px).toBeGreaterThan(600);
    expect(found.over.join()).toContain('xxx');
    await page.close();
  });

  test.each([
    ['a phone of 360 px', { viewport: phone }],
    ['a tablet of 768 px', { viewport: tablet }],
    ['A4 between its margins', { viewport: paper, media: 'print' }],
  ] as const)('on %s', async (_, look) => {
    for (const { name, file } of [...pages().all, pages().room, ...pages().others]) {
      const { page } = await browser().open(file, look);
      expect({ name, ...(await page.evaluate(tooWide)) }).toEqual({ name, page_px: 0, over: [] });
      await page.close();
    }
  });
});

describe('on a phone', () => {
  test('no table has to be pushed sideways to be read', async () => {
    for (const { name, file } of [...pages().all, pages().room, ...pages().others]) {
      const { page } = await browser().open(file, { viewport: phone });
      await page.evaluate(() => document.querySelectorAll('details').forEach((folded) => (folded.open = true)));
      const pushed = await page.locator('.wide').evaluateAll((frames) => frames.filter((frame) => frame.scrollWidth > frame.clientWidth + 1).map((frame) => `${frame.ariaLabel}: ${frame.scrollWidth} in ${frame.clientWidth}`));
      expect(pushed, name).toEqual([]);
      await page.close();
    }
  });


  test('letters are 11 px or more, in drawings too', async () => {
    for (const { name, file } of [...pages().all, pages().room, ...pages().others]) {
      const { page } = await browser().open(file, { viewport: phone });
      await page.evaluate(() => document.querySelectorAll('details').forEach((folded) => (folded.open = true)));
      const seen = await page.evaluate(seenTexts);
      expect(seen.filter(({ size_px }) => size_px < 10.99).map(({ words, size_px }) => `${words}: ${size_px}`), name).toEqual([]);
      await page.close();
    }
  });
});
