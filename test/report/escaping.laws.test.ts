import fc from 'fast-check';
import type { Nodes } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Audit } from '../../src/report/audit-view.js';
import { composeReport } from '../../src/report/compose.js';
import { writeHtml } from '../../src/report/html.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { bullets, document, heading, paragraph, setApart, steps, strong, table } from '../../src/report/tree.js';
import { auditOf, smallest } from './audits.js';
import { nastyText } from './nasty-text.js';
import { readXml } from './svg-reading.js';
import { runs } from '../effort.js';

/** Everything in an audit that people outside the project may have written, replaced. */
function written(audit: Audit, words: string): Audit {
  const { plan, shelf } = audit;
  const lumber = { ...audit.model.bars.top.stock, nominal: words };
  const cloth = shelf.cloths[plan.cloth.use];
  return {
    ...audit,
    plan: { ...plan, name: words },
    shelf: { ...shelf, name: words, currency: words, cloths: cloth === undefined ? shelf.cloths : { ...shelf.cloths, [plan.cloth.use]: { ...cloth, name: words } }, lumber: { ...shelf.lumber, [lumber.key]: lumber } },
    findings: audit.findings.map((f, i) => (i % 3 === 0 ? { ...f, say: words, do: [words, words], cautions: [...f.cautions, words], source: words } : f)),
    silent: [{ rule: words, why_read: words }],
    assumed: [{ path: words, value: words }],
    left_out: [words],
    applied: { name: words, version: words, date: words, fingerprint: '0a1b2c3d', switched_off: [{ rule: words, reason: words }], loosened: [{ limit: words, was: words, is: words, read: { was: words, is: words }, surely: true }], replaced: [{ rule: words, was: words, is: words, read: { was: words, is: words } }] },
    changes: [{ words, verdict: 'stop', twist_reserve: null, lift_chance: null, cost: null, weight_kg: null, drawn: audit }],
  };
}

/** Types of all nodes in order, without the texts: what a reader's program makes of the Markdown. */
function skeleton(markdown: string): readonly string[] {
  const types: string[] = [];
  const walk = (node: Nodes): void => {
    if (node.type !== 'text') types.push(node.type === 'heading' ? `heading ${node.depth}` : node.type === 'image' ? `image ${node.url}` : node.type);
    if ('children' in node) for (const child of node.children) walk(child);
  };
  walk(fromMarkdown(markdown, { mdastExtensions: [gfmFromMarkdown()] }));
  return types;
}

const linksOf = (markdown: string): readonly string[] => {
  const urls: string[] = [];
  const walk = (node: Nodes): void => {
    if (node.type === 'link') urls.push(node.url);
    if ('children' in node) node.children.forEach(walk);
  };
  walk(fromMarkdown(markdown, { mdastExtensions: [gfmFromMarkdown()] }));
  return urls;
};

const tag = /<[!/]?[a-z][^"<>]*(?:"[^"]*"[^"<>]*)*>/giu;
const tagNames = (html: string): readonly string[] => {
  const body = html.replace(/<style>.*<\/style>/su, '');
  expect(body.replace(tag, '')).not.toContain('<');
  return [...body.matchAll(tag)].map(([found]) => found.replace(/"[^"]*"/gu, '""'));
};

let plain: Audit;
beforeAll(async () => {
  plain = await auditOf(smallest);
});

describe('what people wrote stays text', () => {
  it('in Markdown: a whole report parses to the same headings, lists, tables and pictures whatever the words', () => {
    const expected = skeleton(writeMarkdown(composeReport(written(plain, 'plain words')).tree));
    // The one line of HTML is the page's own last, which says who made it.
    expect(expected.filter((part) => part.startsWith('html'))).toHaveLength(1);
    expect(expected.at(-1)).toMatch(/^html/);
    // Links lead to the page's own parts and nowhere else.
    const links = linksOf(writeMarkdown(composeReport(written(plain, 'plain words')).tree));
    expect(links.length).toBeGreaterThan(0);
    expect(links.filter((url) => !/^#[a-z0-9-]+$/u.test(url))).toEqual([]);
    fc.assert(fc.property(nastyText, (words) => {
      fc.pre(/\S/u.test(words));
      expect(skeleton(writeMarkdown(composeReport(written(plain, `x${words}`)).tree))).toEqual(expected);
    }), { numRuns: runs(40) });
  });

  it('in HTML: a whole page has the same tags and attributes whatever the words', () => {
    const page = (words: string): string => {
      const { tree, pictures } = composeReport(written(plain, words));
      return writeHtml(tree, pictures, { title: words, lang: words });
    };
    const expected = tagNames(page('plain words'));
    fc.assert(fc.property(nastyText, (words) => {
      expect(tagNames(page(`x${words}`))).toEqual(expected);
    }), { numRuns: runs(40) });
  });

  it('in SVG: every picture stays strict XML with the same elements whatever the words', () => {
    const drawn = (words: string): readonly string[] => composeReport(written(plain, words)).pictures.map(({ svg }) => readXml(svg).tags.map(({ name }) => name).join(' '));
    const expected = drawn('plain words');
    fc.assert(fc.property(nastyText, (words) => {
      expect(drawn(`x${words}`)).toEqual(expected);
    }), { numRuns: runs(30) });
  });

  it('in every kind of block: paragraph, list, quote, heading and emphasis give the words back', () => {
    fc.assert(fc.property(nastyText, (nasty) => {
      const words = `x${nasty}`;
      const markdown = writeMarkdown(document([heading(2, words), paragraph(words), paragraph('a ', strong(words), ' b'), bullets([words, [words, ' more']]), steps([words]), setApart(paragraph(words))]));
      const plainOne = writeMarkdown(document([heading(2, 'x'), paragraph('x'), paragraph('a ', strong('x'), ' b'), bullets(['x', ['x', ' more']]), steps(['x']), setApart(paragraph('x'))]));
      expect(skeleton(markdown)).toEqual(skeleton(plainOne));
    }), { numRuns: runs(300) });
  });

  it('in tables: no cell ends early and no row is added', () => {
    const bars = (line: string): number => [...line.replace(/\\[\\|]/gu, '')].filter((c) => c === '|').length;
    fc.assert(fc.property(fc.array(nastyText, { minLength: 1, maxLength: 4 }), (cells) => {
      const lines = writeMarkdown(document([table([{ head: 'one' }, { head: 'two', align: 'right' }], cells.map((cell) => [cell, `x${cell}`]))]))
        .split('\n\n<!--')[0]!.trimEnd().split('\n');
      expect(lines).toHaveLength(cells.length + 2);
      for (const line of lines) expect(bars(line)).toBe(3);
    }), { numRuns: runs(300) });
  });
});
