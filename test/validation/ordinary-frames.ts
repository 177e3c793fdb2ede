import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { auditText } from '../../src/audit.js';
import { packageFolder } from '../../src/cli/files.js';
import { loadRules, loadShelf } from '../../src/cli/load.js';
import type { Finding } from '../../src/findings/finding.js';

const golden = join(packageFolder, 'test', 'validation', 'ordinary-frames.golden.md');
const heading = ['| bars | face, mm | inner | verdict | decided by | used |', '| - | - | - | - | - | - |'];
const boards = [
  { stock: 'strip-19x38', lay: 'flat', sizes: [[400, 300], [600, 450], [900, 600], [1000, 800], [1200, 900]] },
  { stock: 'strip-19x38', lay: 'edge', sizes: [[600, 450], [900, 600], [1000, 750], [1200, 900]] },
  { stock: 'strip-19x38', lay: 'edge', plies: 2, sizes: [[900, 600], [1200, 900], [1500, 1200]] },
  { stock: 'board-19x64', lay: 'flat', sizes: [[600, 450], [900, 600], [1200, 900]] },
  { stock: 'square-38x38', lay: 'flat', sizes: [[600, 450], [1000, 750], [1250, 1000], [1500, 1250]] },
  { stock: 'stud-38x64', lay: 'edge', sizes: [[1000, 750], [1250, 1000], [1500, 1250]] },
  { stock: 'stud-38x89', lay: 'edge', sizes: [[1250, 1000], [1550, 1250], [1850, 1550]] },
] as const;
const inner = ['none', 'upright', 'cross'] as const;

const shelf = must(loadShelf(undefined));
const ruleset = must(loadRules(undefined));

/** One ordinary frame: how its row begins, and its plan. */
interface Ordinary {
  readonly row: string;
  readonly plan: object;
}

/** Ordinary frames: board × lay × size × crossbar. Crosses from a metre up. */
export const ordinaryFrames: readonly Ordinary[] = boards.flatMap(({ sizes, ...bars }) => sizes.flatMap(([width, height]) => inner.filter((kind) => kind !== 'cross' || width >= 1000).map((kind): Ordinary => {
  const runs = kind === 'none' ? [] : kind === 'upright' ? ['upright'] : ['upright', 'level'];
  const crossbars = runs.map((way) => ({ runs: way, stock: bars.stock === 'stud-38x89' ? 'stud-38x64' : bars.stock, lay: 'flat' }));
  const built = `${'plies' in bars ? '2 x ' : ''}${bars.stock} ${bars.lay}`;
  return { row: `| ${built} | ${width} x ${height} | ${kind}`, plan: { plan: 1, name: 'Ordinary', face: { width: `${width} mm`, height: `${height} mm` }, bars, crossbars, cloth: { roll: '2100 mm' } } };
})));

/** The finished row, and the findings about what the tool chose by itself that are not clear. */
export async function judgeOrdinary({ row, plan }: Ordinary): Promise<{ readonly line: string; readonly ownFault: readonly string[] }> {
  const { verdict, findings } = must(await auditText(stringify(plan), 'plan.yaml', { shelf, ruleset, seed: 1, samples: 4000 }));
  const [deciding] = findings.filter((finding) => finding.verdict === verdict).sort((a, b) => (b.used ?? 0) - (a.used ?? 0));
  const shown = verdict === 'clear' ? undefined : deciding;
  const ownFault = findings.filter(({ rule, verdict: found }: Finding) => found !== 'clear' && /^(fastenings|cloth\/brush|hanging\/(in-the-way|wire-angle))/u.test(rule)).map(({ rule, verdict: found }) => `${rule} ${found}`);
  return { line: `${row} | ${verdict} | ${shown?.rule ?? ''} | ${shown?.used?.toPrecision(2) ?? ''} |`, ownFault };
}

/** The rows that were read and kept. */
export const keptRows = (): readonly string[] => readFileSync(golden, 'utf8').trimEnd().split('\n').slice(heading.length);

/** Keeps rows in place of those there were. */
export const keepRows = (lines: readonly string[]): void => writeFileSync(golden, `${[...heading, ...lines].join('\n')}\n`);

function must<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}
