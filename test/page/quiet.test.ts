import { describe, expect, test } from 'vitest';
import { breakIn, couldAct } from './in-page.js';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

describe('a page asks for nothing and complains of nothing', () => {
  test('the listeners do hear a page that fetches, logs and throws', async () => {
    const { page, noise } = await browser().open(pages().noisy);
    await expect.poll(() => noise.errors).toEqual(['thrown']);
    expect(noise.requests).toEqual(['http://127.0.0.1:9/x.png']);
    expect(noise.console.join()).toContain('warning: w');
    await page.close();
  });

  test('should a script or a picture from elsewhere ever get in, the page itself forbids both', async () => {
    const { page, noise } = await browser().open(pages().nook.file);
    await page.evaluate(breakIn);
    await expect.poll(() => noise.console.filter((line) => line.includes('Content Security Policy'))).toHaveLength(2);
    expect(await page.title()).toContain('Reading-nook panel');
    await page.close();
  });

  test('no request, no console message, no error, for every page, on screen, in the dark and on paper', async () => {
    for (const { name, file } of pages().all) {
      for (const look of [{}, { scheme: 'dark' }, { media: 'print' }] as const) {
        const { page, noise } = await browser().open(file, look);
        await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
        await page.waitForTimeout(50);
        expect({ name, look, ...noise }).toEqual({ name, look, requests: [], console: [], errors: [] });
        await page.close();
      }
    }
  });

  test('nothing in a page could run or fetch: no script, no frame, no foreign address, no handler', async () => {
    for (const { name, file } of pages().all) {
      const { page } = await browser().open(file);
      expect({ name, could: await page.evaluate(couldAct) }).toEqual({ name, could: [] });
      expect(await page.evaluate(() => document.styleSheets.length)).toBe(1);
      expect(await page.title()).not.toBe('broken out');
      await page.close();
    }
  });

  test('the words that tried to break out are still there to read, as words', async () => {
    const { page } = await browser().open(pages().hostile.file);
    const words = (await page.locator('body').innerText()).replace(/\s+/gu, ' ');
    expect(words).toContain('<script>document.title="broken out"</script>');
    expect(words).toContain('<img src="http://example.com/seen.png" onerror="alert(1)">');
    expect(words).toContain('</text></svg><iframe');
    expect(words).toContain('</style><style>@import');
    expect(words).toContain('[tap here](http://example.com)');
    expect(await page.getByRole('link').evaluateAll((links) => links.filter((link) => !/^#[a-z-]+$/u.test(link.getAttribute('href') ?? '')).length)).toBe(0);
    await page.close();
  });
});
