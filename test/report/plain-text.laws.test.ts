import fc from 'fast-check';
import { gfmToMarkdown } from 'mdast-util-gfm';
import { toMarkdown } from 'mdast-util-to-markdown';
import { expect, test } from 'vitest';
import { anchors } from '../../src/report/anchors.js';
import { nastyText } from './nasty-text.js';
import { bullets, document, heading, paragraph, setApart, steps, strong, table } from '../../src/report/tree.js';
import { writeMarkdown } from '../../src/report/markdown.js';

/** Words near the border between what needs escaping and what does not. */
const words = fc.array(fc.constantFrom('a', 'W', 'w', '7', '12', ' ', '.', ')', '(', '-', '+', '=', ',', ';', '%', '"', "'", '?', '$', '!', '[', ']', '*', '_', '|', '&', 'amp;', '#', '…', 'é', '`', '~', ':', '/', '●', '–', '\u00a0'), { minLength: 1, maxLength: 9 }).map((parts) => parts.join('')).filter((text) => !/:\/\/|www\./i.test(text));

test('text that is written as it stands is what the library would write', () => {
  const slow = (...[root]: Parameters<typeof writeMarkdown>): string => toMarkdown(root, { bullet: '-', emphasis: '_', strong: '*', rule: '-', listItemIndent: 'one', extensions: [gfmToMarkdown({ tablePipeAlign: false })] });
  fc.assert(fc.property(words, words, (one, other) => {
    const root = document([heading(2, one), paragraph(one, strong(other), one), paragraph(`${one} `, strong(other), `: ${one}`), steps([[strong(one), ` ${other}`]]), paragraph(strong(one), strong(other)), setApart(paragraph(strong(one), ` ${other}`)), setApart(paragraph(one), paragraph(other)), heading(2, 'Cut list'), paragraph(`${one}“Cut list”${other}`), bullets([one, other]), table([{ head: one }, { head: other, align: 'right' }], [[other, one], ['', other]]), steps([other, one]), bullets([one]), heading(3, other)]);
    expect(writeMarkdown(root).split('\n\n<!--')[0]).toBe(slow(root).split('\n\n<!--')[0]!.trimEnd());
  }), { numRuns: 300 });
});

test('the address of a heading keeps letters and figures of any script, and nothing else but hyphens', () => {
  const kept = (title: string): string => title.toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, '').trim().replace(/\s/gu, '-') || 'part';
  fc.assert(fc.property(fc.oneof(words, nastyText), (title) => {
    expect(anchors([title])).toEqual([kept(title)]);
  }));
});
