import { describe, expect, test } from 'vitest';
import { phone } from './browser.js';
import { brokenNames, focused, fromTop, headings, unfold } from './in-page.js';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

/** The parts every report has, by the name of their heading. */
const parts = ['Verdict', 'What to change', 'Will it warp or twist?', 'The checks', 'What to buy and cut', 'Screws, nails and glue', 'The cloth', 'Stretching', 'Order of work', 'Hanging', 'Work safely', 'What this rests on', 'Bench sheet'];

describe('the page read by ear', () => {
  test('one title, headings without a step left out, and every part under its own', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file);
      const found = await page.evaluate(headings);
      const depths = found.map((heading) => Number(heading[0]));
      expect(depths.filter((depth) => depth === 1)).toHaveLength(1);
      expect(depths[0]).toBe(1);
      expect(depths.filter((depth, i) => i > 0 && depth > (depths[i - 1] ?? 0) + 1)).toEqual([]);
      for (const part of parts) {
        await expect.soft(page.getByRole('heading', { level: 2, name: part, exact: true }).count(), `${name}: ${part}`).resolves.toBe(1);
        await expect.soft(page.getByRole('region', { name: part, exact: true }).count(), `${name}: ${part}`).resolves.toBe(1);
      }
      await page.close();
    }
  });

  test('a header, one main, contents to go by, a footer; a language; no name twice or leading nowhere', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file);
      for (const role of ['banner', 'main', 'contentinfo'] as const) expect(await page.getByRole(role).count()).toBe(1);
      expect(await page.getByRole('navigation', { name: 'Contents' }).count()).toBe(1);
      expect(await page.locator('html').getAttribute('lang')).toBe('en');
      expect((await page.title()).length).toBeGreaterThan(10);
      expect({ name, broken: await page.evaluate(brokenNames) }).toEqual({ name, broken: [] });
      await page.close();
    }
  });

  test('every drawing has a name and says what it shows', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file);
      await page.evaluate(unfold);
      const drawings = page.locator('main figure > svg');
      const count = await drawings.count();
      expect(count).toBeGreaterThanOrEqual(6);
      expect(await page.getByRole('img').count()).toBe(count);
      expect(await page.locator('main figure').count()).toBe(count);
      for (let i = 0; i < count; i += 1) {
        const [title = '', desc = ''] = await Promise.all(['title', 'desc'].map((tag) => drawings.nth(i).locator(`> ${tag}`).innerHTML()));
        expect(title.length, `${name} ${i}`).toBeGreaterThan(5);
        expect(desc.length, `${name} ${title}`).toBeGreaterThan(40);
        expect(await page.getByRole('img', { name: title.replace(/&amp;/gu, '&'), exact: false }).count(), title).toBeGreaterThanOrEqual(1);
      }
      await page.close();
    }
  });

  test('tables are found by their part, their columns by their heads, rows by what they are of', async () => {
    for (const { file } of [pages().everything, pages().stairwell]) {
      const { page } = await browser().open(file);
      const change = page.getByRole('region', { name: 'What to change', exact: true });
      expect(await change.getByRole('columnheader').allInnerTexts()).toEqual(expect.arrayContaining(['Change', 'Verdict', 'Twist reserve']));
      expect(await change.getByRole('row', { name: /^As planned (?:Verdict: )?[▲✕]\s(?:Caution|Stop) / }).count()).toBe(1);
      const bench = page.getByRole('region', { name: 'Bench sheet', exact: true });
      expect(await bench.getByRole('row', { name: /^Diagonal, top left to bottom right/ }).count()).toBe(1);
      expect(await bench.getByRole('columnheader', { name: 'Yours' }).count()).toBe(1);
      expect(await page.getByRole('columnheader').filter({ hasText: /^$/ }).count()).toBe(0);
      await page.close();
    }
  });

  test('on a phone a row of a wide table is a card that names every figure, and no figure is out of sight', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file, { viewport: phone });
      await page.evaluate(unfold);
      for (const table of await page.locator('main .many').all()) expect(await table.evaluate((element) => element.parentElement!.scrollWidth - element.parentElement!.clientWidth), name).toBe(0);
      await page.close();
    }
    const { page } = await browser().open(pages().stairwell.file, { viewport: phone });
    const row = page.getByRole('region', { name: 'What to change', exact: true }).getByRole('row', { name: /^As planned/ });
    expect(await row.getByRole('rowheader').innerText()).toBe('As planned');
    expect(await row.getByRole('cell').evaluateAll((cells) => cells.map((cell) => getComputedStyle(cell, '::before').content))).toEqual(['Verdict', 'Twist reserve', 'Chance of a lifted corner', 'Cost', 'Weight'].map((head) => `"${head}: "`));
    await page.close();
  });

  test('the cautions are a list, the work an ordered one', async () => {
    const { page } = await browser().open(pages().nook.file);
    const cautions = page.getByRole('region', { name: 'Work safely' }).getByRole('list').getByRole('listitem');
    expect(await cautions.count()).toBeGreaterThan(5);
    expect(await cautions.filter({ hasText: 'eye protection' }).count()).toBe(1);
    const work = page.getByRole('region', { name: 'Order of work' }).locator('ol').getByRole('listitem');
    expect(await work.count()).toBeGreaterThan(8);
    await page.close();
  });

  test('marks that turn the reading order are gone, letters that run from right to left are not', async () => {
    const { page } = await browser().open(pages().hostile.file);
    const words = await page.locator('body').innerText();
    expect(words).toContain('מסגרת');
    expect(words).not.toMatch(/[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/u);
    expect(await page.evaluate(() => getComputedStyle(document.querySelector('h1') ?? document.body).direction)).toBe('ltr');
    await page.close();
  });
});

describe('the page by keyboard', () => {
  test('the contents come right after the verdict, in the order of the parts, each seen to have the focus, and lead where they say', async () => {
    const { page } = await browser().open(pages().nook.file);
    const names = (await page.evaluate(headings)).filter((heading) => heading.startsWith('2 ')).map((heading) => heading.slice(2));
    // The table of the verdict can be scrolled, so the focus stops there first.
    await page.keyboard.press('Tab');
    expect((await page.evaluate(focused)).words).toBe('Table: Verdict');
    for (const [i, name] of names.entries()) {
      await page.keyboard.press('Tab');
      const { words, tag, outline } = await page.evaluate(focused);
      expect({ words, tag }).toEqual({ words: name, tag: 'A' });
      expect(outline, `link ${i + 1}`).toBe('solid');
    }
    for (const name of ['Order of work', 'What to change']) {
      await page.getByRole('link', { name, exact: true }).focus();
      await page.keyboard.press('Enter');
      const id = new URL(page.url()).hash.slice(1);
      expect(await page.locator(`#${id}`).innerText()).toBe(name);
      expect(Math.abs(await page.evaluate(fromTop, id))).toBeLessThan(60);
    }
    await page.close();
  });

  test('a table too wide for its frame can be reached and scrolled', async () => {
    const { page } = await browser().open(pages().stairwell.file, { viewport: { width: 580, height: 700 } });
    const table = page.getByRole('region', { name: 'Table: What to change' });
    await table.evaluate((frame) => (frame.style.width = '300px'));
    await table.focus();
    expect(await page.evaluate(focused)).toMatchObject({ tag: 'DIV', words: 'Table: What to change', outline: 'solid' });
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => table.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
    await page.close();
  });
});
