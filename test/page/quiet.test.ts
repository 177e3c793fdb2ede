import { describe, expect, test } from 'vitest';
import { setUpPages } from './pages.js';

const { pages, browser } = setUpPages();

describe('a page asks for nothing and complains of nothing', () => {
  test('the listeners do hear a page that fetches, logs and throws', async () => {
    const { page, noise } = await browser().open(pages().noisy);
    await page.waitForTimeout(100);
    expect(noise.requests).toEqual(['http://127.0.0.1:9/x.png']);
    expect(noise.console.join()).toContain('warning: w');
    expect(noise.errors).toEqual(['thrown']);
    await page.close();
  });

  test('should a script or a picture from elsewhere ever get in, the page itself forbids both', async () => {
    const { page, noise } = await browser().open(pages().nook.file);
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "broken out"';
      const image = document.createElement('img');
      image.src = 'http://127.0.0.1:9/x.png';
      document.body.append(script, image);
    });
    await page.waitForTimeout(50);
    expect(await page.title()).toContain('Reading-nook panel');
    expect(noise.console.filter((line) => line.includes('Content Security Policy'))).toHaveLength(2);
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
      const found = await page.evaluate(() => {
        const allowed = new Set(['HTML', 'HEAD', 'META', 'TITLE', 'STYLE', 'BODY', 'HEADER', 'NAV', 'MAIN', 'SECTION', 'FOOTER', 'H1', 'H2', 'H3', 'P', 'STRONG', 'EM', 'UL', 'OL', 'LI', 'A', 'DIV', 'TABLE', 'THEAD', 'TBODY', 'TR', 'TH', 'TD', 'BLOCKQUOTE', 'BR', 'FIGURE']);
        const drawn = new Set(['svg', 'g', 'title', 'desc', 'path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'tspan', 'defs', 'pattern', 'clipPath', 'marker']);
        const bad: string[] = [];
        for (const element of document.querySelectorAll('*')) {
          if (!(element instanceof SVGElement ? drawn : allowed).has(element.tagName)) bad.push(`<${element.tagName}>`);
          for (const { name: key, value } of element.attributes) {
            if (/^on/iu.test(key)) bad.push(`${element.tagName} ${key}`);
            if (/^(?:src|href|xlink:href|action|style)$/iu.test(key) && !/^#part-\d+$/u.test(value)) bad.push(`${element.tagName} ${key}=${value}`);
          }
        }
        return { bad, title: document.title, sheets: document.styleSheets.length };
      });
      expect({ name, bad: found.bad, sheets: found.sheets }).toEqual({ name, bad: [], sheets: 1 });
      expect(found.title).not.toBe('broken out');
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
    expect(await page.getByRole('link').evaluateAll((links) => links.filter((link) => !/^#part-\d+$/u.test(link.getAttribute('href') ?? '')).length)).toBe(0);
    await page.close();
  });
});
