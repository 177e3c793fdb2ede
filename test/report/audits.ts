import { readFileSync } from 'node:fs';
import { auditText, type Bench } from '../../src/audit.js';
import { once } from '../../src/base/once.js';
import { readSources } from '../../src/base/sources.js';
import type { Audit, Change } from '../../src/report/audit-view.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { readShelf } from '../../src/shelf/read-shelf.js';

const fileText = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const sources = readSources(fileText('rules/sources.yaml'));

/** Read once: nothing that is read changes. */
const bench = once((): Bench => {
  const shelf = readShelf(fileText('rules/shelf.yaml'), 'shelf.yaml');
  const ruleset = loadRuleset((name) => fileText(`rules/${name}`), 'baseline.yaml', { sources: new Set(sources.map(({ key }) => key)) });
  if (!shelf.ok || !ruleset.ok) throw new Error('the shipped shelf and ruleset must load');
  return { shelf: shelf.value, ruleset: ruleset.value, seed: 7, samples: 200 };
});

/** A finished audit of a plan given as text, by the shipped shelf and ruleset, with everything a report may be given. */
export async function auditOf(text: string): Promise<Audit> {
  const on = bench();
  const result = await auditText(text, 'plan.yaml', on);
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path}: ${p.found}`).join('\n'));
  return { ...result.value, sources, changes: madeUpChanges.map((change) => ({ ...change, drawn: result.value })) };
}

/** Changes as an audit would list them; the figures are made up, since the report only prints them. */
const madeUpChanges: readonly Omit<Change, 'drawn'>[] = [
  { words: 'Glue one more board to each bar.', verdict: 'clear', twist_reserve: 4.2, lift_chance: 0.001, cost: 61.5, weight_kg: 3.4 },
  { words: 'Turn the bars on edge.', verdict: 'caution', twist_reserve: null, lift_chance: null, cost: null, weight_kg: null },
];

/** The plan with every field, in millimetres: three frames, crossbars both ways, braces, screws, measured boards. */
export const everything = fileText('test/plans/everything.yaml');
/** A plan in shop inches. */
export const inches = fileText('test/plans/inches.yaml');
/** The smallest plan. */
export const smallest = fileText('test/plans/smallest.yaml');

/** An oblong too weak for its size: the report has stops to tell of. */
export const weak = `plan: 1
name: Long shelf for the hall
face: { width: 1700 mm, height: 1100 mm }
bars: { stock: strip-19x38, lay: flat }
hang: { by: two-hooks }
`;
