import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { auditText } from '../../src/audit.js';
import { packageFolder } from '../../src/cli/files.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import { LuDecomposition, Matrix } from 'ml-matrix';
import { prepare, timoshenko } from '../../src/frame3d/index.js';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { buildModel } from '../../src/model/build-model.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { readPile } from '../../src/pile/read-pile.js';
import { placePlans } from '../../src/place/place-plans.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import type { Audit } from '../../src/report/audit-view.js';
import { assessWarp } from '../../src/risk/assess.js';
import { bowedFrames, bowP90s, frameLines } from '../../src/risk/natural-bow.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { chartRow } from './bench-chart.js';
import { classPlan, classRow } from './bench-class.js';
import { pageRows, type Row } from './bench-page.js';
import { budgeted, hardPlans, pileOfBoards, planOfPieces, sizes } from './bench-piles.js';
import { braced, clearPlan, stopPlan } from './bench-plans.js';

/**
 * Times what the design budgets, each as a median of repeats on this machine, and prints a Markdown table of what was measured beside its budget; `--readme` also puts it into the README.
 * The budgets are ratios to what is timed in the same run: N, the start and end of `node -e 0`, and a dense solve of the same frame. `--chart` times the wall chart too, for minutes.
 * `--place` prints what placing takes for ten sizes instead.
 */
const command = join(packageFolder, 'dist', 'sightdown.js');
const shelf = must(loadShelf(undefined));
const ruleset = must(loadRules(undefined));
const bench = { shelf, ruleset, seed: 1, samples: 20_000 };

if (process.argv.includes('--place')) {
  process.stdout.write(`${placingTable()}\n`);
  process.exit(0);
}

const load_before = loadavg()[0] as number;
const node_ms = median(Array.from({ length: 15 }, () => processTime(['-e', '0'])));
const dense_ms = denseSolve();
const rows: Row[] = [startUp(), placing(), mechanics(), sampling(), await manyPlans(), await classOf24(), classRow(command, await warmAudit()), search(), ...(process.argv.includes('--chart') ? [chartRow(command)] : []), ...(await page())];
const table = ['| What | Measured | Budget |', '| - | - | - |', ...rows.map(({ what, measured, budget }) => `| ${what} | ${measured} | ${budget} |`)].join('\n');
// Where it is set, every start of Node reads certificates, which may take longer than all else it does: both sides of a ratio grow by that.
const certificates = process.env['NODE_EXTRA_CA_CERTS'] === undefined ? '' : ' Every start of Node, that of `node -e 0` too, read the certificates named in NODE_EXTRA_CA_CERTS.';
const machine = `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}; load when it began ${load_before.toFixed(1)}, when it ended ${(loadavg()[0] as number).toFixed(1)}.${certificates}`;
process.stdout.write(`${table}\n\n${machine}\n`);
if (process.argv.includes('--readme')) intoReadme(`${table}\n\n${machine}`);

/** Time of a process of Node from start to exit, ms. */
function processTime(args: readonly string[]): number {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}`);
  return performance.now() - start;
}

/** A placing of the size that the budget names, as the command runs it, beside the start of Node. */
function placing(): Row {
  const { pieces, boards } = budgeted;
  const folder = mkdtempSync(join(tmpdir(), 'sightdown-bench-'));
  const [plan, pile] = [join(folder, 'plan.yaml'), join(folder, 'pile.yaml')];
  writeFileSync(plan, planOfPieces(pieces));
  writeFileSync(pile, pileOfBoards(boards));
  const pairs = Array.from({ length: 7 }, () => ({ node: processTime(['-e', '0']), place: processTime([command, 'place', plan, '--pile', pile, '--format', 'json']) }));
  rmSync(folder, { recursive: true });
  const [node, whole] = [median(pairs.map((p) => p.node)), median(pairs.map((p) => p.place))];
  return { what: `Placing ${pieces} pieces from ${boards} boards, process start to exit`, measured: `${(whole / node).toFixed(1)} × \`node -e 0\` (${whole.toFixed(0)} ms over ${node.toFixed(0)} ms)`, budget: '≤ 20 ×' };
}

/** Places one pile; how much processor time that took and whether the answer was proven. */
function placedSize(plan: string, pileText: string): { readonly ms: number; readonly said: string } {
  const pile = must(readPile(pileText, 'pile.yaml', shelf));
  const read = planOf(plan);
  const start = process.cpuUsage();
  const { proven, aim, bound } = placePlans([read], pile, bench);
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, said: `${proven ? 'proven' : 'not proven'}, chance ${aim.toPrecision(2)}${proven ? '' : `, bound ${bound.toPrecision(2)}`}` };
}

/** Ten sizes, each placed once in a warm process: all boards read, and every second one; then the plans that are hard when half the boards are unread. */
function placingTable(): string {
  placedSize(planOfPieces(4), pileOfBoards(8));
  const rows = sizes.map(({ pieces, boards }) => {
    const [all, half] = (['all', 'half'] as const).map((read) => placedSize(planOfPieces(pieces), pileOfBoards(boards, read)));
    return `| ${pieces} | ${boards} | ${all?.ms.toFixed(0)} | ${all?.said} | ${half?.ms.toFixed(0)} | ${half?.said} |`;
  });
  const hard = Object.entries(hardPlans).flatMap(([name, plan]) => [12, 14, 20].flatMap((boards) => [1, 4].map((seed) => {
    const { ms, said } = placedSize(plan, pileOfBoards(boards, 'half', seed, 1650));
    return `| ${name} | ${boards} | ${seed} | ${ms.toFixed(0)} | ${said} |`;
  })));
  return [
    '| Pieces | Boards | All read, ms | | Half read, ms | |', '| -: | -: | -: | - | -: | - |', ...rows, '',
    '| Twelve pieces, half of the boards unread | Boards | Seed | ms | |', '| - | -: | -: | -: | - |', ...hard, '', 'Milliseconds of processor time.',
  ].join('\n');
}

function startUp(): Row {
  const out = mkdtempSync(join(tmpdir(), 'sightdown-bench-'));
  const plan = join(out, 'plan.yaml');
  writeFileSync(plan, clearPlan);
  const pairs = Array.from({ length: 15 }, () => ({ node: processTime(['-e', '0']), audit: processTime([command, 'audit', plan, '--out', out]) }));
  rmSync(out, { recursive: true });
  const node = median(pairs.map((p) => p.node));
  const whole = median(pairs.map((p) => p.audit));
  return { what: 'One audit, 20,000 samples, process start to exit', measured: `${(whole / node).toFixed(1)} × \`node -e 0\` (${whole.toFixed(0)} ms over ${node.toFixed(0)} ms)`, budget: '≤ 3 ×' };
}

/** The yardstick for mechanics: one dense LU solve (ml-matrix) of the stiffness of the frame that is timed. */
function denseSolve(): number {
  // As many elements as when the budgets were set, whatever the mesh is now.
  const fineness = { bar: 16, crossbar: 8, brace: 4 };
  const mesh = meshFrame(buildModel(planOf(braced), shelf).shape, [], fineness, timoshenko);
  const preparation = prepare(mesh.structure, timoshenko);
  if (!preparation.stable) throw new Error('the bench frame is free to move');
  const { n, first, start, values } = preparation.prepared.stiffness;
  const dense = new Matrix(n, n);
  for (let i = 0; i < n; i++) {
    for (let j = first[i]!; j <= i; j++) {
      dense.set(i, j, values[start[i]! + j]!);
      dense.set(j, i, values[start[i]! + j]!);
    }
  }
  const b = Matrix.columnVector(Array.from({ length: n }, (_, i) => i % 3));
  return medianTime(5, () => new LuDecomposition(dense).solve(b), 1);
}

function inNode(ms: number): string {
  return `${(ms / node_ms).toFixed(1)} × \`node -e 0\` (${ms.toFixed(0)} ms over ${node_ms.toFixed(0)} ms)`;
}

function inDense(ms: number): string {
  return `1/${(dense_ms / ms).toFixed(0)} of a dense solve (${ms.toFixed(1)} ms of ${dense_ms.toFixed(0)} ms)`;
}

function mechanics(): Row {
  const { shape, shape_stability, working } = buildModel(planOf(braced), shelf);
  const ms = medianTime(60, () => {
    // New objects, so that nothing is kept from the last round; one object where the model has one.
    const fresh = { ...shape };
    const fresh_stability = shape_stability === shape ? fresh : { ...shape_stability };
    solveStatics(fresh, working);
    findStability(fresh_stability, working);
    solveInfluence(fresh, working);
  });
  return { what: 'Frame, stability and influence numbers, two crossbars and braces', measured: inDense(ms), budget: '≤ 1/25' };
}

function sampling(): Row {
  const model = buildModel(planOf(braced), shelf);
  const settings = { corner_lift_limit_mm: 5, bar_bow_limit_mm: { top: 5, bottom: 5, left: 5, right: 5 }, seed: 1, samples: 20_000 };
  const risk = assessWarp(model, solveModel(model), settings);
  if (risk === null) throw new Error('the bench plan is unstable');
  const ms = medianTime(40, () => {
    const lines = frameLines(risk.terms);
    bowP90s(lines, risk.bow);
    bowedFrames(lines, bowP90s(lines, risk.bow), settings);
  });
  return { what: 'Bow of the bars, as sure as 20,000 samples', measured: inDense(ms), budget: '≤ 1/25' };
}

async function manyPlans(): Promise<Row> {
  const texts = Array.from({ length: 100 }, (_, i) => clearPlan.replace('900 mm', `${600 + 5 * i} mm`));
  for (const text of texts.slice(0, 10)) await auditText(text, 'plan.yaml', bench);
  const start = performance.now();
  for (const text of texts) if (!(await auditText(text, 'plan.yaml', bench)).ok) throw new Error('a bench plan is broken');
  return { what: '100 plans, one after the other, after start-up', measured: inNode(performance.now() - start), budget: '≤ 12 ×' };
}

/** Processor time of one audit of the class of the command's row, when all is warm, ms. */
async function warmAudit(): Promise<number> {
  const texts = Array.from({ length: 60 }, (_, i) => classPlan(i));
  const once = async (): Promise<void> => {
    for (const text of texts) must(await auditText(text, 'plan.yaml', bench));
  };
  await once();
  const start = process.cpuUsage();
  await once();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000 / texts.length;
}

async function classOf24(): Promise<Row> {
  const folder = join(packageFolder, 'test', 'class', 'room', 'plans');
  const texts = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
  const own = must(loadRules(join(packageFolder, 'test', 'class', 'room', 'ruleset.yaml')));
  const judged = { ...bench, ruleset: own, baseline: ruleset };
  const audits: Audit[] = [];
  const once = async (): Promise<void> => {
    audits.length = 0;
    for (const text of texts) audits.push(must(await auditText(text, 'plan.yaml', judged)));
  };
  await once();
  const all = await medianOf(5, once);
  const rules = await medianOf(5, async () => {
    for (const { facts, plan } of audits) await evaluateRules(own, facts, { units: plan.units });
  });
  return { what: 'A class of 24 plans, audits after start-up', measured: `${all.toFixed(0)} ms, of which ${rules.toFixed(0)} ms in the rule engine`, budget: '≤ 1000 ms' };
}

/** Median time of repeats, ms. */
async function medianOf(repeats: number, work: () => Promise<void>): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < repeats; i += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return median(times);
}

/** The command, from start to exit, on a plan that must not be cut. */
function search(): Row {
  const folder = mkdtempSync(join(tmpdir(), 'sightdown-bench-'));
  const plan = join(folder, 'plan.yaml');
  writeFileSync(plan, stopPlan);
  const ms = median(Array.from({ length: 3 }, () => processTime([command, 'suggest', plan])));
  rmSync(folder, { recursive: true });
  return { what: 'Suggestions for a plan that must not be cut, process start to exit', measured: inNode(ms), budget: '≤ 25 ×' };
}

async function page(): Promise<readonly Row[]> {
  const times: number[] = [];
  for (let i = 0; i < 60; i++) {
    const text = clearPlan.replace('900 mm', `${800 + i} mm`);
    const start = performance.now();
    if (!(await auditText(text, 'plan.yaml', bench)).ok) throw new Error('a bench plan is broken');
    times.push(performance.now() - start);
  }
  return pageRows(command, clearPlan, [...times.slice(20)].sort((p, q) => p - q)[38] as number);
}

function planOf(text: string) {
  return must(readPlanWith(text, 'plan.yaml', shelf));
}

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function medianTime(repeats: number, run: () => unknown, warm = 10): number {
  for (let i = 0; i < warm; i++) run();
  return median(
    Array.from({ length: repeats }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

function median(values: readonly number[]): number {
  return [...values].sort((p, q) => p - q)[Math.floor(values.length / 2)] as number;
}

function intoReadme(text: string): void {
  const file = join(packageFolder, 'README.md');
  const readme = readFileSync(file, 'utf8');
  const marked = readme.replace(/(<!-- bench -->\n)[\s\S]*?(\n<!-- \/bench -->)/, `$1${text}$2`);
  writeFileSync(file, marked);
}
