import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { problemAt, problemCodes } from '../../src/base/messages.js';
import type { Problem } from '../../src/base/problem.js';
import type { Details, Place } from '../../src/base/wording.js';
import { sheetProblem, wordings as sheetWordings } from '../../src/bench-sheet/sheet-problems.js';
import { pileProblem, wordings as pileWordings } from '../../src/pile/pile-problems.js';
import { shopProblem, wordings as shopWordings } from '../../src/shop/shop-problems.js';
import type { UnitSystem } from '../../src/base/names.js';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import { cautions } from '../../src/findings/cautions.js';
import type { Finding, Verdict } from '../../src/findings/finding.js';
import { composeReport } from '../../src/report/compose.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { valueAndLimit } from '../../src/report/words/check-line.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { checkProblem, wordings as checkWordings } from '../../src/rules/check/check-problems.js';
import { factsOf } from '../../src/rules/check/examples.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { ruleProblem, wordings, type RuleProblemCode } from '../../src/rules/read/rule-problems.js';
import { linesOf, type Rule, type Ruleset } from '../../src/rules/ruleset.js';
import { auditOf, everything, inches, smallest, weak } from '../report/audits.js';
import { faultsOf } from './faults.js';

const read = (file: string): string => readFileSync(new URL(`../../rules/${file}`, import.meta.url), 'utf8');

function ruleset(file: string): Ruleset {
  const loaded = loadRuleset((name) => read(name), file);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return loaded.value;
}

/** Values that bring a rule to each verdict it can have, and its sentences to each count: its examples, what lies far beyond them, none, one, two. */
function values(rule: Rule): readonly Readonly<Record<string, number | string | null>>[] {
  const { examples } = rule;
  if (examples === null) return [];
  const [line] = linesOf(rule.require);
  const path = line!.fact;
  const spec = catalogueByPath.get(path)!;
  const given = [examples.clear, examples.edge, examples.fails].filter((one) => one !== null);
  const fails = examples.fails[path];
  const far = typeof fails === 'number' ? [fails * 1000, fails / 1000, -Math.abs(fails) * 3, 0, 1, 2, 1.04, 12.3456].map((n) => (spec.unit === 'count' ? Math.round(n) : n)) : (spec.words ?? []);
  const count = (n: number): Readonly<Record<string, number>> => Object.fromEntries(Object.keys(examples.with).filter((key) => catalogueByPath.get(key)?.unit === 'count').map((key) => [key, n]));
  return [...given, ...far.map((value) => ({ ...examples.fails, [path]: value })), { ...examples.fails, ...count(1) }, { ...examples.fails, ...count(2) }, { [path]: null }]
    .map((one) => ({ ...examples.with, ...one }));
}

const words = (finding: Finding, units: UnitSystem): readonly string[] => [
  finding.say, ...finding.do, finding.title, `${finding.title}: ${valueAndLimit(finding, units, 'EUR')}.`,
];

describe.each(['baseline.yaml', 'class-first-year.yaml', 'class-advanced.yaml'])('every sentence of %s', (file) => {
  const rules = ruleset(file);

  test('reads without a slip, for every verdict, in both systems, at every count', async () => {
    const found: string[] = [];
    const seen = new Map<string, Set<Verdict>>();
    for (const rule of rules.rules) {
      for (const units of ['metric', 'inch'] as const) {
        for (const one of values(rule)) {
          const facts = factsOf(rule.each, one as Readonly<Record<string, number | string>>);
          const { findings, silent } = await evaluateRules({ ...rules, rules: [rule] }, facts, { units });
          for (const finding of findings) {
            seen.set(rule.id, (seen.get(rule.id) ?? new Set()).add(finding.verdict));
            found.push(...words(finding, units).flatMap((text) => faultsOf(text).map((fault) => `${rule.id} (${finding.verdict}, ${units}): ${fault}`)));
          }
          found.push(...silent.flatMap(({ why }) => faultsOf(why).map((fault) => `${rule.id} (silent): ${fault}`)));
        }
      }
    }
    expect([...new Set(found)]).toEqual([]);
    // The values above must have brought out what there is to say.
    const asked = rules.rules.filter(({ examples }) => examples !== null);
    const without = (verdict: Verdict): readonly string[] => asked.filter(({ id }) => seen.get(id)?.has(verdict) !== true).map(({ id }) => id);
    expect(without('clear')).toEqual([]);
    expect(asked.filter(({ id }) => !seen.get(id)?.has('caution') && !seen.get(id)?.has('stop')).map(({ id }) => id)).toEqual([]);
    const stops = asked.filter(({ otherwise }) => otherwise.kind !== 'always' || otherwise.verdict === 'stop').map(({ id }) => id);
    expect(without('stop').filter((id) => stops.includes(id))).toEqual([]);
  });
});

/** What messages are told, as readers tell it. */
const details = [
  { value: '12', name: 'plies', allowed: '14 mm' }, { value: '47.5', name: 'width', allowed: '14 mm' }, { value: 'flta', name: 'lay', allowed: '`flat` or `edge`', nearest: 'flat' },
  { value: 'round', name: 'lay', allowed: '`flat` or `edge`' }, { value: '0 entries', name: 'crossbars', allowed: '12 entries' },
];
/** Messages that are told something of another kind: braces, or a whole hint. */
const ofAnotherKind = ['unknown-placeholder', 'limit-form', 'too-many-rules'];

test('every message about what people write reads without a slip and says what to write', () => {
  const place = { file: 'plan.yaml', path: 'bars.lay', line: 3, column: 8 };
  const told = (wordings: object, tell: (code: never, at: Place, told: Details) => Problem): readonly Problem[] => Object.keys(wordings).flatMap((code) => details.map((one) => tell(code as never, place, one)));
  const problems = [...problemCodes.flatMap((code) => details.map((one) => problemAt(code, place, one))), ...told(checkWordings, checkProblem), ...told(sheetWordings, sheetProblem), ...told(pileWordings, pileProblem), ...told(shopWordings, shopProblem), ...(Object.keys(wordings) as RuleProblemCode[]).filter((code) => !ofAnotherKind.includes(code)).flatMap((code) => details.map((one) => ruleProblem(code, place, one)))];
  const deadEnds = /^(?:Write it as allowed|Remove it|Choose one of these|Use one of these(?: units)?|Take some away|Check the number)\.$/u;
  expect(problems.filter(({ hint }) => deadEnds.test(hint)).map(({ code, hint }) => `${code}: ${hint}`)).toEqual([]);
  expect(problems.filter(({ hint }) => !/[.?`]$/u.test(hint.trim())).map(({ code, hint }) => `${code}: ${hint}`)).toEqual([]);
  expect([...new Set(problems.flatMap(({ code, found, allowed, hint }) => faultsOf(`Found ${found}, allowed ${allowed}. ${hint}`).map((fault) => `${code}: ${fault}`)))]).toEqual([]);
});

test('every caution reads without a slip', () => {
  expect(cautions.flatMap(({ text }) => faultsOf(text))).toEqual([]);
});

test.each([['everything', everything], ['inches', inches], ['smallest', smallest], ['weak', weak]])('the whole report of %s reads without a slip', async (_, plan) => {
  const { tree } = composeReport(await auditOf(plan));
  const text = writeMarkdown(tree).split('\n').filter((line) => !line.startsWith('![') && !line.startsWith('| -') && !/^\| *:?-/u.test(line));
  expect([...new Set(text.flatMap((line) => faultsOf(line.replace(/\\([[\]_*|<&~])/gu, '$1').replace(/^\s*(?:[-*]|\d+\.) /u, '').replace(/\|/gu, '|'))))]).toEqual([]);
});

/** Keys of the shelf as plans and shelves write them; what they stand for has a name. */
const keys = /\b(?:strip|board|stud|square|planed|pine)-\d+x\d+|\b(?:brad|pin|nail|screw)-\w*\d+|\bpva\b|\b(?:cotton-duck|linen)-\d+/u;

test.each([['everything', everything], ['inches', inches], ['smallest', smallest], ['weak', weak]])('the report of %s calls nothing by its key but what the plan leaves to be assumed', async (_, plan) => {
  const whole = writeMarkdown(composeReport(await auditOf(plan)).tree);
  const said = whole.slice(0, whole.indexOf('## What this rests on')).replace(/`[^`\n]*`/gu, '…');
  expect(said.length).toBeGreaterThan(5000);
  expect(said.split('\n').filter((line) => keys.test(line))).toEqual([]);
  expect(keys.test('two strip-19x38, one brad-18ga-25')).toBe(true);
});

test('the faults are found where they are', () => {
  expect(['the the bar', 'The the bar', 'again..', 'a bar of mm', 'the bar\'s end', '19 x 38 mm', '340 g/m2', '1 plans', '2/4 in', 'It {about}.', 'lean (hanging)', 'of the bars\' stock', 'two strip-19x38 on edge', 'its hold comes down to: glue', 'coats two coats', '7 rules did not speak'].filter((text) => faultsOf(text).length !== 1)).toEqual([]);
  expect(faultsOf('1 plan of 19 × 38 mm, 3/4 in thick; the bar’s end is 1 in 6. Write `19 x 38 mm`.')).toEqual([]);
});
