import fc from 'fast-check';
import { stringify } from 'yaml';
import { auditText } from '../../src/audit.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { Finding } from '../../src/findings/finding.js';
import { compareGravity, worstVerdict } from '../../src/findings/summary.js';
import { readShelf } from '../../src/shelf/read-shelf.js';

/** A drawn frame, unsymmetric, of a board of its own size. */
export interface Drawn {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly thickness_mm: number;
  readonly board_mm: number;
  readonly lay: 'flat' | 'edge';
  readonly plies: 1 | 2;
  readonly cut: 'mitre' | 'half-lap' | 'butt';
  readonly glue: 'pva' | 'none';
  readonly brace: 'none' | 'timber' | 'ply-gusset' | 'steel-angle';
  readonly leg_mm: number;
  readonly crossbar: 'none' | 'upright' | 'level';
  readonly chosen: 'picked' | 'plain' | 'unsorted';
  readonly moisture_pct: number;
  readonly pull_N_per_m: number;
}

export const drawn: fc.Arbitrary<Drawn> = fc.record({
  width_mm: fc.integer({ min: 36, max: 130 }).map((n) => 10 * n + 3),
  height_mm: fc.integer({ min: 34, max: 100 }).map((n) => 10 * n),
  thickness_mm: fc.integer({ min: 18, max: 38 }),
  board_mm: fc.integer({ min: 38, max: 70 }),
  lay: fc.constantFrom('flat', 'edge'),
  plies: fc.constantFrom(1, 1, 2),
  cut: fc.constantFrom('mitre', 'mitre', 'mitre', 'half-lap', 'butt'),
  glue: fc.constantFrom('pva', 'pva', 'pva', 'none'),
  brace: fc.constantFrom('none', 'none', 'timber', 'ply-gusset', 'steel-angle'),
  leg_mm: fc.integer({ min: 122, max: 160 }),
  crossbar: fc.constantFrom('none', 'none', 'upright', 'level'),
  chosen: fc.constantFrom('picked', 'picked', 'plain', 'unsorted'),
  moisture_pct: fc.integer({ min: 8, max: 16 }),
  pull_N_per_m: fc.integer({ min: 12, max: 26 }).map((n) => 10 * n),
});

function planText(d: Drawn): string {
  return stringify({
    plan: 1, name: 'Drawn', face: { width: `${d.width_mm} mm`, height: `${d.height_mm} mm` },
    bars: { stock: 'trial', lay: d.lay, plies: d.plies },
    crossbars: d.crossbar === 'none' ? [] : [{ runs: d.crossbar, stock: 'strip-19x38', lay: 'flat' }],
    corners: { cut: d.cut, glue: d.glue, brace: d.brace === 'none' ? 'none' : { kind: d.brace, leg: `${d.leg_mm} mm`, ...(d.brace === 'timber' ? { stock: 'strip-19x38' } : {}) } },
    lumber: { chosen: d.chosen, moisture: `${d.moisture_pct} %` }, cloth: { pull: `${d.pull_N_per_m} N/m`, roll: '2100 mm' }, hang: { by: 'two-hooks' },
  });
}

const base = must(loadShelf(undefined));
const ruleset = must(loadRules(undefined));

/** Every rule that is asked. */
export const ruleIds: readonly string[] = ruleset.rules.map(({ id }) => id);

/** What the rules say of a drawn frame; null where the plan cannot be read (no opening is left, a brace meets a crossbar …). */
export async function findingsOf(d: Drawn): Promise<readonly Finding[] | null> {
  const [a, b] = [d.thickness_mm, d.board_mm].sort((p, q) => p - q);
  const shelf = must(readShelf(stringify({ shelf: 1, lumber: { trial: { size: `${a} x ${b} mm` } } }), 'shelf.yaml', base));
  const read = await auditText(planText(d), 'plan.yaml', { shelf, ruleset, seed: 1, samples: 400 });
  return read.ok ? read.value.findings : null;
}

/** A pair of findings of one rule about one part of the frame: as it was, and made worse (null where there is none any more). */
interface Pair {
  readonly before: Finding;
  readonly after: Finding | null;
}

/** One rule that rightly speaks better of the worse frame, only where the mechanism named is seen at work. */
export interface Exception {
  readonly rule: string;
  readonly why: string;
  readonly at_work: (pair: Pair) => boolean;
}

/** A way of making a frame worse: what it does, and what rightly speaks better of the worse frame. */
export interface Worsening {
  readonly name: string;
  readonly make: (d: Drawn) => Drawn;
  readonly except: readonly Exception[];
}

const fell = ({ before, after }: Pair): boolean => after !== null && Number(after.actual) < Number(before.actual);
const rose = ({ before, after }: Pair): boolean => after !== null && Number(after.actual) > Number(before.actual);
const gone = ({ after }: Pair): boolean => after === null;
const aboutCrossbar = ({ before }: Pair): boolean => before.about.startsWith('crossbar');

const tie = { why: 'A propped bar is stiffer and draws more moment into its corners (a test beside shows the tie by itself).', at_work: fell };
export const worsenings: readonly Worsening[] = [
  { name: 'bigger', make: (d) => ({ ...d, width_mm: Math.round(1.1 * d.width_mm), height_mm: Math.round(1.1 * d.height_mm) }), except: [
    { rule: 'frame/square-by-tape', why: 'A tape shows a larger frame out of square sooner.', at_work: () => true },
    ...['fastenings/in-the-way', 'hanging/in-the-way'].map((rule) => ({ rule, why: 'Crossbar, braces, rings and screws lie farther apart.', at_work: fell })),
  ] },
  { name: 'thinner', make: (d) => ({ ...d, thickness_mm: d.thickness_mm - 2 }), except: [] },
  { name: 'wetter', make: (d) => ({ ...d, moisture_pct: d.moisture_pct + 3 }), except: [] },
  { name: 'pulled harder', make: (d) => ({ ...d, pull_N_per_m: d.pull_N_per_m + 60 }), except: [
    { rule: 'cloth/pull-too-low', why: 'It drums.', at_work: rose },
    { rule: 'cloth/brush-room', why: 'Tighter cloth gives less under the brush.', at_work: rose },
  ] },
  { name: 'without its plates', make: (d) => ({ ...d, brace: d.brace === 'timber' ? 'timber' : 'none' }), except: [
    { rule: 'hanging/in-the-way', why: 'On a low frame a plate reaches down to where it hangs, and no place near by is clear.', at_work: fell },
  ] },
  { name: 'without its crossbar', make: (d) => ({ ...d, crossbar: 'none' }), except: [
    { rule: 'cloth/brush-room', why: 'A brush meets a crossbar, not the air.', at_work: rose },
    { rule: 'warp/corner-lift', why: 'Its board twists and bows too, and turns the frame with it (a test beside shows it by itself).', at_work: fell },
    { rule: 'corners/use', ...tie },
    { rule: 'corners/knock', ...tie },
    ...['crossbars/bow', 'crossbars/slender'].map((rule) => ({ rule, why: 'What is not there does not bow.', at_work: (pair: Pair) => gone(pair) && aboutCrossbar(pair) })),
    { rule: 'fastenings/in-the-way', why: 'What is not there stands in no ply screw’s way.', at_work: fell },
    ...['fastenings/penetration', 'fastenings/edge', 'fastenings/splitting', 'fastenings/load'].map((rule) => ({ rule, why: 'What is not there needs no screws.', at_work: (pair: Pair) => gone(pair) && aboutCrossbar(pair) })),
  ] },
  { name: 'unsorted', make: (d) => ({ ...d, chosen: 'unsorted' }), except: [] },
];

/** What two frames, one made worse of the other, say when put side by side. */
export interface Compared {
  /** Whether the worse one gets the better verdict, exceptions left out of both. */
  readonly better: boolean;
  /** Whether it would without exceptions: those decide such a pair. */
  readonly excepted: boolean;
  /** What speaks worse of the better frame than the other's verdict, to be read where the law fails. */
  readonly lost: readonly string[];
}

/** Compares what the rules say of a frame and of one made worse; buying, which needs prices, is left out always. */
export function compared(before: readonly Finding[], after: readonly Finding[], { except }: Worsening): Compared {
  const asked = (findings: readonly Finding[]): readonly Finding[] => findings.filter(({ rule }) => !/^(cutting|buying|cost)\//u.test(rule));
  const [was, is] = [asked(before), asked(after)];
  const twin = (one: Finding): Finding | null => is.find(({ rule, about }) => rule === one.rule && about === one.about) ?? null;
  const excepted = was.filter((one) => except.some(({ rule, at_work }) => rule === one.rule && at_work({ before: one, after: twin(one) })));
  const gravity = (kept: readonly Finding[]): number => compareGravity(worstVerdict(is), worstVerdict(kept));
  const kept = was.filter((one) => !excepted.includes(one));
  return {
    better: gravity(kept) < 0,
    excepted: gravity(was) < 0,
    lost: kept.filter(({ verdict }) => compareGravity(verdict, worstVerdict(is)) > 0).map((one) => `${one.rule} ${one.about} ${one.actual} → ${twin(one)?.actual}`),
  };
}

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
