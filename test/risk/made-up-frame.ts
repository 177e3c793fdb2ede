import { evenGive } from '../../src/base/joint-give.js';
import { barNames, cornerNames, type BarName, type Choosing } from '../../src/base/names.js';
import { solveInfluence } from '../../src/solve/analyse-frame.js';
import type { Influence, WarpKind } from '../../src/model/frame-results.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import type { MemberBuild, Model } from '../../src/model/model.js';
import { plySection } from '../../src/model/ply-section.js';
import { solidSection } from '../../src/model/section.js';
import type { Bond, Lay, Pairing, PlanBoard, Stack } from '../../src/plan/plan.js';
import type { Lumber, WarpSpread } from '../../src/shelf/shelf.js';
import type { WarpAssumptions } from '../../src/risk/assumptions.js';

const deg = Math.PI / 180;
const spread = (twist: number, twist_sd: number, bow_sd: number, crook_sd: number): WarpSpread => ({
  twist_rad_per_m: { mean: twist * deg, sd: twist_sd * deg },
  bow_per_m: { mean: 0, sd: bow_sd },
  crook_per_m: { mean: 0, sd: crook_sd },
});

/** The proposals of natural warp by way of choosing, as the default shelf has them. */
export const proposedSpread: Readonly<Record<Choosing, WarpSpread>> = {
  unsorted: spread(1.0, 1.2, 0.008, 0.004),
  plain: spread(0.5, 0.7, 0.005, 0.0025),
  picked: spread(0, 0.3, 0.002, 0.0012),
};

export const proposedAssumptions: WarpAssumptions = {
  drying_per_pct: 0.05,
  correlation: { opposed: -0.8, unsorted: 0, matched: 0.8 },
  reading_twist_rad_per_m: 0.1 * deg,
  reading_curve_per_m: 0.0003,
};

export interface MadeUp {
  readonly chosen: Choosing;
  readonly moisture_pct: number;
  readonly boards: readonly PlanBoard[];
  readonly plies: number;
  readonly lay: Lay;
  readonly stack: Stack;
  readonly bond: Bond;
  readonly pairing: Pairing;
  readonly crossbars: number;
}

export const plainSingle: MadeUp = {
  chosen: 'plain',
  moisture_pct: 12,
  boards: [],
  plies: 1,
  lay: 'flat',
  stack: 'side-by-side',
  bond: 'glue',
  pairing: 'unsorted',
  crossbars: 0,
};

const thickness_mm = 19;
const width_mm = 38;

/** Only what natural warp needs to know of a model: the bars as built, the boards, how they were chosen. Spans are invented and unequal. */
export function madeUpModel(of: Partial<MadeUp> = {}): Model {
  const is = { ...plainSingle, ...of };
  const bars = Object.fromEntries(barNames.map((name) => [name, member(name, is, name === 'top' || name === 'bottom' ? 1062 : 662)])) as Record<BarName, MemberBuild>;
  const crossbars = Array.from({ length: is.crossbars }, (_, i) => member(`crossbar-${i + 1}`, { ...is, plies: 1, lay: i === 0 ? 'flat' : 'edge' }, i === 0 ? 662 : 1062));
  const plan = { lumber: { chosen: is.chosen, moisture_pct: is.moisture_pct }, boards: is.boards, room: { humidity_low: 0.35, humidity_high: 0.6, temperature_C: 20 } };
  const proposals = {
    'drying-factor': { value: 0.05, unit: 'per-pct', source: 'proposal' },
    'pairing-opposed': { value: -0.8, unit: 'ratio', source: 'proposal' },
    'pairing-matched': { value: 0.8, unit: 'ratio', source: 'proposal' },
    'reading-error-twist': { value: 0.1, unit: 'deg/m', source: 'proposal' },
    'reading-error-curve': { value: 0.0003, unit: '/m', source: 'proposal' },
  };
  return { plan, shelf: { proposals }, bars, crossbars, braces: [] } as unknown as Model;
}

function member(name: string, is: MadeUp, span_mm: number): MemberBuild {
  const flat = is.lay === 'flat';
  const ply_w_mm = flat ? width_mm : thickness_mm;
  const ply_d_mm = flat ? thickness_mm : width_mm;
  const { section, fibre_mm } = plySection(
    { ply_w_mm, ply_d_mm, plies: is.plies, stack: is.stack, bond: is.bond, E_MPa: 9000, G_MPa: 562.5, density_kg_per_m3: 420, span_mm, screws: null },
    1,
  );
  const stock = { key: 'strip', thickness_mm, width_mm, spread: proposedSpread } as unknown as Lumber;
  const { lay, plies, stack, bond, pairing } = is;
  return { name, stock, lay, plies, stack, bond, pairing, ply_w_mm, ply_d_mm, section, section_stability: section, fibre_mm, span_mm, mass_kg: 1 };
}

/**
 * Invented influence numbers of a plausible size and no symmetry: every member and kind lifts the corner and bows every bar by its own mix
 * of three shapes. `plane` answers in the plane only, the others out of it only.
 */
export function madeUpInfluence(crossbars: number, stations = 17): Influence[] {
  const members: string[] = [...barNames, ...Array.from({ length: crossbars }, (_, i) => `crossbar-${i + 1}`)];
  const kinds: WarpKind[] = ['twist', 'out', 'plane'];
  let count = 0;
  const wobble = (): number => Math.sin(12.9898 * ++count + 4.1) * 0.9;
  const line = (size: number): Float64Array => {
    const [a, b, c] = [wobble(), wobble(), wobble()];
    return Float64Array.from({ length: stations }, (_, i) => {
      const s = i / (stations - 1);
      return size * s * (1 - s) * (a + b * (s - 0.4) + c * (s - 0.3) ** 2);
    });
  };
  const lines = (size: number): Record<BarName, Float64Array> => ({ top: line(size), bottom: line(size), left: line(size), right: line(size) });
  return members.flatMap((name) =>
    kinds.map((kind) => ({
      member: name,
      kind,
      corner_lift: kind === 'plane' ? 0 : (kind === 'twist' ? 2e5 : 4e4) * wobble(),
      bar_bow: lines(kind === 'plane' ? 0 : 2e5),
      bar_crook: lines(kind === 'plane' ? 2e5 : 0),
    })),
  );
}

/** The frame that `madeUpModel` describes, with invented joints and, from one crossbar on, braces; crossbars off the middle. */
export function madeUpShape(model: Model): FrameShape {
  const all = <T>(value: T): Record<BarName, T> => ({ top: value, bottom: value, left: value, right: value });
  const corners = { 'top-left': evenGive(4), 'top-right': evenGive(4), 'bottom-left': evenGive(4), 'bottom-right': evenGive(4) };
  const section = model.bars.top.section;
  return {
    span_x_mm: model.bars.top.span_mm,
    span_y_mm: model.bars.left.span_mm,
    bars: all(section),
    eccentricity_mm: all(section.d_mm / 2),
    corner_give: corners,
    corner_plate_Nmm_per_rad: { 'top-left': 0, 'top-right': 0, 'bottom-left': 0, 'bottom-right': 0 },
    crossbars: model.crossbars.map(({ name, section: own }, i) => ({ name, runs: i === 0 ? 'upright' : 'level', at: i === 0 ? 0.42 : 0.55, section: own, give: evenGive(6) })),
    braces: model.crossbars.length === 0 ? [] : cornerNames.map((corner) => ({ corner, leg_mm: 160, section: solidSection(38, 19, 9000, 562.5), give: evenGive(6) })),
  };
}

/** Influence numbers of that frame at 200 N/m along the width and 150 N/m along the height. */
export function solvedInfluence(model: Model): readonly Influence[] {
  const influence = solveInfluence(madeUpShape(model), { x: 0.2, y: 0.15 });
  if (influence === null) throw new Error('the made-up frame must be stable');
  return influence;
}
