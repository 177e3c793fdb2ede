import { factSettings, type Bench } from '../bench.js';
import { cutPool } from '../cutting/cut-plan.js';
import { commonUnits, poolOnly, poolPieces } from '../cutting/pieces/pool.js';
import { buildModel } from '../model/build-model.js';
import { shelfWithPile } from '../pile/on-shelf.js';
import type { Pile } from '../pile/pile.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import { solveModel } from '../solve/solve-model.js';
import { chooseLies } from './choose-lies.js';
import type { Frame } from './frame.js';
import { luckOf } from './luck.js';
import { judgeFrame } from './judge-frame.js';
import { leftBoards } from './left-boards.js';
import { placeBoards, usualEffort, type Effort, type Placed } from './place.js';
import { placeProblem } from './problem.js';
import type { Place, PlacedPile } from './result.js';
import { copiesOf, slotsOf } from './slots.js';

/**
 * Which board of a pile becomes which bar of which frame, from where to where, which face shows and which end comes
 * first; what to leave and what to buy
 * besides. Pure, and the same on every machine. A board's pieces are taken to err independently, as in the audit.
 */
export function placePlans(plans: readonly Plan[], pile: Pile, bench: Bench, effort: Effort = usualEffort): PlacedPile {
  const solved = plans.map((plan) => {
    const model = buildModel(plan, bench.shelf);
    return { model, solution: solveModel(model), settings: factSettings(model, bench) };
  });
  const frames = copiesOf(plans).map(({ index, copy }): Frame => ({
    ...(solved[index] as (typeof solved)[number]),
    copy,
  }));
  const slots = slotsOf(plans, bench.shelf);
  // Each branch costs more the more frames there are: many frames get fewer, and an honest bound.
  const placed = placeBoards(placeProblem(frames, slots, pile.boards, bench.shelf.cutting.kerf_mm), {
    seed: bench.seed,
    starts: Math.max(2, Math.ceil(effort.starts / frames.length)),
    nodes: Math.ceil(effort.nodes / frames.length ** 2),
  });
  const luck = luckOf(placed, bench.seed);
  const places = placesOf(placed);
  const left = leftBoards(placed, plans[0]?.units ?? pile.units);
  return {
    pile,
    frames: frames.map((frame, f) =>
      judgeFrame(frame, {
        places: places.filter(({ slot }) => slot.frame === f),
        missing: slots.filter((slot, i) => slot.frame === f && placed.from_mm[i] === null),
        luck: luck[f] ?? null,
        placed,
        index: f,
      }),
    ),
    aim: placed.aim,
    bound: placed.bound,
    proven: placed.proven,
    left,
    square: [...new Set(pile.boards.map(({ stock }) => stock))].filter((stock) => isSquare(bench.shelf.lumber[stock])),
    buy: buyRest(plans, pile, bench, places, left),
  };
}

/** Sides that differ by less cannot be told apart by eye. */
const told_apart_mm = 1;

const isSquare = (lumber: Bench['shelf']['lumber'][string] | undefined): boolean =>
  lumber !== undefined && Math.abs(lumber.width_mm - lumber.thickness_mm) < told_apart_mm;

function placesOf(placed: Placed): readonly Place[] {
  const { problem, placing, from_mm } = placed;
  const lies = chooseLies(problem, placing);
  return problem.slots.flatMap((slot, i): Place[] => {
    const board = problem.boards[placing[i]?.board ?? -1];
    const from = from_mm[i];
    return board === undefined || from == null
      ? []
      : [{ slot, board, from_mm: from, kerf_mm: problem.lengths[i]?.kerf_mm ?? 0, lie: lies[i] as Place['lie'] }];
  });
}

/**
 * Pieces that found no board, and the braces, are cut from what is left of the pile; only what that lacks is bought.
 */
function buyRest(
  plans: readonly Plan[],
  pile: Pile,
  { shelf: shop }: Bench,
  places: readonly Place[],
  left: PlacedPile['left'],
): PlacedPile['buy'] {
  const have = new Set(places.map(({ slot }) => slot.tag));
  const shelf = shelfIn(shop, commonUnits(plans));
  const rest = poolOnly(poolPieces(plans, shelf), ({ tag }) => !have.has(tag));
  if (rest.stocks.length === 0) return null;
  const stretches = left.flatMap(({ board, left: sound }) =>
    sound.map(({ from_mm, to_mm }) => ({ ...board, length_mm: to_mm, knots: [{ from_mm: 0, to_mm: from_mm }] })),
  );
  return cutPool(plans, shelfWithPile(shelf, { ...pile, boards: stretches }), rest);
}
