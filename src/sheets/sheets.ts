import { barNames, type BarName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { bowPromise } from '../bench-sheet/judge-bows.js';
import { bareTerms, liftPromise, type LiftPromise } from '../bench-sheet/lift-promise.js';
import { moisturePromise, type MoisturePromise } from '../bench-sheet/moisture-promise.js';
import type { Promised } from '../bench-sheet/promised.js';
import { piecesAssemble, type Assembly } from '../cutting/pieces/assemble.js';
import { markingOrder, type MarkingOrder } from '../cutting/marking.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { clothSheet, type ClothSheet } from '../mechanics/cloth/cloth-sheet.js';
import { fasteningSheet, type FasteningLine } from '../mechanics/fasteners/fastening-sheet.js';
import { glueSheet, type GlueSheet } from '../mechanics/glue/glue-sheet.js';
import { hangingState, type HangingState } from '../mechanics/hanging/hanging-state.js';
import { ringHole, type RingHole } from '../mechanics/hanging/ring.js';
import { standsOut, type StandsOut } from '../mechanics/hanging/stands-out.js';
import { ringSpan_mm } from '../mechanics/hanging/wire-geometry.js';
import { staplesBySteel, type StaplesBySteel } from '../mechanics/occupancy/staple-line.js';
import { staplesAside, type StaplesAside } from '../mechanics/occupancy/staples-aside.js';
import { orderOfWork, type ToolsAtHand, type WorkStep } from '../order-of-work/order-of-work.js';
import type { Model } from '../model/model.js';
import { betterPlaces, type BetterPlaces } from '../place/better-places.js';
import { warpStory, type WarpTold } from '../risk/story.js';
import { whatIf, type WhatIf } from '../what-if/what-if.js';

/** How the piece hangs, and what the page on hanging says of its rings and its back. */
export interface HangingSheet extends HangingState {
  /** From ring to ring, mm. */
  readonly ring_span_mm: number;
  /** The hole each ring is screwed into; null where no ring was picked. */
  readonly ring_hole: RingHole | null;
  /** What stands out behind the bars; null where nothing does. */
  readonly stands_out: StandsOut | null;
}

/** What the readings of the finished frame should be, at most. */
export interface Promises {
  readonly moisture: MoisturePromise;
  /** Lift of a corner before the cloth is on, and with it. */
  readonly lift_bare: LiftPromise;
  readonly lift_stretched: LiftPromise;
  /** How far the middle of each bar may stand off with the cloth on, mm; null where it is not known. */
  readonly bow_mm: Readonly<Record<'bar-bow' | 'inward-bow', Readonly<Record<BarName, number | null>>>>;
}

/**
 * What the pages tell beyond facts and findings, a part for each page; a part is worked out when it is first read, and
 * the same for every reader.
 */
export interface Sheets {
  readonly cloth: ClothSheet;
  /** Staples that would meet the steel of a corner angle; null where there is none. */
  readonly steel: StaplesBySteel | null;
  /** The staples in their order, those that would meet the head of a screw or nail set beside it. */
  readonly staples: StaplesAside;
  readonly fastenings: readonly FasteningLine[];
  /** Null where nothing is glued. */
  readonly glue: GlueSheet | null;
  /** Null where the piece does not hang. */
  readonly hanging: HangingSheet | null;
  readonly warp: WarpTold;
  /** Whether measured boards lie where they belong; null where fewer than two were measured. */
  readonly places: BetterPlaces | null;
  readonly what_if: WhatIf;
  /** Whether the pieces of the first list make the frame; null where there is no list. */
  readonly assembly: Assembly | null;
  readonly marking: MarkingOrder;
  readonly work: readonly WorkStep[];
  readonly promises: Promises;
}

/** From what the pages are worked out: what was promised, how it is cut, what the workshop has. */
export interface SheetInput extends Promised {
  readonly cut: CutPlan;
  readonly tools?: ToolsAtHand;
}

/** The pages of a finished audit. */
export function sheetsOf(input: SheetInput): Sheets {
  const { model, solution, settings } = input;
  return lazily<Sheets>({
    cloth: () => clothSheet(model, solution),
    steel: () => staplesBySteel(model),
    staples: () => staplesAside(model),
    fastenings: () => fasteningSheet(model),
    glue: () => glueSheet(model),
    hanging: () => hangingSheet(model),
    warp: () => warpStory(model, solution, settings),
    places: () => betterPlaces({ model, solution, settings, copy: 1 }),
    what_if: () => whatIf(model, solution, settings, input.tools?.saw),
    assembly: () => (input.cut.lists[0] === undefined ? null : piecesAssemble(input.cut.lists[0])),
    marking: () => markingOrder(input.cut, input.tools?.saw),
    work: () => orderOfWork(model, input.tools),
    promises: () => promises(input),
  });
}

/** How a model hangs; null where it does not. */
export function hangingSheet(model: Model): HangingSheet | null {
  const state = hangingState(model);
  if (state === null) return null;
  const {
    plan,
    shelf,
    bars: { left },
  } = model;
  const {
    picked: { ring },
    ring_wood_mm,
  } = state;
  return {
    ...state,
    ring_span_mm: ringSpan_mm(plan, left.section.w_mm),
    ring_hole:
      ring === null
        ? null
        : ringHole(ring, left.stock.species.specific_gravity, ring_wood_mm, shelf.drills, plan.units),
    stands_out: standsOut(model),
  };
}

function promises(input: SheetInput): Promises {
  const bows = (rule: 'bar-bow' | 'inward-bow') =>
    Object.fromEntries(barNames.map((bar) => [bar, bowPromise(input, bar, rule)])) as Record<BarName, number | null>;
  return {
    moisture: moisturePromise(input),
    lift_bare: liftPromise(input, bareTerms(input.model)),
    lift_stretched: liftPromise(input, 'cloth-on'),
    bow_mm: { 'bar-bow': bows('bar-bow'), 'inward-bow': bows('inward-bow') },
  };
}
