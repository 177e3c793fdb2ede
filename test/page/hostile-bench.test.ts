/// <reference lib="dom" />
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { linkTo } from '../../src/page/state/share.js';
import { hostilePlan, hostileRuleset, hostileShelf } from './hostile-plan.js';
import { breakIn } from './in-page.js';
import { openBench, quiet, settled, setUpBench, silence, textOf, writePage, writeText } from './workbench.js';

const { out, file, browser, open } = setUpBench('hostile');
let hostile = '';
beforeAll(() => {
  const write = (name: string, text: string): string => {
    writeFileSync(join(out, name), text);
    return join(out, name);
  };
  hostile = writePage(join(out, 'hostile.html'), '--shelf', write('</script><script>alert(1)</script>.yaml'.replaceAll('/', ''), hostileShelf), '--rules', write('rules.yaml', hostileRuleset), '--plan', write('plan.yaml', hostilePlan));
});

const views = ['Boards', 'Shelf', 'Limits', 'Class', 'Sheet', 'Frame'];

/** Whether anything of a stranger's has become more than words. */
const grown = (): readonly string[] => [...document.querySelectorAll('script:not(#data):not(#script), img, iframe:not([sandbox]), object, embed, base, link:not([rel=icon]), form[action], [onerror], [onload], a[href]')].map((one) => one.outerHTML.slice(0, 100));

describe('what strangers write stays words', () => {
  test('plan, shelf and ruleset that the page was written with', async () => {
    const { page, noise } = await openBench(browser(), hostile);
    expect(await page.locator('.slate .word').textContent()).toBe('Stop');
    for (const view of views) {
      await page.getByRole('button', { name: view, exact: true }).click();
      await page.waitForTimeout(100);
      expect({ view, grown: await page.evaluate(grown) }).toEqual({ view, grown: [] });
      expect({ view, over: await page.evaluate(() => document.documentElement.scrollWidth - innerWidth) }).toEqual({ view, over: 0 });
    }
    expect(await page.title()).not.toBe('broken out');
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('a plan that is pasted, opened under a hostile name, or comes in a link', async () => {
    const { page, noise } = await open();
    await writeText(page, hostilePlan);
    await settled(page);
    expect(await page.evaluate(grown)).toEqual([]);
    const name = '"><img src=x onerror=alert(1)>\u202egnp.yaml';
    await page.getByLabel('Plan file').setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(hostilePlan) });
    await settled(page);
    expect(await page.locator('.brand').textContent()).not.toMatch(/[\u202e<>"]/u);
    await page.goto(await linkTo(pathToFileURL(file).href, { file: `../../${name}`, text: hostilePlan }));
    await page.locator('.told', { hasText: 'from the link' }).waitFor();
    await settled(page);
    expect(await page.evaluate(grown)).toEqual([]);
    for (const text of ['', '\u0000', 'a'.repeat(250_000), '&a [*a, *a]', `${'['.repeat(5000)}`, 'plan: 1\n__proto__: { x: 1 }', '!!js/function "alert(1)"', 'plan: 1\nname: x\nface: &f { width: *f }', `plan: 1\nname: ${'\u202e'.repeat(50)}\nface: { width: 1e9 m, height: -5 mm }\nbars: { stock: ../../etc, lay: flat }`]) {
      await writeText(page, text);
      await settled(page);
      expect(await page.locator('.slate .word').textContent()).toBe('No verdict');
    }
    await writeText(page, 'plan: 1\nname: Alive\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n');
    await settled(page);
    expect(await page.locator('.title').textContent()).toBe('Alive');
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('a shelf, a ruleset and a class that are opened', async () => {
    const { page, noise } = await open();
    await page.getByRole('button', { name: 'Shelf', exact: true }).click();
    await page.getByLabel('shelf file').setInputFiles({ name: 'shelf.yaml', mimeType: 'text/yaml', buffer: Buffer.from(hostileShelf) });
    await settled(page);
    await page.getByRole('button', { name: 'Limits', exact: true }).click();
    await page.getByLabel('ruleset file').setInputFiles({ name: 'rules.yaml', mimeType: 'text/yaml', buffer: Buffer.from(hostileRuleset) });
    await settled(page);
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    await page.getByLabel('Plan files of the class').setInputFiles([{ name: '<b>.yaml', mimeType: 'text/yaml', buffer: Buffer.from(hostilePlan) }, { name: 'not.txt', mimeType: 'text/plain', buffer: Buffer.from('x') }]);
    await page.locator('p[role=status]', { hasText: '1 plan:' }).waitFor();
    expect(await page.evaluate(grown)).toEqual([]);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('a text pasted that is longer than any plan: taken at once, undone at once; one that no reader takes stays out', async () => {
    const { page, noise } = await open();
    const before = await textOf(page);
    const paste = (lines: number): Promise<void> => page.locator('.text .pce-textarea').evaluate((field, count) => {
      const transfer = new DataTransfer();
      transfer.setData('text/plain', `# one more line\r\n`.repeat(count));
      (field as HTMLTextAreaElement).setSelectionRange(0, 0);
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: transfer, bubbles: true, cancelable: true }));
    }, lines);
    await paste(3000);
    await settled(page);
    expect(await textOf(page)).toBe(`${'# one more line\n'.repeat(3000)}${before}`);
    expect(await page.locator('.slate .word').textContent()).toBe('Clear');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await settled(page);
    expect(await textOf(page)).toBe(before);
    await paste(40_000);
    await page.locator('.told', { hasText: 'far too long for a plan' }).waitFor();
    expect(await textOf(page)).toBe(before);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test.each([
    ['a little longer than a reader takes', `# one more line\n`.repeat(32_000)],
    ['too large to be read at all', `# one more line\n`.repeat(110_000)],
  ])('a file opened that is %s: left out at once, and the plan stays', async (_, text) => {
    const { page, noise } = await open();
    const before = await textOf(page);
    await page.getByLabel('Plan file').setInputFiles({ name: 'long.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
    await page.locator('.told', { hasText: 'What you opened is far too long for a plan' }).waitFor({ timeout: 3000 });
    expect(await textOf(page)).toBe(before);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('should the engine itself fail, that is told and no verdict stands', async () => {
    const { page } = await open();
    expect(await page.locator('.slate .word').textContent()).toBe('Clear');
    await page.addInitScript(() => {
      const Real = Worker;
      (window as { Worker: unknown }).Worker = class extends Real {
        override postMessage(message: { readonly kind: string; readonly id: number; readonly ask: { readonly text?: string } }): void {
          if (message.kind === 'audit' && message.ask.text?.includes('999 mm') === true) this.onmessage?.({ data: { id: message.id, failed: 'a bug' } } as MessageEvent);
          else super.postMessage(message);
        }
      };
    });
    await page.reload();
    await settled(page);
    await page.getByLabel('Width, outside').fill('999 mm');
    await page.getByRole('alert').waitFor();
    expect(await page.locator('.slate').textContent()).toMatch(/should not have happened: a bug.*No verdict.*Nothing is judged/su);
    await page.getByLabel('Width, outside').fill('490 mm');
    await settled(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await page.locator('.slate .word').textContent()).toBe('Clear');
    await page.close();
  });

  test('should a script or a picture from elsewhere ever get in, the page\'s own policy stops both', async () => {
    const { page, noise } = await open();
    await page.evaluate(breakIn);
    await page.evaluate(() => { setTimeout('document.title = "broken out"', 0); });
    await expect.poll(() => noise.console.filter((line) => line.includes('Content Security Policy')).length).toBeGreaterThanOrEqual(3);
    expect(await page.title()).toContain('sightdown');
    expect(await textOf(page)).toContain('Small study');
    await page.close();
  });
});
