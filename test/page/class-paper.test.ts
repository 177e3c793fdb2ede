import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

/** Both papers, in CSS pixels less the margins of 7 mm that the page asks for. */
const papers = [{ name: 'A4', width_mm: 210, height_mm: 297 }, { name: 'Letter', width_mm: 215.9, height_mm: 279.4 }] as const;
const px = (mm: number): number => (mm * 96) / 25.4;
/** The page about the class lies across the sheet, the pack and the timetable stand upright. */
const files = () => ['class.html', 'class-pack.html', 'timetable.html'].map((name) => ({ name, across: name === 'class.html', file: join(dirname(pages().room.file), name) }));

describe('the pages of a class on paper', () => {
  test.each(papers)('$name: nothing is wider than the sheet, no column narrower than its longest word', async ({ width_mm, height_mm }) => {
    for (const { name, file, across } of files()) {
      const [width, height] = (across ? [height_mm, width_mm] : [width_mm, height_mm]).map((mm) => Math.floor(px(mm - 14))) as [number, number];
      const { page } = await browser().open(file, { media: 'print', viewport: { width, height } });
      const found = await page.evaluate(() => {
        const wide = document.documentElement.clientWidth;
        const cells = [...document.querySelectorAll('td, th')];
        const out = [...document.querySelectorAll('main *')].filter((node) => node.getBoundingClientRect().right > wide + 1).map((node) => `${node.tagName} ${(node.textContent ?? '').slice(0, 60)}`);
        const broken = cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1).map((cell) => (cell.textContent ?? '').slice(0, 60));
        // A word that is broken stands on two lines: its range has two boxes.
        const split: string[] = [];
        for (const cell of cells) {
          const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
          for (let text = walker.nextNode(); text !== null; text = walker.nextNode())
            for (const word of (text.textContent ?? '').matchAll(/[\p{L}\d]+/gu)) {
              const range = document.createRange();
              range.setStart(text, word.index);
              range.setEnd(text, word.index + word[0].length);
              if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1) split.push(word[0]);
            }
        }
        return { cells: cells.length, out, broken, split };
      });
      expect(found.cells, name).toBeGreaterThan(300);
      expect({ name, out: found.out, broken: found.broken, split: found.split }).toEqual({ name, out: [], broken: [], split: [] });
      await page.close();
    }
  });

  test.each(papers)('$name: the class page is one column, the pack has a sheet of its own for every plan', async ({ name, width_mm, height_mm }) => {
    const { page } = await browser().open(files()[0]!.file, { media: 'print', viewport: { width: Math.floor(px(width_mm - 14)), height: Math.floor(px(height_mm - 14)) } });
    expect(await page.locator('main').evaluate((main) => getComputedStyle(main).columnCount)).toBe('auto');
    await page.close();
    const pack = await browser().open(files()[1]!.file);
    const pdf = (await pack.page.pdf({ format: name })).toString('latin1');
    const sections = [...readFileSync(files()[1]!.file, 'utf8').matchAll(/<section\b/gu)].length;
    expect(sections).toBeGreaterThan(24);
    expect((pdf.match(/\/Type ?\/Page\b/gu) ?? []).length).toBeGreaterThanOrEqual(sections + 1);
    await pack.page.close();
  });

  test('what was relaxed, and by which ruleset, stands on the first sheet of each', async () => {
    for (const { file } of files().filter(({ name }) => name !== 'timetable.html')) {
      const { page } = await browser().open(file, { media: 'print', viewport: { width: Math.floor(px(196)), height: Math.floor(px(196)) } });
      for (const words of ['fingerprint', 'This ruleset asks less than the baseline.', 'Switched off: hanging/wire-shows', 'Loosened: corner-lift-chance']) {
        const box = await page.getByText(words).first().boundingBox();
        expect(box, words).not.toBeNull();
        expect(box!.y + box!.height, words).toBeLessThan(px(196));
      }
      await page.close();
    }
  });
});
