import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { paper } from './browser.js';
import { checkLines, headings, seenTexts } from './in-page.js';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

/** Sheets of A4 the page prints on, counted in the PDF that the browser makes of it. */
async function sheets(page: Page): Promise<number> {
  await page.emulateMedia({ media: null });
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect([...new Set(pdf.match(/\/MediaBox ?\[[^\]]*\]/gu))].join()).toMatch(/^\/MediaBox ?\[0 0 59[4-6](?:\.\d+)? 84[1-2](?:\.\d+)?\]$/u);
  return (pdf.match(/\/Type ?\/Page\b/gu) ?? []).length;
}

const pt = (px: number): number => (px * 72) / 96;
const onPaper = { media: 'print', viewport: paper } as const;
/** What a check says, without verdict, share and place. */
const sentence = (line: string): string => line.replace(/^\w+(?:, [^:]*)?: /u, '').replace(/ \([^()]*\)$/u, '');

describe('on paper', () => {
  test('both examples print on two sheets of A4; a plan that says everything on four at most', async () => {
    for (const [{ name, file }, most] of [[pages().nook, 2], [pages().stairwell, 2], [pages().everything, 4]] as const) {
      const { page } = await browser().open(file);
      expect(await sheets(page), name).toBeLessThanOrEqual(most);
      await page.close();
    }
  });

  test('letters are 8 pt or more; in drawings 6 pt or more', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file, onPaper);
      const seen = await page.evaluate(seenTexts);
      const small = (drawn: boolean): number => Math.min(...seen.filter((text) => text.drawn === drawn).map(({ size_px }) => pt(size_px)));
      expect(small(false), name).toBeGreaterThanOrEqual(7.99);
      expect(small(true), name).toBeGreaterThanOrEqual(6);
      await page.close();
    }
  });

  test('nothing that is not clear is left off', async () => {
    let held = 0;
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file, onPaper);
      const printed = (await page.locator('body').innerText()).replace(/\s+/gu, ' ');
      const lines = (await page.evaluate(checkLines)).filter((line) => !line.startsWith('Clear'));
      held += lines.length;
      expect({ name, missing: lines.map(sentence).filter((words) => !printed.includes(words)) }).toEqual({ name, missing: [] });
      await page.close();
    }
    expect(held).toBeGreaterThan(15);
  });

  test('what one needs beside the bench is there, and what is left off is named', async () => {
    const always = ['Verdict', 'What to change', 'Will it warp or twist?', 'What to buy and cut', 'Screws, nails and glue', 'The cloth', 'Stretching', 'Order of work', 'Hanging', 'Work safely', 'Bench sheet'];
    for (const { file, said } of pages().all) {
      const stop = /^STOP /mu.test(said);
      const { page } = await browser().open(file, onPaper);
      const shown = await page.evaluate(headings);
      expect(shown.filter((heading) => heading.startsWith('2 ')).map((heading) => heading.slice(2))).toEqual(always.filter((part) => !stop || (part !== 'Order of work' && part !== 'Stretching')));
      const note = await page.getByText('Shortened for paper').innerText();
      for (const part of ['What if I am a little off?', 'The checks', 'What this rests on']) expect(note).toContain(`“${part}”`);
      expect(await page.getByRole('img', { name: 'The frame from the front' }).isVisible()).toBe(true);
      expect(await page.getByRole('navigation').count()).toBe(0);
      await page.close();
    }
  });

  test('the paper of a plan that must not be cut does not say how to cut it, and says why; any other does', async () => {
    const verdicts = new Set<boolean>();
    for (const { file, said } of pages().all) {
      const stop = /^STOP /mu.test(said);
      verdicts.add(stop);
      const { page } = await browser().open(file, onPaper);
      const shown = await page.evaluate(headings);
      expect(shown.includes('3 At the saw, in this order')).toBe(!stop);
      expect(shown).toContain('3 Cut list');
      expect(await page.getByRole('img', { name: 'How to cut the boards' }).first().isVisible()).toBe(!stop);
      expect((await page.getByText('Shortened for paper').innerText()).includes('must not be cut')).toBe(stop);
      await page.close();
    }
    expect(verdicts.size).toBe(2);
  });

  test('the note counts the clear checks that stay on the screen, and the screen shows them and no note', async () => {
    for (const { file } of [pages().nook, pages().stairwell]) {
      const { page } = await browser().open(file);
      const clear = (await page.evaluate(checkLines)).filter((line) => line.startsWith('Clear')).length;
      const note = page.getByText('Shortened for paper');
      expect(await note.isVisible()).toBe(false);
      expect(await page.getByRole('region', { name: 'The checks', exact: true }).getByRole('listitem').filter({ hasText: /^Clear/ }).count()).toBe(clear);
      await page.emulateMedia({ media: 'print' });
      expect(await note.innerText()).toContain(`the ${clear} that are clear`);
      await page.close();
    }
  });

  test('a sentence that several parts say is printed once', async () => {
    const { page } = await browser().open(pages().nook.file, onPaper);
    const paragraphs = await page.locator('main p').filter({ visible: true }).allInnerTexts();
    expect(paragraphs.length).toBeGreaterThan(5);
    expect(paragraphs.filter((words, i) => paragraphs.indexOf(words) !== i)).toEqual([]);
    await page.close();
  });

  test('the blanks of the bench sheet have room to write in', async () => {
    const { page } = await browser().open(pages().stairwell.file, onPaper);
    const boxes = await page.locator('.blank').evaluateAll((cells) => cells.map((cell) => cell.getBoundingClientRect()).map(({ width, height }) => ({ width, height })));
    expect(boxes.length).toBeGreaterThanOrEqual(8);
    const mm = 25.4 / 96;
    for (const { width, height } of boxes) {
      expect(width * mm).toBeGreaterThanOrEqual(17);
      expect(height * mm).toBeGreaterThanOrEqual(4);
    }
    await page.close();
  });
});
