/// <reference lib="dom" />
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { answered, command, quiet, settled, setUpBench, silence, textOf } from './workbench.js';

const { out, open } = setUpBench('newcomer');

const word = (page: Page): Promise<string | null> => page.locator('.slate .word').textContent();

/** The sheet that the page shows for paper is the one the command writes of the saved plan. */
async function sheetIsTheCommands(page: Page, saved: string): Promise<void> {
  const plan = join(out, `plan-${Math.random().toString(36).slice(2)}.yaml`);
  await (await import('node:fs/promises')).writeFile(plan, saved);
  const folder = `${plan}-report`;
  command('audit', plan, '--format', 'html', '--out', folder);
  expect(await page.locator('iframe').getAttribute('srcdoc')).toBe(readFileSync(join(folder, 'report.html'), 'utf8'));
  expect(await page.frameLocator('iframe').locator('h1').textContent()).toContain('will it stay flat');
}

/** What the page saves where the browser has no picker. */
async function savedBy(page: Page, save: () => Promise<void>): Promise<string> {
  await page.evaluate(() => { delete (window as { showSaveFilePicker?: unknown }).showSaveFilePicker; });
  const [download] = await Promise.all([page.waitForEvent('download'), save()]);
  expect(download.suggestedFilename()).toBe('small-study.yaml');
  return readFileSync(await download.path(), 'utf8');
}

/** Counts calls of print in the sheet's own frame, in place of the dialog that no test can close. */
async function countPrints(page: Page): Promise<() => Promise<number>> {
  // The frame takes up its page only once it is there: what is set before is gone with what it was.
  await page.frameLocator('iframe').locator('h1').waitFor();
  await page.evaluate(() => {
    const frame = document.querySelector('iframe') as HTMLIFrameElement;
    (window as { prints?: number }).prints = 0;
    (frame.contentWindow as Window).print = () => { (window as unknown as { prints: number }).prints++; };
  });
  return () => page.evaluate(() => (window as unknown as { prints: number }).prints);
}

describe('a newcomer sizes a frame, picks a board, reads the verdict, takes a change, saves and prints', () => {
  test('by mouse', async () => {
    const { page, noise } = await open();
    expect(await word(page)).toBe('Clear');
    await page.getByLabel('Width, outside').fill('55 in');
    await page.getByLabel('Height, outside').fill('41-1/2 in');
    await page.getByLabel('Height, outside').blur();
    await page.getByLabel('Board', { exact: true }).selectOption('strip-19x38');
    await settled(page);
    expect(await word(page)).toBe('Stop');
    expect(await page.locator('.slate .reasons li').count()).toBeGreaterThan(2);
    expect(await page.locator('.amounts').textContent()).toMatch(/times the peak pull.*in.*EUR.*lb/u);
    expect(await page.locator('.sheet svg').first().textContent()).toContain('55 in');
    await page.locator('.changes button', { hasText: 'See it drawn' }).first().click();
    await page.locator('.sheet.after svg').waitFor();
    expect(await page.locator('.sheet.after').textContent()).toContain('After:');
    const before = await textOf(page);
    await page.locator('.changes button', { hasText: 'Do it' }).first().click();
    await settled(page);
    expect(await word(page)).not.toBe('Stop');
    const after = await textOf(page);
    expect(after).not.toBe(before);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    expect(await textOf(page)).toBe(before);
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    expect(await savedBy(page, () => page.getByRole('button', { name: 'Save', exact: true }).click())).toBe(after);
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    const prints = await countPrints(page);
    await page.getByRole('button', { name: 'Print the sheet' }).click();
    expect(await prints()).toBe(1);
    await sheetIsTheCommands(page, after);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('by keyboard alone', async () => {
    const { page, noise } = await open();
    /** Goes on with Tab until what has the focus is called so. */
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let i = 0; i < 150; i++) {
        await page.keyboard.press('Tab');
        const here = await page.evaluate(() => {
          const at = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLLabelElement> };
          return at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent ?? '';
        });
        if (name.test(here.trim())) return;
      }
      throw new Error(`no way to ${String(name)} by Tab`);
    };
    await tabTo(/^Width, outside$/u);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('1.4 m');
    await tabTo(/^Height, outside$/u);
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('105 cm');
    await tabTo(/^Board$/u);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    await settled(page);
    expect(await textOf(page)).toContain('face: { width: 1.4 m, height: 105 cm }');
    expect(await word(page)).toBe('Stop');
    await tabTo(/^The plan as text$/u);
    await tabTo(/^Do it, change 1/u);
    const before = await textOf(page);
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await word(page)).not.toBe('Stop');
    await page.keyboard.press('ControlOrMeta+z');
    expect(await textOf(page)).toBe(before);
    await page.keyboard.press('ControlOrMeta+Shift+z');
    const after = await textOf(page);
    expect(after).not.toBe(before);
    await page.locator('body').press('ControlOrMeta+p');
    const prints = await countPrints(page);
    await tabTo(/^Print the sheet$/u);
    await page.keyboard.press('Enter');
    expect(await prints()).toBe(1);
    await page.evaluate(() => { (document.activeElement as HTMLElement).blur(); });
    expect(await savedBy(page, async () => {
      await tabTo(/^Save$/u);
      await page.keyboard.press('Enter');
    })).toBe(after);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('on a phone, where nothing reaches past the edge and every button is large enough for a finger', async () => {
    const { page, noise } = await open({ viewport: { width: 390, height: 844 } });
    await page.getByLabel('Width, outside').fill('140 cm');
    await page.getByLabel('Height, outside').fill('105 cm');
    await page.getByLabel('Height, outside').blur();
    await page.locator('summary', { hasText: /^Bars$/u }).click();
    await page.locator('label.option', { hasText: 'On edge' }).click();
    await settled(page);
    expect(await page.locator('.mini').textContent()).toContain(await word(page));
    await page.locator('.mini').click();
    await page.locator('.changes button', { hasText: 'Do it' }).first().click();
    await settled(page);
    const after = await textOf(page);
    expect(after).toContain('lay: edge');
    for (const view of ['Boards', 'Shelf', 'Limits', 'Class', 'Sheet', 'Frame']) {
      await page.getByRole('button', { name: view, exact: true }).click();
      const { over, small } = await page.evaluate(() => ({
        over: document.documentElement.scrollWidth - innerWidth,
        small: [...document.querySelectorAll<HTMLElement>('button, input:not([type=file]), select, summary')].filter((one) => {
          const { width, height } = (one.closest('label') ?? one).getBoundingClientRect();
          return width > 0 && height < 24;
        }).map((one) => one.outerHTML.slice(0, 80)),
      }));
      expect({ view, over, small }).toEqual({ view, over: 0, small: [] });
    }
    expect(await savedBy(page, () => page.getByRole('button', { name: 'Save', exact: true }).click())).toBe(after);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('saving goes where one picks, when the browser can ask; thinking better of it saves nothing', async () => {
    const { page } = await open();
    await page.evaluate(() => {
      const keep = window as unknown as { written: string[]; showSaveFilePicker: unknown };
      keep.written = [];
      keep.showSaveFilePicker = async () => ({ name: 'mine.yaml', createWritable: async () => ({ write: async (text: string) => void keep.written.push(text), close: async () => {} }) });
    });
    await page.getByLabel('Width, outside').fill('510 mm');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('.told', { hasText: 'Saved as mine.yaml' }).waitFor();
    expect(await page.evaluate(() => (window as unknown as { written: string[] }).written)).toEqual([await textOf(page)]);
    await page.evaluate(() => {
      (window as unknown as { showSaveFilePicker: unknown }).showSaveFilePicker = async () => { throw new DOMException('no', 'AbortError'); };
    });
    await page.getByLabel('Width, outside').fill('520 mm');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.waitForTimeout(100);
    expect(await page.locator('.brand').textContent()).toContain('not saved');
    await page.close();
  });
});

describe('shelf, limits and class', () => {
  test('a price that is changed shows in the cost, and is kept in a shelf of one\'s own', async () => {
    const { page } = await open();
    const cost = (): Promise<string | null> => page.locator('.amounts div', { hasText: 'Cost' }).locator('dd').textContent();
    const before = await cost();
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    for (const price of await page.getByLabel(/^strip-19x38, price of length/u).all()) {
      await price.fill('99');
      await price.blur();
    }
    await settled(page);
    expect(await cost()).not.toBe(before);
    await page.locator('summary', { hasText: 'My shelf as text' }).click();
    expect(await page.getByLabel('My shelf as text').inputValue()).toContain('price: 99');
    await page.getByLabel('Call it').fill('strip-21x45');
    await page.getByLabel('Actual size, smaller first').fill('21 x 45 mm');
    await page.getByRole('button', { name: 'Put it on the shelf' }).click();
    await settled(page);
    await page.getByRole('button', { name: 'Frame', exact: true }).click();
    await page.getByLabel('Board', { exact: true }).selectOption('strip-21x45');
    await settled(page);
    expect(await textOf(page)).toContain('stock: strip-21x45');
    expect(await word(page)).not.toBe('No verdict');
    await page.close();
  });

  test('one number in a limit changes the verdict of the plan and of the class, and says who set it', { timeout: 90_000 }, async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    const plan = (name: string, width: string): { name: string; mimeType: string; buffer: Buffer } => ({ name: `${name}.yaml`, mimeType: 'text/yaml', buffer: Buffer.from(`plan: 1\nname: ${name}\nface: { width: ${width}, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n`) });
    await page.getByLabel('Plan files of the class').setInputFiles([plan('Jug', '450 mm'), plan('Wall', '2000 mm'), { ...plan('Torn', '1 m'), buffer: Buffer.from('plan: 1\nname: [') }]);
    await page.locator('p[role=status]', { hasText: '3 plans' }).waitFor();
    const rows = page.locator('[aria-label="Table of the class"] tbody tr');
    expect(await rows.allTextContents()).toEqual([expect.stringContaining('Jug Clear'), expect.stringContaining('Cannot be read'), expect.stringContaining('Wall Stop')]);
    await page.getByRole('button', { name: 'Limits', exact: true }).click();
    const limit = page.getByLabel('twist-reserve, stop');
    await limit.fill('500');
    await page.getByLabel('twist-reserve, caution').fill('600');
    await page.getByLabel('twist-reserve, caution').blur();
    await answered(page);
    expect(await word(page)).toBe('Stop');
    expect(await page.locator('tr', { has: page.getByLabel('twist-reserve, stop') }).textContent()).toContain('My limits: stop 500, caution 600');
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    await page.locator('td', { hasText: 'Stop (was clear)' }).waitFor();
    await page.getByRole('button', { name: 'Jug', exact: true }).click();
    await settled(page);
    expect(await textOf(page)).toContain('name: Jug');
    await page.close();
  });
});
