import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { auditText, type Bench } from '../../src/audit.js';
import { packageFolder, rulesFolder } from '../../src/cli/files.js';
import { loadRules, loadShelf, loadSources, textsBeside } from '../../src/cli/load.js';
import { readSheet } from '../../src/bench-sheet/read-sheet.js';
import { withMeasured } from '../../src/bench-sheet/judge-sheet.js';
import { composeReport } from '../../src/report/compose.js';
import { writeHtml } from '../../src/report/html.js';
import { writeJson } from '../../src/report/json.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { Dice, mutant } from './mutate.js';

/**
 * Feeds changed plans, shelves, rulesets and bench sheets to the whole way from text to report, and holds what comes to
 * what must always be true: nothing throws, no number is infinite or no number, nothing is clear that is not known, no
 * script gets into a page, nothing takes longer than two seconds. `npm run fuzz -- --seconds 60 --seed 1`.
 */
const argument = (name: string, otherwise: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : Number(process.argv[at + 1]);
};
const [seconds, seed, inputs] = [argument('seconds', 60), argument('seed', 1), argument('inputs', Infinity)];
const slow_ms = 2000;

const shelf = must(loadShelf(undefined));
const bench: Bench = { shelf, ruleset: must(loadRules(undefined)), seed: 1, samples: 200, sources: loadSources() };
const read = (...parts: readonly string[]): string => readFileSync(join(packageFolder, ...parts), 'utf8');
const plansOf = (...folder: readonly string[]): readonly string[] =>
  readdirSync(join(packageFolder, ...folder)).filter((name) => name.endsWith('.yaml') && !name.includes('.shelf.')).sort().map((name) => read(...folder, name));
const planTexts = [...plansOf('test', 'plans'), ...plansOf('test', 'plans', 'practice'), ...plansOf('reports', 'class-first-year', 'plans')];
const plans: readonly unknown[] = planTexts.map((text) => parse(text) as unknown);
const usualPlan = planTexts[0] as string;
const shelfTree = parse(readFileSync(join(rulesFolder, 'shelf.yaml'), 'utf8')) as Record<string, Record<string, unknown>>;
const rulesTree = parse(readFileSync(join(rulesFolder, 'baseline.yaml'), 'utf8')) as { readonly rules: readonly unknown[]; readonly limits: Record<string, unknown> };
const sheetTree = {
  sheet: 1, plan: 'Small study', when: 'after-cloth', 'corner-lift': '4 mm', lifted: 'top-right', diagonals: ['640 mm', '642 mm'],
  bows: { top: '1 mm', left: '2 mm' }, tap: '28 Hz', push: { weight: '500 g', sag: '9 mm' }, weight: '1.4 kg',
};

const counts = { inputs: 0, refused: 0, judged: 0, slowest_ms: 0 };
const faults: string[] = [];
const dice = new Dice(seed);
const end = performance.now() + seconds * 1000;
while (performance.now() < end && counts.inputs < inputs && faults.length < 10) {
  const kind = dice.pick(['plan', 'plan', 'plan', 'shelf', 'rules', 'sheet'] as const);
  const text = mutantOf(kind);
  const start = performance.now();
  try {
    counts[(await tried(kind, text)) ? 'judged' : 'refused'] += 1;
  } catch (error) {
    fault(kind, text, error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
  const took_ms = performance.now() - start;
  counts.slowest_ms = Math.max(counts.slowest_ms, took_ms);
  if (took_ms > slow_ms) fault(kind, text, `took ${took_ms.toFixed(0)} ms`);
  counts.inputs += 1;
}
process.stdout.write(`seed ${seed}: ${counts.inputs} inputs, ${counts.judged} judged, ${counts.refused} refused with a message, slowest ${counts.slowest_ms.toFixed(0)} ms, `);
process.stdout.write(`peak memory ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB, ${faults.length} faults\n`);
for (const one of faults) process.stdout.write(`\n${one}\n`);
process.exitCode = faults.length > 0 ? 1 : 0;

function mutantOf(kind: 'plan' | 'shelf' | 'rules' | 'sheet'): string {
  if (kind === 'plan') return mutant(dice.pick(plans), dice);
  if (kind === 'sheet') return mutant(sheetTree, dice);
  if (kind === 'rules') {
    const limits = Object.fromEntries(Object.entries(rulesTree.limits).filter(() => dice.roll(6) === 0));
    return mutant({ ruleset: 1, name: 'Changed', 'builds-on': ['baseline'], limits, rules: rulesTree.rules.filter(() => dice.roll(12) === 0) }, dice);
  }
  const part = dice.pick(Object.keys(shelfTree).filter((key) => typeof shelfTree[key] === 'object'));
  return mutant({ shelf: 1, [part]: shelfTree[part] }, dice);
}

/** Runs the whole way; true when it came to a verdict, false when the input was refused with messages. */
async function tried(kind: 'plan' | 'shelf' | 'rules' | 'sheet', text: string): Promise<boolean> {
  let used = bench;
  if (kind === 'shelf') {
    const laid = readShelf(text, 'own.yaml', shelf);
    if (!laid.ok) return refused(laid.problems);
    used = { ...bench, shelf: laid.value };
  }
  if (kind === 'rules') {
    const loaded = loadRuleset(textsBeside(join(rulesFolder, 'changed.yaml'), text), join(rulesFolder, 'changed.yaml'));
    if (!loaded.ok) return refused(loaded.problems);
    used = { ...bench, ruleset: loaded.value };
  }
  const result = await auditText(kind === 'plan' ? text : usualPlan, 'plan.yaml', used);
  if (!result.ok) return refused(result.problems);
  let audit = result.value;
  if (kind === 'sheet') {
    const sheet = readSheet(text, 'sheet.yaml');
    if (!sheet.ok) return refused(sheet.problems);
    audit = withMeasured(audit, sheet.value);
  }
  for (const { path, value } of audit.facts) if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${path} is ${value}`);
  if (audit.verdict === 'clear' && audit.findings.some(({ verdict }) => verdict !== 'clear')) throw new Error('clear, but a finding is not');
  for (const { verdict, actual, rule } of audit.findings) if (verdict === 'clear' && actual === null) throw new Error(`${rule} is clear on nothing`);
  const { tree, pictures } = composeReport(audit);
  const html = writeHtml(tree, pictures, { title: 'Fuzz', lang: 'en' });
  if (/<script|javascript:|onerror=/i.test(html.replace(/&lt;script|&#x3C;script/gi, ''))) throw new Error('a script in the page');
  const pages = [writeMarkdown(tree), html, writeJson(audit), ...pictures.map(({ svg }) => svg)];
  for (const page of pages) if (/\bNaN\b|\bundefined\b|\[object Object\]|Infinity/.test(page)) throw new Error(`a slip in a page: ${/.{60}(?:\bNaN\b|\bundefined\b|\[object Object\]|Infinity).{20}/s.exec(page)?.[0]}`);
  return true;
}

function refused(problems: readonly { readonly found: string; readonly allowed: string; readonly hint: string }[]): false {
  if (problems.length === 0) throw new Error('refused without a word');
  for (const { found, allowed, hint } of problems) if (found === '' || allowed === '' || hint === '') throw new Error('a message that leaves out what was found, allowed or to do');
  return false;
}

function fault(kind: string, text: string, what: string): void {
  faults.push(`${kind}: ${what.slice(0, 600)}\n--- the input\n${text.slice(0, 3000)}\n---`);
}

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
