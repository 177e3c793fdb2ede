import { beforeAll, describe, expect, it } from 'vitest';
import { composeReport, type PlanReport } from '../../src/report/compose.js';
import { printStyle } from '../../src/report/html-print.js';
import { screenStyle } from '../../src/report/html-style.js';
import { writeHtml } from '../../src/report/html.js';
import { auditOf, everything } from './audits.js';

let report: PlanReport;
let page: string;
beforeAll(async () => {
  report = composeReport(await auditOf(everything));
  page = writeHtml(report.tree, report.pictures, { title: 'A panel', lang: 'en-GB', first: report.first, sheet: report.sheet });
});

/** Relative luminance and contrast after WCAG 2.1, from a colour such as `#1a1a1a`. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r = 0, g = 0, bl = 0] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [light, dark] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

describe('the printable page', () => {
  it('fetches nothing and runs nothing', () => {
    expect(page).not.toMatch(/<script|<link|<iframe|<object|<img|@import|url\(|javascript:|\son[a-z]+=/iu);
    expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/u);
    expect(page).toContain('content="default-src &#x27;none&#x27;; style-src &#x27;unsafe-inline&#x27;"');
  });

  it('names its language, its title and a width for phones', () => {
    expect(page).toMatch(/^<!doctype html><html lang="en-GB">/u);
    expect(page).toContain('<title>A panel</title>');
    expect(page).toContain('content="width=device-width, initial-scale=1"');
  });

  it('has one main heading and landmarks, and every part is a section named by its heading', () => {
    for (const landmark of ['<header>', '<nav aria-label="Contents">', '<main>', '<footer class="screen">']) expect(page.split(landmark)).toHaveLength(2);
    expect(page.match(/<h1>/gu)).toHaveLength(1);
    const sections = [...page.matchAll(/<section aria-labelledby="([a-z-]+)"[^>]*>(?:<details><summary>)?<h2 id="([a-z-]+)"[^>]*>/gu)];
    expect(sections.length).toBeGreaterThanOrEqual(12);
    for (const [, named, id] of sections) expect(named).toBe(id);
    const nav = /<nav.*?<\/nav>/su.exec(page)?.[0] ?? '';
    expect([...nav.matchAll(/<a href="#([a-z-]+)">/gu)].map(([, id]) => id)).toEqual(sections.map(([, id]) => id));
  });

  it('leads to its own parts wherever it names them, and never to a part that is not there', () => {
    const ids = new Set([...page.matchAll(/<h2 id="([^"]+)"/gu)].map(([, id]) => id));
    const main = page.replace(/<nav.*?<\/nav>/su, '');
    const led = [...main.matchAll(/<a href="#([^"]+)">/gu)].map(([, id]) => id ?? '');
    expect(led).toContain('what-to-change');
    expect(led.filter((id) => !ids.has(id))).toEqual([]);
  });

  it('carries every picture inside, named and described, with ids that never meet', () => {
    expect(page.match(/<svg /gu)).toHaveLength(report.pictures.length + report.first.tree.children.filter((node) => node.type === 'paragraph' && node.children[0]?.type === 'image').length);
    const ids = [...page.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, labels = ''] of page.matchAll(/<svg [^>]*aria-labelledby="([^"]+)"/gu)) for (const id of labels.split(' ')) expect(ids).toContain(id);
  });

  it('shows lines to be copied into a file, with nothing in them that is not seen', () => {
    const lines = '10-3/4 in: 4-R2\n  width: 900 mm';
    const made = writeHtml({ type: 'root', children: [{ type: 'paragraph', children: [{ type: 'text', value: 'Put 900 mm here:' }] }, { type: 'code', lang: 'yaml', value: lines }] }, [], { title: 'Lines', lang: 'en' });
    expect(made).toContain(`<pre><code>${lines}\n</code></pre>`);
    expect(made).toContain('Put 900\u00A0mm here:');
  });

  it('leaves out a picture nobody handed over', () => {
    const some = writeHtml(report.tree, report.pictures.slice(0, 1), { title: 'x', lang: 'en' });
    expect(some.match(/<svg /gu)).toHaveLength(1);
    expect(some).not.toContain('<img');
  });

  it('drops raw HTML, links and styles that might stand in a tree', () => {
    const made = writeHtml(
      { type: 'root', children: [{ type: 'html', value: '<script>x</script>' }, { type: 'paragraph', children: [{ type: 'html', value: '<b onclick="x">' }, { type: 'link', url: 'javascript:alert(1)', children: [{ type: 'text', value: 'words' }] }] }] },
      [], { title: 'x', lang: 'en' },
    );
    expect(made).toContain('words');
    expect(made).not.toMatch(/<script|javascript|onclick|<a /u);
  });

  it('names the columns and rows of every table and lets wide ones scroll by themselves, reachable by keyboard', () => {
    const tables = page.match(/<table/gu)?.length ?? 0;
    expect(tables).toBeGreaterThan(5);
    expect(page.match(/<div class="wide[^"]*" role="region" tabindex="0" aria-label="Table: [^"]+"><table/gu)).toHaveLength(tables);
    expect(page.match(/<th(?=[ >])/gu)?.length).toBe(page.match(/<th scope="(?:col|row)"/gu)?.length);
  });

  it('has at least 7:1 contrast for text in both colour schemes', () => {
    const schemes = [...screenStyle.matchAll(/--ink: (#\w{6}); --paper: (#\w{6}); --soft: (#\w{6}); --rule: #\w{6}; --panel: (#\w{6})/gu)];
    expect(schemes).toHaveLength(2);
    for (const [, ink = '', paper = '', soft = '', panel = ''] of schemes) {
      for (const [text, ground] of [[ink, paper], [soft, paper], [ink, panel]] as const) expect(contrast(text, ground)).toBeGreaterThanOrEqual(7);
    }
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  });

  it('says verdicts in words, so that nothing hangs on colour', () => {
    expect(`${screenStyle}${printStyle('A4')}`).not.toMatch(/(?:^|[^-])color: (?:red|green|#(?!fff|000|1a1a1a|161616))/u);
    expect(page).toContain('<strong>▲\u00A0Caution</strong>');
  });
});
