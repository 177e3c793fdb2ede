import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readSheet } from '../../src/bench-sheet/read-sheet.js';
import { readSources } from '../../src/base/sources.js';
import { packageFolder, rulesFolder } from '../../src/cli/files.js';
import { loadShelf } from '../../src/cli/load.js';
import { planDefaults } from '../../src/plan/defaults.js';
import { readPile } from '../../src/pile/read-pile.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { readShop } from '../../src/shop/read-shop.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { blocksOf, fileNameOf, linksOf, page } from './readme.js';

const readme = page('README.md');
const sources = readSources(readFileSync(join(rulesFolder, 'sources.yaml'), 'utf8'));
const keys = new Set(sources.map(({ key }) => key));
const shipped = value(loadShelf(undefined));
const yaml = blocksOf(readme).filter(({ language }) => language === 'yaml').map((block) => ({ ...block, name: fileNameOf(block.text), data: parse(block.text) as Readonly<Record<string, unknown>> }));
const kindOf = (data: object): string => (['sheet', 'pile', 'shop', 'plan', 'shelf', 'ruleset'].find((kind) => kind in data) ?? 'fragment');
/** The shelves of the page laid over the shipped one, so that its plans may name their boards. */
const shelf = yaml.filter(({ data }) => kindOf(data) === 'shelf').reduce((below, { text, name }) => value(readShelf(text, String(name), below, keys)), shipped);

describe('what README.md shows', () => {
  test('is there: plans, a shelf, rulesets, a pile, a workshop and a bench sheet', () => expect(new Set(yaml.map(({ data }) => kindOf(data)))).toEqual(new Set(['plan', 'shelf', 'ruleset', 'pile', 'shop', 'sheet'])));

  test.each(yaml)('the block in line $line is a file that loads', async ({ text, name, data }) => {
    expect(name).not.toBeNull();
    if (kindOf(data) === 'plan') expect(readPlanWith(text, String(name), shelf)).toMatchObject({ ok: true, warnings: [] });
    else if (kindOf(data) === 'pile') expect(readPile(text, String(name), shelf)).toMatchObject({ ok: true, warnings: [] });
    else if (kindOf(data) === 'shop') expect(readShop(text, String(name))).toMatchObject({ ok: true, warnings: [] });
    else if (kindOf(data) === 'sheet') expect(readSheet(text, String(name))).toMatchObject({ ok: true, warnings: [] });
    else if (kindOf(data) === 'shelf') expect(readShelf(text, String(name), shipped, keys)).toMatchObject({ ok: true, warnings: [] });
    else {
      const checked = await checkRuleset((file) => (file === name ? text : readFileSync(join(rulesFolder, file), 'utf8')), String(name), { sources: keys });
      expect(checked.problems).toEqual([]);
      expect(checked.ruleset?.layers.at(-1)?.file).toBe(name);
    }
  });

  test('quotes limits of the baseline as they are', () => {
    const { limits } = parse(readFileSync(join(rulesFolder, 'baseline.yaml'), 'utf8')) as { readonly limits: Readonly<Record<string, Readonly<Record<string, unknown>>>> };
    expect(readme).toContain(`Below ${String(limits['twist-reserve']!['stop'])}: stop. Below ${String(limits['twist-reserve']!['caution'])}: caution.`);
    expect(limits['corner-lift']!['of']).toBe('frame.shorter_side_mm');
    expect(readme).toContain(`The limit is ${String(limits['corner-lift']!['value'])} of the shorter side.`);
    const { working_N_per_m, peak_over_working } = planDefaults;
    expect(readme).toContain(`(${working_N_per_m}, ${working_N_per_m * peak_over_working}, ${shipped.proposals['accidental-pull']!.value} N/m by default)`);
  });

  test('names sources with the status they have', () => {
    const rows = [...readme.matchAll(/^\| (seen|memory|practice|proposal|measured|derived) \|[^|]*\| (.*) \|$/gm)];
    expect(rows.map(([, status]) => status).sort()).toEqual([...new Set(sources.map(({ status }) => status as string))].sort());
    for (const [, status, named] of rows) for (const [, key] of (named as string).matchAll(/`([^`]+)`/g)) expect(sources.find((source) => source.key === key)?.status, key).toBe(status);
  });
});

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  test.each(linksOf(page(name)))('links to %s, which is there', (target) => expect(existsSync(join(packageFolder, target))).toBe(true));
  test('has links', () => expect(linksOf(page(name)).length).toBeGreaterThan(2));
  test('says nothing of where it was written', () => expect(page(name)).not.toMatch(/\/(?:work|tmp|home|root)\//));
});

test('the top of the project holds what it should and nothing else', () => {
  const allowed = ['DEVELOPERS.md', 'LICENSE', 'README.md', 'package-lock.json', 'package.json', 'reports', 'rules', 'src', 'test', 'tsconfig.json'];
  const made = ['node_modules', 'dist', 'coverage'];
  const found = readdirSync(packageFolder).filter((entry) => !entry.startsWith('.') && !made.includes(entry)).sort();
  expect(found).toEqual(allowed);
});

/** The value of a result that must be one. */
function value<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
