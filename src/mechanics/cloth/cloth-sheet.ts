import type { BarName } from '../../base/names.js';
import { tapeMark_mm } from '../../base/tape.js';
import type { Model, Solution } from '../../model/model.js';
import { nearestDuck } from './cloth-weight.js';
import { clearances, type Clearance } from './clearance.js';
import { clothCutSize, clothMargin_mm, clothWrap_mm, rollShort_mm, type ClothCut } from './cut-size.js';
import { pushSpan, tapSpan } from './frame-spans.js';
import { keyLimit, type KeyLimit } from './key-limit.js';
import { pullFromHeldShrinkage_N_per_m } from './pull-changes.js';
import { pushSag_mm } from './push-test.js';
import { relaxShare } from './relaxation.js';
import { seasonalSwing, type RoughPull } from './seasonal-pull.js';
import { clothNumber, clothOf, groundOf, groundVolume_ml } from './shelf-numbers.js';
import { stapleOrder, staplesAlong, type Staple } from './staples.js';
import { lowestHeard_Hz, tapBand, type TapBand } from './tap-note.js';

/** The weight and pad of the push test in facts and reports. */
export const pushTest = { weight_g: 500, pad_mm: { metric: 50, inch: 50.8 } } as const;

/** A line to draw on the cut cloth, all round and parallel to its edge. */
export interface FoldLine {
  /**
   * `face`: front edge. `back-edge`: where it turns onto the back. `staples`: along the middle of the back or of the
   * side.
   */
  readonly name: 'face' | 'back-edge' | 'staples';
  readonly in_from_edge_mm: number;
}

/** Everything the page on cloth needs, in mm, N/m, kg, ml. */
export interface ClothSheet {
  readonly cut: {
    readonly width_mm: number;
    readonly height_mm: number;
    readonly margin_mm: number;
    readonly grip_mm: number;
  };
  readonly folds: readonly FoldLine[];
  /** Roll width and how much it is too narrow; which cut side runs along the roll. */
  readonly roll: {
    readonly width_mm: number;
    readonly short_mm: number;
    readonly along: 'width' | 'height' | 'either';
    readonly length_mm: number;
  };
  /** Roll length to buy for one frame if the cloth is washed first and shrinks as the shelf says, mm. */
  readonly length_if_washed_mm: number;
  readonly staples_per_side: Readonly<Record<BarName, number>>;
  readonly staples: number;
  /** Order of fixing: middles first, opposite sides in turn, corners last. */
  readonly order: readonly Staple[];
  /**
   * Notes that mean the working pull, on bare cloth and with its ground; `heard` is false when they lie below what an
   * ear hears (about 20 Hz).
   */
  readonly tap: { readonly bare: TapBand; readonly grounded: TapBand; readonly heard: boolean };
  readonly push: { readonly weight_g: number; readonly pad_mm: number; readonly sag_mm: number };
  readonly clearances: readonly Clearance[];
  readonly relax_share: number;
  readonly keys: KeyLimit;
  readonly seasonal: RoughPull;
  /** Pull that could build up if the whole first shrinkage were held back by the frame: an upper bound. */
  readonly wetting_pull_N_per_m: number;
  readonly weight: { readonly cloth_kg: number; readonly ground_kg: number; readonly paint_kg: number };
  /** The numbered duck that weighs about as much as this cloth, or null. */
  readonly duck: number | null;
  readonly ground: {
    readonly name: string;
    readonly coats: number;
    readonly volume_ml: number;
    readonly dry_h_each: number;
  } | null;
}

/** The plan's cloth as {@link ClothCut}; the depth counts the lip, over which the cloth runs. */
export function clothCutOf(model: Model): ClothCut {
  const { plan, bars } = model;
  return {
    face_width_mm: plan.face.width_mm,
    face_height_mm: plan.face.height_mm,
    depth_mm: bars.top.section.d_mm + plan.bars.lip_mm,
    bar_width_mm: bars.top.section.w_mm,
    fixed_to: plan.cloth.fixing.to,
    turn_mm: plan.cloth.fixing.turn_mm,
    grip_mm: clothNumber(model, 'cloth-grip'),
    mark_mm: tapeMark_mm(plan.units),
  };
}

/** Width of the roll: the plan's, else the shelf's. */
export function rollWidth_mm(model: Model): number {
  return model.plan.cloth.roll_mm ?? clothOf(model).roll_mm;
}

/** The cloth's page as data. */
export function clothSheet(model: Model, solution: Solution): ClothSheet {
  const { plan, weight } = model;
  const cloth = clothOf(model);
  const cut = clothCutOf(model);
  const size = clothCutSize(cut);
  const roll_mm = rollWidth_mm(model);
  const square = plan.face.width_mm === plan.face.height_mm;
  const along = square ? 'either' : plan.face.width_mm > plan.face.height_mm ? 'width' : 'height';
  const length_mm = Math.max(size.width_mm, size.height_mm);
  const staples_per_side = staplesPerSide(model);
  const ground = groundOf(model);
  const bare_kg_per_m2 = cloth.mass_g_per_m2 / 1000;
  const bare = tapBand(tapSpan(model), plan.cloth.working, bare_kg_per_m2);
  const ground_kg_per_m2 = ((ground?.mass_g_per_m2_per_coat ?? 0) * plan.ground.coats) / 1000;
  return {
    cut: { ...size, margin_mm: clothMargin_mm(cut), grip_mm: cut.grip_mm },
    folds: foldLines(cut),
    roll: { width_mm: roll_mm, short_mm: rollShort_mm(size.width_mm, size.height_mm, roll_mm), along, length_mm },
    length_if_washed_mm: length_mm / (1 - cloth.shrinkage),
    staples_per_side,
    staples: Object.values(staples_per_side).reduce((sum, n) => sum + n, 0),
    order: stapleOrder(staples_per_side),
    tap: {
      bare,
      grounded: tapBand(tapSpan(model), plan.cloth.working, bare_kg_per_m2 + ground_kg_per_m2),
      heard: bare.low_Hz >= lowestHeard_Hz,
    },
    push: {
      weight_g: pushTest.weight_g,
      pad_mm: padOn(model),
      sag_mm: pushSag_mm(pushSpan(model), plan.cloth.working, pushTest.weight_g, padOn(model)),
    },
    clearances: clearances(model),
    relax_share: relaxShare(model, solution),
    keys: keyLimit(model),
    seasonal: seasonalSwing(cloth.stiffness_N_per_m, plan.room.humidity_low, plan.room.humidity_high),
    wetting_pull_N_per_m: pullFromHeldShrinkage_N_per_m(cloth.stiffness_N_per_m, cloth.shrinkage),
    weight: { cloth_kg: weight.cloth_kg, ground_kg: weight.ground_kg, paint_kg: weight.paint_kg },
    duck: nearestDuck(cloth.mass_g_per_m2),
    ground:
      ground === null || plan.ground.coats === 0
        ? null
        : {
            name: ground.name,
            coats: plan.ground.coats,
            volume_ml: groundVolume_ml(model),
            dry_h_each: ground.dry_h,
          },
  };
}

/** The pad of the push test, smaller on an opening that is smaller still. */
export function padOn(model: Model): number {
  const span = pushSpan(model);
  return Math.min(pushTest.pad_mm[model.plan.units], span.width_mm, span.height_mm);
}

/**
 * Staples go along the middle of the wood they hold to, so the hem beyond them is never shorter than the plan's turn.
 */
function foldLines(cut: ClothCut): FoldLine[] {
  const margin_mm = clothMargin_mm(cut);
  const wood_mm = cut.fixed_to === 'back' ? cut.bar_width_mm : cut.depth_mm;
  const hem_mm = margin_mm - cut.depth_mm - clothWrap_mm(cut) + wood_mm / 2;
  const face: FoldLine = { name: 'face', in_from_edge_mm: margin_mm };
  const back: FoldLine[] =
    cut.fixed_to === 'back' ? [{ name: 'back-edge', in_from_edge_mm: margin_mm - cut.depth_mm }] : [];
  return [face, ...back, { name: 'staples', in_from_edge_mm: hem_mm }];
}

/** Staples along each side. */
export function staplesPerSide(model: Model): Record<BarName, number> {
  const { face, cloth } = model.plan;
  const level = staplesAlong(face.width_mm, cloth.fixing.every_mm);
  const upright = staplesAlong(face.height_mm, cloth.fixing.every_mm);
  return { top: level, bottom: level, left: upright, right: upright };
}
