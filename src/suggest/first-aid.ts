import { compareGravity } from '../findings/summary.js';
import type { FactPath } from '../facts/fact.js';
import { findFact } from '../facts/find-fact.js';
import type { Plan } from '../plan/plan.js';
import type { Audit, Change } from '../report/audit-view.js';
import { applyEdit, mergeEdits, type Edit } from './edit.js';
import * as say from './edit-words.js';
import { passes, type Examiner } from './examine.js';
import { knownObjections, readable } from './objections.js';
import { clothOptions, glueOptions, rollTooNarrow_mm, settledMoisture_pct } from './options.js';

/** How changed plans are audited, and how those that cannot help are told beforehand. */
export interface Trial {
  readonly audit: (plan: Plan) => Promise<Audit>;
  /** For the wish that nothing stops. */
  readonly examiner: Examiner;
}

/**
 * The changes that practice reaches for first, each to this plan alone; those that the plan has already, or that the
 * plan reader would refuse, are left away.
 */
export function firstAid({ plan, shelf }: Pick<Audit, 'plan' | 'shelf'>): readonly Edit[] {
  const known = knownObjections(plan, shelf);
  const stock = shelf.lumber[plan.bars.stock];
  const onEdge = plan.bars.lay === 'flat' && stock !== undefined && stock.width_mm > stock.thickness_mm;
  const settled_pct = settledMoisture_pct(plan);
  const edits: readonly Edit[] = [
    ...clothOptions(plan, shelf).filter((edit) => rollTooNarrow_mm(applyEdit(plan, edit, shelf), shelf) <= 0),
    ...glueOptions(plan, shelf),
    ...ply(plan),
    ...(onEdge ? [{ words: [say.lay('edge')], bars: { lay: 'edge' as const } }] : []),
    ...crossbar(plan),
    ...(plan.corners.brace === null
      ? [{ words: [say.braces(plan.corners.glue !== null)], brace: 'timber' as const }]
      : []),
    ...(plan.lumber.chosen === 'picked' ? [] : [{ words: [say.chosen('picked')], chosen: 'picked' as const }]),
    ...(settled_pct === null ? [] : [{ words: [say.settle(settled_pct)], moisture_pct: settled_pct }]),
  ];
  return edits.filter((edit) => readable(applyEdit(plan, edit, shelf), shelf, known));
}

/** Most boards in a bar that first aid goes to. */
const mostPlies = 3;

/** Glue where boards lie loose or only screwed; else one more board, which cannot be measured beforehand. */
function ply({ bars, boards }: Plan): readonly Edit[] {
  if (bars.plies > 1 && !bars.bond.includes('glue'))
    return [{ words: [say.bond('glue+screws')], bars: { bond: 'glue+screws' } }];
  if (bars.plies >= mostPlies || boards.length > 0) return [];
  const words =
    bars.plies === 1
      ? 'Glue a second board to each bar, warps opposed.'
      : 'Glue one more board to each bar, warps opposed.';
  return [
    {
      words: [words],
      bars: {
        plies: bars.plies + 1,
        stack: bars.stack,
        bond: bars.plies === 1 ? 'glue+screws' : bars.bond,
        pairing: 'opposed',
      },
    },
  ];
}

/** One across the long way where there is none; none is added where one already runs that way. */
function crossbar({ face, bars, crossbars }: Plan): readonly Edit[] {
  if (crossbars.length > 0) return [];
  const runs = face.width_mm >= face.height_mm ? 'upright' : 'level';
  const one = { runs, at: 1 / 2, lay: bars.lay } as const;
  return [{ words: say.crossbars([one], [], [one]), crossbars: [one] }];
}

/** A change that was tried, with what is needed to make it: see `writeEdit`. */
export interface TriedChange extends Change {
  readonly edit: Edit;
  readonly plan: Plan;
}

/** What a change did, from the audit of the changed plan. */
function asChange(edit: Edit, audit: Audit): TriedChange {
  const number = (path: FactPath): number | null => findFact(audit.facts, path, null);
  return {
    words: edit.words.join(' '),
    edit,
    plan: audit.plan,
    verdict: audit.verdict,
    twist_reserve: number('frame.twist_reserve'),
    lift_chance: number('warp.corner_lift_chance'),
    cost: number('cutting.total_cost'),
    weight_kg: number('frame.weight_kg'),
    drawn: { plan: audit.plan, model: audit.model, shelf: audit.shelf },
  };
}

/**
 * More useful first: the better verdict, then the smaller chance of a lifted corner, then the larger reserve, then the
 * lower cost. What is unknown comes last.
 */
export function compareChanges(a: Change, b: Change): number {
  const last = (value: number | null, better: 'low' | 'high'): number =>
    value === null ? Infinity : better === 'low' ? value : -value;
  const order = (p: number, q: number): number => (p === q ? 0 : p < q ? -1 : 1);
  return (
    compareGravity(a.verdict, b.verdict) ||
    order(last(a.lift_chance, 'low'), last(b.lift_chance, 'low')) ||
    order(last(a.twist_reserve, 'high'), last(b.twist_reserve, 'high')) ||
    order(last(a.cost, 'low'), last(b.cost, 'low'))
  );
}

/**
 * The usual changes with what each does, most useful first. Where the plan has a stop that no single one of them cures,
 * the fewest of them
 * that cure it together come first, if any do: several at once, the cheapest of as many.
 */
export async function usualChanges(audited: Audit, trial: Trial): Promise<readonly TriedChange[]> {
  const { plan, shelf } = audited;
  const edits = firstAid(audited);
  const changes: TriedChange[] = [];
  for (const edit of edits) changes.push(asChange(edit, await trial.audit(applyEdit(plan, edit, shelf))));
  changes.sort(compareChanges);
  if (audited.verdict !== 'stop' || changes.some(({ verdict }) => verdict !== 'stop')) return changes;
  const cure = await together(audited, edits, trial);
  return cure === null ? changes : [cure, ...changes];
}

/** What an edit settles, each thing of the bars by itself. */
const settles = ({ words: _, bars, ...rest }: Edit): readonly string[] => [
  ...Object.keys(rest),
  ...Object.keys(bars ?? {}).map((key) => `bars.${key}`),
];

/** Whether no two edits settle the same thing, such as two cloths. */
function goTogether(edits: readonly Edit[]): boolean {
  const all = edits.flatMap(settles);
  return new Set(all).size === all.length;
}

/** The fewest of the edits that together leave no stop: pairs, then triples, then as many as go together. */
async function together({ plan, shelf }: Audit, edits: readonly Edit[], trial: Trial): Promise<TriedChange | null> {
  const known = knownObjections(plan, shelf);
  const most = edits.filter((edit, i) => edits.findIndex((other) => !goTogether([other, edit])) === i).length;
  for (const size of [2, 3, most].filter((n, i, all) => n <= edits.length && all.indexOf(n) === i)) {
    const cures: TriedChange[] = [];
    for (const chosen of subsets(edits, size)) {
      if (!goTogether(chosen)) continue;
      const edit = mergeEdits(...chosen);
      const changed = applyEdit(plan, edit, shelf);
      if (!readable(changed, shelf, known) || !(await passes(changed, trial.examiner))) continue;
      const change = asChange(edit, await trial.audit(changed));
      if (change.verdict !== 'stop') cures.push(change);
    }
    if (cures.length > 0)
      return (
        cures.sort(
          (a, b) =>
            compareGravity(a.verdict, b.verdict) || (a.cost ?? Infinity) - (b.cost ?? Infinity) || compareChanges(a, b),
        )[0] ?? null
      );
  }
  return null;
}

function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) yield [];
  else
    for (let i = from; i <= items.length - size; i++)
      for (const rest of subsets(items, size - 1, i + 1)) yield [items[i] as T, ...rest];
}
