import type { Audit } from '../../src/report/audit-view.js';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue, catalogueByPath } from '../../src/facts/catalogue.js';
import type { FactUnit } from '../../src/facts/declare.js';
import type { FactPath } from '../../src/facts/fact.js';
import { leftOutOfCharts } from '../../src/chart/subjects.js';

/** The ending of a path, for units that have one. */
const endings: Readonly<Partial<Record<FactUnit, RegExp>>> = {
  'mm': /_mm$/, 'mrad': /_mrad$/, 'N': /_N$/, 'Nm': /_Nm$/, 'N/m': /_N_per_m$/, 'kg': /_kg$/, 'deg': /_deg$/, 'deg/m': /_deg_per_m$/, 'Hz': /_Hz$/, 'share': /_share$/, 'pct': /_pct$/,
  'days': /_days$/, 'ml': /_ml$/, 'MPa': /_MPa$/, 'C': /_C$/, 'cost': /cost$/,
};
/** Everything that ends like a unit. */
const anyEnding = new RegExp(Object.values(endings).map(({ source }) => source).join('|'));

describe('every fact that is declared', () => {
  test('carries its unit as the ending of its path, and no other', () => {
    const wrong = catalogue.filter(({ path, unit }) => (endings[unit] === undefined ? anyEnding.test(path) : !endings[unit].test(path)));
    expect(wrong.map(({ path, unit }) => `${path} in ${unit}`)).toEqual([]);
  });

  test('is declared once, says what it means in a sentence, and names a source that is listed', () => {
    expect(catalogueByPath.size).toBe(catalogue.length);
    expect(catalogue.filter(({ meaning }) => !/^[A-Z].*[.]$/.test(meaning)).map(({ path }) => path)).toEqual([]);
    const listed = readFileSync(new URL('../../rules/sources.yaml', import.meta.url), 'utf8');
    const own = new Set(['physics', 'practice', 'proposal', 'measured']);
    expect(catalogue.filter(({ source }) => !own.has(source) && !listed.includes(`{ key: ${source},`)).map(({ path, source }) => `${path}: ${source}`)).toEqual([]);
  });

  test('is known from sampled frames alone where the seed decides, and from the sizes that are cut where nothing else is needed', () => {
    const from = (what: string): readonly FactPath[] => catalogue.filter(({ known_from }) => known_from === what).map(({ path }) => path).sort();
    expect(from('samples')).toEqual(['warp.bar_bow_chance']);
    expect(from('wire')).toEqual(['hanging.inward_bow_mm']);
    expect(from('cut').filter((path) => !/^(cutting\.|cloth\.(cut_|roll_short))/.test(path))).toEqual([]);
  });

  test('has its words where a chart leaves it out, and every word is there for some fact', () => {
    expect(Object.keys(leftOutOfCharts).sort()).toEqual([...new Set(catalogue.flatMap(({ frame_by_frame }) => frame_by_frame ?? []))].sort());
  });
});

test('the path of a fact is a type: a slip of the pen does not compile', () => {
  const right: FactPath = 'frame.twist_reserve';
  // @ts-expect-error no fact has this path
  const wrong: FactPath = 'frame.twist_reserv';
  expect([catalogueByPath.has(right), catalogueByPath.has(wrong)]).toEqual([true, false]);
});

test('so is the fact that a finding names', () => {
  const right: Audit['findings'][number]['fact'] = 'bar.span_mm';
  // @ts-expect-error no finding names this one
  const wrong: Audit['findings'][number]['fact'] = 'bar.spam_mm';
  expect([catalogueByPath.has(right as FactPath), catalogueByPath.has(wrong)]).toEqual([true, false]);
});
