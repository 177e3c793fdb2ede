import type { Bond, Lay, Plan, PlanCrossbar, Stack } from '../plan/plan.js';
import { stockWithKey } from '../report/words/stock.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { applyEdit, mergeEdits, noEdit, type Edit, type NewCrossbar } from './edit.js';
import { knownObjections, readable } from './objections.js';
import * as say from './edit-words.js';
import { bestCloths, glueOptions, nailOptions } from './options.js';

/**
 * One way to build the frame: what is different from the plan, and the plan so changed. Boards are chosen and the piece
 * is hung as planned.
 */
export interface Build {
  readonly edit: Edit;
  readonly plan: Plan;
}

/**
 * Every way to build the frame that is looked at, those that change least first; `refused` is how many more the plan
 * reader would not take.
 */
export interface Builds {
  readonly builds: readonly Build[];
  readonly refused: number;
}

/** Most boards that a bar is built from. */
export const mostPlies = 3;

/** Where crossbars stand: none, one to three in a row, or crossing. */
export const crossbarPlaces: readonly (readonly Omit<NewCrossbar, 'lay'>[])[] = [
  [],
  ...(['upright', 'level'] as const).flatMap((runs) =>
    [[1 / 2], [1 / 3, 2 / 3], [1 / 4, 1 / 2, 3 / 4]].map((places) => places.map((at) => ({ runs, at }))),
  ),
  ...(
    [
      [[1 / 2], [1 / 2]],
      [[1 / 3, 2 / 3], [1 / 2]],
      [[1 / 2], [1 / 3, 2 / 3]],
    ] as const
  ).map(([uprights, levels]) => [
    ...uprights.map((at) => ({ runs: 'upright' as const, at })),
    ...levels.map((at) => ({ runs: 'level' as const, at })),
  ]),
];

/**
 * All builds over the stated space: stock, lay, plies with stack and bond, crossbars, braces and ply screws, every one
 * with every other.
 */
export function allBuilds(plan: Plan, shelf: Shelf): Builds {
  const known = knownObjections(plan, shelf);
  const found = new Map<string, Build>();
  let refused = 0;
  const told = shelfIn(shelf, plan.units);
  const tried = new Set<string>();
  const joints = everyWay([
    screws(plan),
    [noEdit, ...glueOptions(plan, shelf)],
    [noEdit, ...nailOptions(plan)],
    [noEdit, ...bestCloths(plan, shelf)],
  ]);
  const [asBuilt, asBraced] = [buildUps(plan), braces(plan)];
  for (const stock of stocks(plan, shelf)) {
    const from = stockEdit(plan, stock, told);
    for (const lay of lays(plan, stock)) {
      const layouts = crossbarLayouts(plan, stock, lay.bars?.lay ?? plan.bars.lay);
      for (const plies of asBuilt)
        for (const crossbars of layouts)
          for (const brace of asBraced)
            for (const joint of joints) {
              const edit = mergeEdits(from, lay, plies, crossbars, brace, joint);
              const changed = applyEdit(plan, edit, shelf);
              const key = JSON.stringify([
                changed.bars,
                changed.crossbars,
                changed.corners,
                changed.ply_screws,
                changed.cloth,
              ]);
              const before = found.get(key);
              if (before !== undefined && before.edit.words.length <= edit.words.length) continue;
              if (before === undefined && tried.has(key)) continue;
              tried.add(key);
              if (readable(changed, shelf, known)) found.set(key, { edit, plan: changed });
              else refused++;
            }
    }
  }
  return { builds: [...found.values()].sort((a, b) => a.edit.words.length - b.edit.words.length), refused };
}

/** Every one of each with every other, fewest changes first. */
const everyWay = (options: readonly (readonly Edit[])[]): readonly Edit[] =>
  options
    .reduce<readonly Edit[]>((all, next) => all.flatMap((edit) => next.map((more) => mergeEdits(edit, more))), [noEdit])
    .toSorted((a, b) => a.words.length - b.words.length);

/** Boards that were measured are of the plan's own stock: with measured boards the stock and the plies stay. */
const measured = (plan: Plan): boolean => plan.boards.length > 0;

function stocks(plan: Plan, shelf: Shelf): readonly Lumber[] {
  const own = shelf.lumber[plan.bars.stock];
  const others = Object.values(shelf.lumber).filter(({ key }) => key !== plan.bars.stock);
  return own === undefined || !measured(plan) ? [...(own === undefined ? [] : [own]), ...others] : [own];
}

const stockEdit = (plan: Plan, { key }: Lumber, shelf: Shelf): Edit =>
  key === plan.bars.stock
    ? noEdit
    : { words: [say.stock(stockWithKey(key, shelf.lumber[key]!, plan.units, 2))], bars: { stock: key } };

const square = ({ thickness_mm, width_mm }: Lumber): boolean => thickness_mm === width_mm;

function lays(plan: Plan, stock: Lumber): readonly Edit[] {
  const other: Lay = plan.bars.lay === 'flat' ? 'edge' : 'flat';
  return square(stock) ? [noEdit] : [noEdit, { words: [say.lay(other)], bars: { lay: other } }];
}

/**
 * Plies with stack and bond. New pairs are glued, screwed as well or not; whether their warps oppose is decided with
 * the boards.
 */
function buildUps(plan: Plan): readonly Edit[] {
  const own = plan.bars;
  const edits: Edit[] = [noEdit];
  if (own.plies > 1 && !measured(plan))
    edits.push({
      words: [say.plies(1, 'side-by-side', 'none')],
      bars: { plies: 1, stack: 'side-by-side', bond: 'none', pairing: 'unsorted' },
    });
  for (let plies = measured(plan) ? own.plies : 2; plies <= (measured(plan) ? own.plies : mostPlies); plies++)
    for (const stack of ['side-by-side', 'front-to-back'] as const)
      for (const bond of ['glue+screws', 'glue'] as const)
        if (plies > 1 && !(own.plies === plies && own.stack === stack && own.bond === bond))
          edits.push(buildUp(plan, plies, stack, bond));
  return edits;
}

function buildUp({ bars }: Plan, plies: number, stack: Stack, bond: Bond): Edit {
  const words = bars.plies === plies && bars.stack === stack ? say.bond(bond) : say.plies(plies, stack, bond);
  return { words: [words], bars: { plies, stack, bond, pairing: bars.plies > 1 ? bars.pairing : 'unsorted' } };
}

function crossbarLayouts(plan: Plan, stock: Lumber, barsLay: Lay): readonly Edit[] {
  const layOptions: readonly Lay[] = square(stock) ? [barsLay] : ['flat', 'edge'];
  return [
    noEdit,
    ...crossbarPlaces
      .flatMap((places) =>
        places.length === 0 ? [[]] : layOptions.map((lay) => places.map((place) => ({ ...place, lay }))),
      )
      .map((crossbars) => crossbarsEdit(plan, crossbars)),
  ];
}

/** The crossbars in place of the plan's own: as many changes as crossbars come or go, whichever is more. */
function crossbarsEdit(plan: Plan, crossbars: readonly NewCrossbar[]): Edit {
  const isIn = (list: readonly (NewCrossbar | PlanCrossbar)[], one: NewCrossbar | PlanCrossbar): boolean =>
    list.some(({ runs, at, lay }) => runs === one.runs && lay === one.lay && Math.abs(at - one.at) < 1e-9);
  const come = crossbars.filter((one) => !isIn(plan.crossbars, one));
  const go = plan.crossbars.filter((one) => !isIn(crossbars, one));
  return { words: say.crossbars(come, go, crossbars), crossbars };
}

function braces({ corners }: Plan): readonly Edit[] {
  return [
    noEdit,
    ...(corners.brace === null ? [] : [{ words: [say.noBraces], brace: 'none' as const }]),
    ...(corners.brace?.kind === 'timber'
      ? []
      : [{ words: [say.braces(corners.glue !== null)], brace: 'timber' as const }]),
  ];
}

/** Only where the plan itself names the screw or its hole. */
function screws(plan: Plan): readonly Edit[] {
  if (plan.ply_screws === null) return [noEdit];
  const assumed = (path: string): boolean => plan.assumed.some((one) => one.path === path);
  return assumed('ply-screws.use') && assumed('ply-screws.pilot')
    ? [noEdit]
    : [noEdit, { words: [say.fittingScrew], screw: 'fitting' }];
}
