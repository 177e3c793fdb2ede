import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import { cautions } from '../../src/findings/cautions.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { ruleList } from '../../src/rules/check/show.js';
import { fact } from './helpers.js';

const folder = new URL('../../rules/', import.meta.url);
const read = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
const page = read('README.md');
/** Every YAML snippet of the page, unindented, with the line it starts on. */
const snippets = [...page.matchAll(/^( *)```yaml\n([\s\S]*?)^ *```/gm)].map((match) => ({
  line: page.slice(0, match.index).split('\n').length,
  text: match[2]!.split('\n').map((row) => row.slice(match[1]!.length)).join('\n'),
}));
const sources = new Set((parse(read('sources.yaml')) as { readonly list: readonly { readonly key: string }[] }).list.map(({ key }) => key));
const check = (text: string) => checkRuleset((name) => (name === 'my-class.yaml' ? text : read(name)), 'my-class.yaml', { sources });

describe('the page on rules', () => {
  test('has snippets', () => {
    expect(snippets.length).toBeGreaterThanOrEqual(6);
  });

  test.each(snippets)('the snippet in line $line loads, and its examples come out', async ({ text }) => {
    const { ruleset, problems, examples } = await check(text);
    expect(problems).toEqual([]);
    const own = ruleset!.layers.at(-1)!;
    expect(own.limits.length + own.rules.length + own.off.length).toBeGreaterThan(0);
    for (const rule of own.rules) expect(examples.filter((outcome) => outcome.rule === rule.id && outcome.ok)).toHaveLength(3);
  });

  test('the first snippet does what it is for: staples at 45 mm pass the baseline and not the class', async () => {
    const facts = [fact('cloth.staple_spacing_mm', 'cloth', 45)];
    const verdict = async (text: string): Promise<string | undefined> => {
      const { ruleset } = await check(text);
      return (await evaluateRules(ruleset!, facts)).findings.find(({ rule }) => rule === 'cloth/staple-spacing')?.verdict;
    };
    expect(await verdict(snippets[0]!.text.replace(/limits:[\s\S]*/, ''))).toBe('clear');
    expect(await verdict(snippets[0]!.text)).toBe('caution');
  });

  test('names only facts, rules, cautions and files that exist', async () => {
    const { ruleset } = await check(snippets[0]!.text);
    const prose = page.replace(/```[\s\S]*?```/g, '');
    const paths = [...prose.matchAll(/`\{?((?:frame|bar|crossbar|corner|board|fastening|cloth|hanging|cutting|warp|lumber)\.\w+)\}?`/g)].map((match) => match[1]!);
    expect(paths.length).toBeGreaterThan(1);
    expect(paths.filter((path) => !catalogueByPath.has(path) && !/\.yaml$/.test(path))).toEqual([]);
    const ids = new Set(ruleList(ruleset!).map(({ id }) => id));
    for (const [, id] of prose.matchAll(/rules show ([a-z-]+\/[a-z-]+)/g)) expect(ids).toContain(id);
    for (const { id } of cautions) expect(page).toContain(`\`${id}\``);
    for (const [, file] of prose.matchAll(/`((?:baseline|class-[a-z-]+|shelf|sources)\.yaml)`/g)) expect(read(file!)).not.toBe('');
  });
});
