import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { paper } from './browser.js';
import { checkLines, headings, seenTexts } from './in-page.js';
import { onPaper } from './on-paper.js';
import { setUpPages } from './pages.js';
import { sheetsIn, type PrintedSheet } from './sheets.js';

const { pages, browser } = setUpPages();

const px = (mm: number): number => Math.floor((mm * 96) / 25.4);
/** Both papers between margins of 7 mm. */
const papers = [{ name: 'A4', viewport: { width: px(196), height: px(283) } }, { name: 'Letter', viewport: { width: px(201.9), height: px(265.4) } }] as const;
/** Every report under test: the examples, and those of a class of 24. */
const reports = (): readonly { readonly name: string; readonly file: string }[] => [
  ...pages().all, ...readdirSync(dirname(pages().room.file)).sort().map((name) => ({ name, file: join(dirname(pages().room.file), name, 'report.html') })).filter(({ file }) => existsSync(file)),
];

/** Sheets the page prints on, on the paper it asks for or on another. */
async function sheets(page: Page, format?: 'A4' | 'Letter'): Promise<readonly PrintedSheet[]> {
  await page.emulateMedia({ media: null });
  return sheetsIn(await page.pdf(format === undefined ? { preferCSSPageSize: true } : { format }));
}

const pt = (size_px: number): number => (size_px * 72) / 96;
const printed = { media: 'print', viewport: paper } as const;
const isStop = (said: string): boolean => /^\S* ?STOP\b/mu.test(said);

describe('on paper', () => {
  test.each(papers)('$name: no text is clipped, lies on another, is broken or parted from its unit; the card fits on one sheet', { timeout: 240_000 }, async ({ viewport }) => {
    let cards = 0;
    for (const { name, file } of reports()) {
      const { page } = await browser().open(file, { media: 'print', viewport });
      const { texts, card_px, ...wrong } = await page.evaluate(onPaper);
      expect(texts, name).toBeGreaterThan(100);
      // A person's own words may be longer than any sheet is wide.
      expect({ name, ...wrong, broken: name === 'hostile' ? [] : wrong.broken }).toEqual({ name, clipped: [], overlapped: [], broken: [], parted: [] });
      if (card_px !== null) expect(card_px, name).toBeLessThanOrEqual(viewport.height);
      cards += card_px === null ? 0 : 1;
      await page.close();
    }
    expect(cards).toBeGreaterThan(15);
  });

  test.each(papers)('$name: no page of any kind loses a word, breaks one or is lettered smaller than 9 pt', { timeout: 240_000 }, async ({ viewport }) => {
    for (const { name, file } of [pages().room, ...pages().others]) {
      const { width, height } = viewport;
      const { page } = await browser().open(file, { media: 'print', viewport: basename(file) === 'class.html' ? { width: height, height: width } : viewport });
      const { texts, card_px, ...wrong } = await page.evaluate(onPaper);
      expect(texts, name).toBeGreaterThan(5);
      expect({ name, ...wrong }).toEqual({ name, clipped: [], overlapped: [], broken: [], parted: [] });
      if (card_px !== null) expect(card_px, name).toBeLessThanOrEqual(height);
      const small = (await page.evaluate(seenTexts)).filter(({ drawn, size_px }) => !drawn && pt(size_px) < 8.99);
      expect(small.map(({ words }) => words), name).toEqual([]);
      await page.close();
    }
  });

  test.each(papers)('$name: no sheet of any page holds three lines or fewer, and none is empty', { timeout: 240_000 }, async ({ name: paperName }) => {
    for (const { name, file } of [...pages().all, pages().room, ...pages().others]) {
      const { page } = await browser().open(file);
      const printed = await sheets(page, paperName);
      expect(printed.length, name).toBeGreaterThan(0);
      expect({ name, few: printed.flatMap(({ lines }, i) => (lines > 3 ? [] : [`sheet ${i + 1} of ${printed.length}: ${lines}`])) }).toEqual({ name, few: [] });
      await page.close();
    }
  });

  test('a sheet of two lines is counted as one', async () => {
    const { page } = await browser().open(pages().nook.file);
    const before = await sheets(page);
    await page.evaluate(() => {
      const last = document.createElement('section');
      last.setAttribute('style', 'break-before: page');
      last.innerHTML = '<p>One line.</p><p>And another.</p>';
      document.querySelector('main')?.before(last);
      last.after(document.createElement('div'));
      document.querySelector('main')?.setAttribute('style', 'break-before: page');
    });
    expect((await sheets(page)).filter(({ lines }) => lines === 2)).toHaveLength(1);
    expect(before.filter(({ lines }) => lines <= 3)).toEqual([]);
    await page.close();
  });

  test('a page with clipped, overlapping and parted text is seen to have it', async () => {
    const { page } = await browser().open(pages().nook.file, printed);
    await page.evaluate(() => {
      const bad = document.createElement('div');
      bad.innerHTML = '<p style="white-space:nowrap;margin:0">out of the sheet '.concat('and on '.repeat(60), '</p><p style="margin:-0.8em 0 0">over it</p><p style="width:1em;font-size:12px">1200 mm</p>');
      document.querySelector('main')?.append(bad);
    });
    const found = await page.evaluate(onPaper);
    expect(found.clipped.join()).toContain('out of the sheet');
    expect(found.overlapped.join()).toContain('over it');
    expect(found.parted).toEqual(['0 mm']);
    await page.close();
  });

  test('the sheet is A4 for a plan in millimetres, Letter for one in inches; the card is the first', async () => {
    for (const [{ name, file }, size, most] of [[pages().nook, '595 x 842', 8], [pages().stairwell, '612 x 792', 8], [pages().everything, '595 x 842', 10]] as const) {
      const { page } = await browser().open(file);
      const printed = await sheets(page);
      expect({ name, sizes: [...new Set(printed.map((sheet) => sheet.size.replace('596', '595').replace('841', '842')))] }).toEqual({ name, sizes: [size] });
      expect(printed.length, name).toBeLessThanOrEqual(most);
      await page.close();
    }
  });

  test('letters are 9 pt or more, in drawings too, on the card 10 pt; only the small drawings of the first sheet have 6 pt or more', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file, printed);
      const seen = await page.evaluate(seenTexts);
      const small = (drawn: boolean): number => Math.min(...seen.filter((text) => text.drawn === drawn).map(({ size_px }) => pt(size_px)));
      expect(small(false), name).toBeGreaterThanOrEqual(8.99);
      expect(small(true), name).toBeGreaterThanOrEqual(5.99);
      const card = await page.locator('.card td, .card th, .card li, .card p').evaluateAll((nodes) => nodes.map((node) => Number.parseFloat(getComputedStyle(node).fontSize)));
      for (const size_px of card) expect(pt(size_px), name).toBeGreaterThanOrEqual(9.99);
      await page.locator('.card').evaluateAll((cards) => { for (const one of cards) one.remove(); });
      const rest = (await page.evaluate(seenTexts)).filter(({ drawn }) => drawn).map(({ size_px }) => pt(size_px));
      expect(rest.length, name).toBeGreaterThan(0);
      expect(Math.min(...rest), name).toBeGreaterThanOrEqual(8.99);
      await page.close();
    }
  });

  test('nothing that is not clear is left off, and no rule that was switched off or loosened', async () => {
    let held = 0;
    for (const { name, file } of [...pages().all, ...reports().filter((report) => report.name === 'amaru')]) {
      const { page } = await browser().open(file, printed);
      const text = (await page.locator('body').innerText()).replace(/\s+/gu, ' ');
      const lines = (await page.evaluate(checkLines)).filter((line) => !line.startsWith('● Clear'));
      held += lines.length;
      const titles = lines.map((line) => line.replace(/^\S+ \w+(?:, [^:]*)?: /u, '').replace(/(?: \([^()]*\))?: .*$/u, ''));
      expect({ name, missing: titles.filter((words) => !text.includes(words)) }).toEqual({ name, missing: [] });
      const relaxed = (await page.locator('li').allTextContents()).map((line) => line.replace(/\s+/gu, ' ').trim()).filter((line) => /^(?:Switched off|Loosened|Asked otherwise):/u.test(line));
      if (name === 'amaru') expect(relaxed).toHaveLength(3);
      expect(relaxed.filter((line) => !text.includes(line))).toEqual([]);
      await page.close();
    }
    expect(held).toBeGreaterThan(15);
  });

  test('what one needs beside the bench is there, and what is left off is named', async () => {
    const always = ['Verdict', 'What to change', 'What to buy and cut', 'Screws, nails and glue', 'Order of work', 'The cloth', 'Stretching', 'Hanging', 'Bench sheet', 'Work safely'];
    for (const { file, said } of pages().all) {
      const { page } = await browser().open(file, printed);
      const shown = (await page.evaluate(headings)).filter((heading) => heading.startsWith('2 ')).map((heading) => heading.slice(2));
      expect(shown.slice(1)).toEqual(always);
      expect(shown[0]).toMatch(isStop(said) ? /^Not to be cut yet: / : /^Bench card: /u);
      const note = await page.getByText('Shortened for paper').innerText();
      for (const part of ['Will it warp or twist?', 'What if I am a little off?', 'The checks', 'What this rests on']) expect(note).toContain(`“${part}”`);
      expect(await page.getByRole('img', { name: 'The frame from the front' }).filter({ visible: true }).count()).toBe(1);
      expect(await page.getByRole('navigation').count()).toBe(0);
      await page.close();
    }
  });

  test('the paper of a plan that must not be cut does not say how to cut it; any other does', async () => {
    const verdicts = new Set<boolean>();
    for (const { file, said } of pages().all) {
      const stop = isStop(said);
      verdicts.add(stop);
      const { page } = await browser().open(file, printed);
      const shown = await page.evaluate(headings);
      expect(shown.includes('3 At the saw, in this order')).toBe(!stop);
      expect(shown).toContain('3 Cut list');
      expect((await page.getByRole('img', { name: 'How to cut the boards' }).count()) > 0).toBe(!stop);
      await page.close();
    }
    expect(verdicts.size).toBe(2);
  });

  test('the screen keeps what is read at a desk folded, and shows no card and no note', async () => {
    const { page } = await browser().open(pages().nook.file);
    expect(await page.locator('details').count()).toBe(4);
    expect(await page.locator('details[open]').count()).toBe(0);
    expect(await page.locator('.card').isVisible()).toBe(false);
    expect(await page.getByText('Shortened for paper').isVisible()).toBe(false);
    await page.getByText('The checks', { exact: true }).last().click();
    expect(await page.getByText('how much of its limit each check uses').isVisible()).toBe(true);
    await page.close();
  });

  test('a sentence that several parts say is printed once', async () => {
    const { page } = await browser().open(pages().nook.file, printed);
    const paragraphs = await page.locator('main p').filter({ visible: true }).allInnerTexts();
    expect(paragraphs.length).toBeGreaterThan(5);
    expect(paragraphs.filter((words, i) => paragraphs.indexOf(words) !== i)).toEqual([]);
    await page.close();
  });

  test('the blanks have room to write in, and a line to write on', async () => {
    const { page } = await browser().open(pages().nook.file, printed);
    const boxes = await page.locator('td.blank, .card li').evaluateAll((cells) => cells.map((cell) => ({ width: cell.getBoundingClientRect().width, height: cell.getBoundingClientRect().height, rule: Number.parseFloat(getComputedStyle(cell).borderBottomWidth) })));
    expect(boxes.length).toBeGreaterThanOrEqual(15);
    const mm = 25.4 / 96;
    for (const { width, height, rule } of boxes) {
      expect(width * mm).toBeGreaterThanOrEqual(33);
      expect(height * mm).toBeGreaterThanOrEqual(5);
      expect(rule).toBeGreaterThanOrEqual(1);
    }
    await page.close();
  });
});
