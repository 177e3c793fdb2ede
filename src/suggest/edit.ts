import { formatLength } from '../base/units-format.js';
import { planDefaults, usualLeg_mm, usualLengths } from '../plan/defaults.js';
import type { Choosing } from '../base/names.js';
import type { Lay, Plan, PlanBars, PlanBrace, PlanCrossbar } from '../plan/plan.js';
import { settlePlan } from '../plan/settle-plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { Notes } from './notes.js';

/** A crossbar as a change puts it in: one board of the bars' stock, set back as usual. */
export interface NewCrossbar {
  readonly runs: PlanCrossbar['runs'];
  readonly at: number;
  readonly lay: Lay;
}

/** Changes that a person would make to a plan, in words and as data. Absent fields stay as they are. */
export interface Edit {
  /** Each change as advice, such as `Turn the bars on edge.`; how many there are is how much of the plan changes. */
  readonly words: readonly string[];
  readonly bars?: Partial<Pick<PlanBars, 'stock' | 'lay' | 'plies' | 'stack' | 'bond' | 'pairing'>>;
  /** In place of all the crossbars there were. */
  readonly crossbars?: readonly NewCrossbar[];
  /** How far all crossbars stay behind the front of the bars. */
  readonly setback_mm?: number;
  /** A timber brace of the bars' stock with the usual leg, or none at all. */
  readonly brace?: 'timber' | 'none';
  /** Forget the screw and the lead hole that the plan names: the ones that fit are chosen. */
  readonly screw?: 'fitting';
  /** Another cloth, from the shelf's own roll. */
  readonly cloth?: string;
  /** Glue for dry corners. */
  readonly glue?: string;
  /** No nails in the corners, or forget the nail that the plan names: one that fits is chosen. */
  readonly nails?: 'none' | 'fitting';
  readonly chosen?: Choosing;
  /** Moisture after waiting for the boards to settle. */
  readonly moisture_pct?: number;
  readonly hang?: Partial<Pick<Plan['hang'], 'by' | 'from' | 'hooks' | 'slack_mm'>>;
}

/** The edit that changes nothing. */
export const noEdit: Edit = { words: [] };

/** Several edits as one; of two that touch the same thing the later wins. */
export function mergeEdits(...edits: readonly Edit[]): Edit {
  return edits.reduce(
    (all, edit) => ({
      ...all,
      ...edit,
      words: [...all.words, ...edit.words],
      ...(all.bars === undefined && edit.bars === undefined ? {} : { bars: { ...all.bars, ...edit.bars } }),
      ...(all.hang === undefined && edit.hang === undefined ? {} : { hang: { ...all.hang, ...edit.hang } }),
    }),
    noEdit,
  );
}

/**
 * The plan with the changes made, as the plan reader would read it once they are written down: what the plan left to
 * defaults follows the changes,
 * and `assumed` says so. Pure. What the changes make impossible is found by `objections`.
 */
export function applyEdit(plan: Plan, edit: Edit, shelf: Shelf): Plan {
  const notes = new Notes(plan.assumed);
  const bars = barsAfter(plan, edit, notes);
  const crossbars = crossbarsAfter(plan, edit, bars, notes);
  const brace = braceAfter(plan, edit, bars, notes);
  const ply_screws = screwsAfter(plan, edit, bars, notes);
  if (edit.chosen !== undefined) notes.forget('lumber.chosen');
  if (edit.moisture_pct !== undefined) notes.forget('lumber.moisture');
  const changed: Plan = {
    ...plan,
    bars,
    crossbars,
    corners: { ...jointAfter(plan, edit, notes), brace },
    cloth: clothAfter(plan, edit, notes),
    ply_screws,
    lumber: {
      ...plan.lumber,
      chosen: edit.chosen ?? plan.lumber.chosen,
      moisture_pct: edit.moisture_pct ?? plan.lumber.moisture_pct,
    },
    hang: hangAfter(plan, edit, notes),
    assumed: [],
  };
  return settlePlan({ ...changed, assumed: notes.inFileOrder() }, shelf);
}

function barsAfter(plan: Plan, { bars: edit }: Edit, notes: Notes): PlanBars {
  if (edit === undefined) return plan.bars;
  for (const key of Object.keys(edit)) notes.forget(`bars.${key}`);
  const bars = { ...plan.bars, ...edit };
  if (bars.plies > 1) return bars;
  for (const key of ['stack', 'bond', 'pairing']) notes.forget(`bars.${key}`);
  return plan.bars.plies > 1 ? { ...bars, stack: 'side-by-side', bond: 'none', pairing: 'unsorted' } : bars;
}

/** Crossbars that left stock and lay to the bars follow them. */
function crossbarsAfter(plan: Plan, edit: Edit, bars: PlanBars, notes: Notes): readonly PlanCrossbar[] {
  let crossbars: readonly PlanCrossbar[];
  if (edit.crossbars !== undefined) {
    notes.forget('crossbars');
    if (edit.crossbars.length === 0) notes.note('crossbars', 'none');
    crossbars = edit.crossbars.map((one, i) => {
      notes.note(`crossbars[${i}].stock`, bars.stock);
      notes.note(`crossbars[${i}].plies`, 'one ply');
      notes.note(`crossbars[${i}].setback`, '');
      return { ...one, stock: bars.stock, plies: 1, setback_mm: 0, give: null };
    });
  } else
    crossbars = plan.crossbars.map((crossbar, i) => ({
      ...crossbar,
      stock: notes.follow(`crossbars[${i}].stock`, crossbar.stock, bars.stock),
      lay: notes.follow(`crossbars[${i}].lay`, crossbar.lay, bars.lay),
    }));
  const { setback_mm } = edit;
  if (setback_mm === undefined) return crossbars;
  crossbars.forEach((_, i) => notes.forget(`crossbars[${i}].setback`));
  return crossbars.map((crossbar) => ({ ...crossbar, setback_mm }));
}

function jointAfter({ corners }: Plan, { glue, nails }: Edit, notes: Notes): Plan['corners'] {
  if (glue !== undefined) notes.forget('corners.glue');
  if (nails === undefined) return { ...corners, glue: glue ?? corners.glue };
  notes.forget('corners.nails');
  if (nails === 'fitting') notes.note('corners.nails', '');
  return {
    ...corners,
    glue: glue ?? corners.glue,
    nails: nails === 'none' ? null : { use: planDefaults.nail, each: 1 },
  };
}

function clothAfter({ cloth }: Plan, { cloth: use }: Edit, notes: Notes): Plan['cloth'] {
  if (use === undefined) return cloth;
  notes.forget('cloth.use');
  notes.note('cloth.roll', 'the width of the shelf’s roll');
  return { ...cloth, use, roll_mm: null };
}

function braceAfter(plan: Plan, { brace: edit }: Edit, bars: PlanBars, notes: Notes): PlanBrace | null {
  const { brace } = plan.corners;
  if (edit === undefined)
    return brace === null
      ? null
      : { ...brace, stock: brace.stock === null ? null : notes.follow('corners.brace.stock', brace.stock, bars.stock) };
  notes.forget('corners.brace');
  if (edit === 'none') return null;
  const leg_mm = usualLeg_mm(Math.min(plan.face.width_mm, plan.face.height_mm), plan.units);
  notes.note('corners.brace.leg', formatLength(leg_mm, plan.units));
  notes.note('corners.brace.stock', bars.stock);
  notes.note('corners.brace.lay', 'flat');
  return { kind: 'timber', leg_mm, stock: bars.stock, lay: 'flat', give: null };
}

/** Screws that a bar of several plies gets when the plan names none: the reader's own defaults. */
const usualScrews = ({ units }: Plan): NonNullable<Plan['ply_screws']> => ({
  use: planDefaults.ply_screw,
  every_mm: usualLengths[units].ply_screw_every_mm,
  pilot_mm: null,
});

const screwed = ({ plies, bond }: PlanBars): boolean => plies > 1 && (bond === 'screws' || bond === 'glue+screws');

function screwsAfter(plan: Plan, edit: Edit, bars: PlanBars, notes: Notes): Plan['ply_screws'] {
  if (!screwed(bars)) {
    notes.forget('ply-screws');
    return null;
  }
  if (plan.ply_screws === null) {
    if (screwed(plan.bars)) return null;
    notes.note('ply-screws.pilot', 'chosen from the drills on the shelf');
    notes.note('ply-screws.use', usualScrews(plan).use);
    notes.note('ply-screws.every', formatLength(usualScrews(plan).every_mm, plan.units));
    return usualScrews(plan);
  }
  if (edit.screw === undefined) return plan.ply_screws;
  notes.note('ply-screws.pilot', 'chosen from the drills on the shelf');
  notes.note('ply-screws.use', planDefaults.ply_screw);
  return { ...plan.ply_screws, use: planDefaults.ply_screw, pilot_mm: null };
}

const hangKeys = { by: 'by', from: 'from', hooks: 'hooks', slack_mm: 'slack' } as const;

function hangAfter(plan: Plan, { hang: edit }: Edit, notes: Notes): Plan['hang'] {
  if (edit === undefined) return plan.hang;
  for (const key of Object.keys(edit)) notes.forget(`hang.${hangKeys[key as keyof typeof hangKeys]}`);
  const hang = { ...plan.hang, ...edit };
  if (hang.by === 'wire') return hang;
  notes.forget('hang.slack');
  return { ...hang, slack_mm: 0 };
}
