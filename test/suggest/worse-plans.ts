import fc from 'fast-check';
import { stringify } from 'yaml';
import { auditText } from '../../src/audit.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { Finding } from '../../src/findings/finding.js';
import { worstVerdict } from '../../src/findings/summary.js';
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

/** What the rules say of a drawn frame; null where the plan cannot be read (no opening is left, a brace meets a crossbar …). */
export async function findingsOf(d: Drawn): Promise<readonly Finding[] | null> {
  const [a, b] = [d.thickness_mm, d.board_mm].sort((p, q) => p - q);
  const shelf = must(readShelf(stringify({ shelf: 1, lumber: { trial: { size: `${a} x ${b} mm` } } }), 'shelf.yaml', base));
  const read = await auditText(planText(d), 'plan.yaml', { shelf, ruleset, seed: 1, samples: 400 });
  return read.ok ? read.value.findings : null;
}

/** The verdict of the rules that a way of making a frame worse may not better; buying, which needs prices, is left out always. */
export const verdictOf = (findings: readonly Finding[], except: RegExp): ReturnType<typeof worstVerdict> => worstVerdict(findings.filter(({ rule }) => !except.test(rule) && !/^(cutting|buying|cost)\//u.test(rule)));

/** A way of making a frame worse: what it does, and which rules rightly speak better of it, with the reason. */
export interface Worsening {
  readonly name: string;
  readonly make: (d: Drawn) => Drawn;
  readonly except: RegExp;
  readonly why: string;
}

const none = /^$/u;
export const worsenings: readonly Worsening[] = [
  { name: 'bigger', make: (d) => ({ ...d, width_mm: d.width_mm + 90, height_mm: d.height_mm + 60 }), except: /^(frame\/square-by-tape|cloth\/keys)$/u, why: 'A tape shows a larger frame out of square sooner.' },
  { name: 'thinner', make: (d) => ({ ...d, thickness_mm: d.thickness_mm - 2 }), except: /^(lumber\/(moisture|mitre-gap)|hanging\/.*|frame\/(lifting|heavy))$/u, why: 'Thin boards dry sooner, shrink less across their width and weigh less.' },
  { name: 'wetter', make: (d) => ({ ...d, moisture_pct: d.moisture_pct + 3 }), except: none, why: '' },
  { name: 'pulled harder', make: (d) => ({ ...d, pull_N_per_m: d.pull_N_per_m + 60 }), except: /^cloth\/(pull-too-low|brush-room|seasons|keys)$/u, why: 'Tighter cloth sags less, drums less and keeps more of its pull through the seasons.' },
  { name: 'without its plates', make: (d) => ({ ...d, brace: d.brace === 'timber' ? 'timber' : 'none' }), except: none, why: '' },
  { name: 'without its crossbar', make: (d) => ({ ...d, crossbar: 'none' }), except: /^(cloth\/(brush-room|pull-lost)|crossbars\/.*|corners\/.*|(fastenings|hanging)\/.*)$/u, why: 'A brush meets a crossbar, not the air; what is not there does not bow; a propped bar is stiffer and draws more moment into its corners; what is not there needs no screws and stands in no wire’s way.' },
  { name: 'unsorted', make: (d) => ({ ...d, chosen: 'unsorted' }), except: none, why: '' },
];

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
