import { rememberedBy } from '../base/remembered.js';
import { roomMoisture } from '../mechanics/moisture/room-moisture.js';
import type { Choosing } from '../base/names.js';
import { clothCutOf, rollWidth_mm } from '../mechanics/cloth/cloth-sheet.js';
import { clothCutSize, rollShort_mm } from '../mechanics/cloth/cut-size.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';
import { noEdit, type Edit } from './edit.js';
import * as say from './edit-words.js';

/** Less of a difference from the room than this is not worth waiting for, percentage points. */
const leastGap_pct = 0.5;

const ways: readonly Choosing[] = ['unsorted', 'plain', 'picked'];

/** The moisture that boards of this plan settle to, as one writes it, or null when they are there already. */
export function settledMoisture_pct(plan: Plan): number | null {
  const settled_pct = Math.round(roomMoisture(plan.room).middle_pct * 10) / 10;
  return Math.abs(plan.lumber.moisture_pct - settled_pct) < leastGap_pct ? null : settled_pct;
}

/**
 * How the boards may be chosen, dried and paired for this build, fewest changes first: never chosen with less care than
 * planned.
 */
export const boardOptions = (plan: Plan): readonly Edit[] =>
  boardChoices(plan.lumber.chosen, settledMoisture_pct(plan), plan.bars.plies > 1 && plan.bars.pairing !== 'opposed');

/** Thousands of builds of one plan leave the same few choices. */
const boardChoices = rememberedBy(
  (...told: readonly [planned: Choosing, settled_pct: number | null, unpaired: boolean]) => told.join(' '),
  (planned, settled_pct, unpaired): readonly Edit[] => {
    const chosen = ways
      .slice(ways.indexOf(planned))
      .map((way): Edit => (way === planned ? noEdit : { words: [say.chosen(way)], chosen: way }));
    const moisture = [
      noEdit,
      ...(settled_pct === null ? [] : [{ words: [say.settle(settled_pct)], moisture_pct: settled_pct }]),
    ];
    const pairing = unpaired ? [noEdit, { words: [say.opposed], bars: { pairing: 'opposed' as const } }] : [noEdit];
    const all = chosen.flatMap((c) =>
      moisture.flatMap((m) =>
        pairing.map((p): Edit => ({ ...p, ...c, ...m, words: [...p.words, ...c.words, ...m.words] })),
      ),
    );
    return fewestFirst(all);
  },
  100,
);

/** Slacks of a wire, in mm, as a tape of either kind shows them. */
const slacks_mm = { metric: [60, 90, 120, 150], inch: [63.5, 88.9, 127, 152.4] } as const;

/**
 * Other ways to hang the piece, fewest changes first: two hooks, another slack, rings in the other face, a second hook.
 * None when it does not hang.
 */
export function hangOptions({ hang, units }: Plan): readonly Edit[] {
  if (hang.by === 'none' || hang.by === 'd-rings' || hang.by === 'cleat') return [];
  const ways: Partial<Plan['hang']>[] = [{}];
  if (hang.by === 'wire') ways.push({ by: 'two-hooks', slack_mm: 0 });
  for (const slack_mm of slacks_mm[units])
    if (slack_mm <= hang.drop_mm && slack_mm !== hang.slack_mm) ways.push({ by: 'wire', slack_mm });
  const hooks = hang.hooks < 2 ? [{}, { hooks: 2 }] : [{}];
  const faces = [{}, { from: hang.from === 'inside' ? ('back' as const) : ('inside' as const) }];
  const all = ways.flatMap((way) =>
    hooks.flatMap((more) =>
      faces.map(
        (face) =>
          ({ ...(way.by === hang.by ? { slack_mm: way.slack_mm } : way), ...more, ...face }) as NonNullable<
            Edit['hang']
          >,
      ),
    ),
  );
  const sensible = all.filter((to) => to.hooks === undefined || (to.by ?? hang.by) === 'wire');
  return fewestFirst(
    sensible
      .map((to): Edit => ({ words: say.hang(hang, { ...hang, ...to }, units), hang: to }))
      .filter(({ words }) => words.length > 0),
  );
}

/**
 * Glue for corners that are dry and need not stay so: the shelf's first. None for keyed corners, which are meant to
 * open.
 */
export function glueOptions({ corners }: Plan, shelf: Shelf): readonly Edit[] {
  const glue = Object.values(shelf.glues)[0];
  return corners.glue !== null || corners.cut === 'keyed' || glue === undefined
    ? []
    : [{ words: [say.glueCorners(glue.name)], glue: glue.key }];
}

/** Where the plan names its nail: the one that fits, or none. */
export function nailOptions({ corners, assumed }: Plan): readonly Edit[] {
  const left = assumed.some(({ path }) => path === 'corners.nails' || path === 'corners.nails.use');
  return corners.nails === null || left
    ? []
    : (['fitting', 'none'] as const).map((nails) => ({ words: [say.nails(nails)], nails }));
}

/** How much the roll is too narrow for a plan's cloth, mm; zero or less when it fits. */
export function rollTooNarrow_mm(plan: Plan, shelf: Shelf): number {
  const model = buildModel(plan, shelf);
  const { width_mm, height_mm } = clothCutSize(clothCutOf(model));
  return rollShort_mm(width_mm, height_mm, rollWidth_mm(model));
}

/** Cloths from wider rolls, the cheapest first, where the plan's own does not fit its roll. */
export function clothOptions(plan: Plan, shelf: Shelf): readonly Edit[] {
  if (rollTooNarrow_mm(plan, shelf) <= 0) return [];
  const shop = shelfIn(shelf, plan.units);
  const own_mm = plan.cloth.roll_mm ?? shop.cloths[plan.cloth.use]?.roll_mm ?? 0;
  const wider = Object.values(shop.cloths)
    .filter(({ roll_mm }) => roll_mm > own_mm)
    .sort((a, b) => a.price_per_m - b.price_per_m);
  return wider.map(({ key, name, roll_mm }) => ({ words: [say.cloth(name, roll_mm, plan.units)], cloth: key }));
}

/**
 * Of those, the cheapest and the lightest that are wide enough for the plan: one of them is best at whatever a search
 * aims at.
 */
export function bestCloths(plan: Plan, shelf: Shelf): readonly Edit[] {
  const enough = clothOptions(plan, shelf).filter(
    ({ cloth }) =>
      rollTooNarrow_mm({ ...plan, cloth: { ...plan.cloth, use: cloth ?? plan.cloth.use, roll_mm: null } }, shelf) <= 0,
  );
  const mass = ({ cloth }: Edit): number => shelf.cloths[cloth ?? '']?.mass_g_per_m2 ?? Infinity;
  const [cheapest] = enough;
  const lightest = [...enough].sort((a, b) => mass(a) - mass(b))[0];
  return [...new Set([cheapest, lightest])].filter((edit) => edit !== undefined);
}

const setbacks_mm = { metric: [10, 15, 20, 25, 30, 40], inch: [9.525, 15.875, 19.05, 25.4, 31.75, 38.1] } as const;

/** Other setbacks of the crossbars. */
export function setbackOptions({ crossbars, units }: Plan): readonly Edit[] {
  if (crossbars.length === 0) return [];
  return setbacks_mm[units]
    .filter((to_mm) => crossbars.some(({ setback_mm }) => setback_mm !== to_mm))
    .map((setback_mm) => ({ words: [say.setback(setback_mm, units)], setback_mm }));
}

const fewestFirst = (edits: readonly Edit[]): readonly Edit[] =>
  [...edits].sort((a, b) => a.words.length - b.words.length);
