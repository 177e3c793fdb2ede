import { cornerNames, type BarName, type CornerName } from '../base/names.js';
import { builtSize, laidSize } from '../plan/build-up.js';
import { usualLengths } from '../plan/defaults.js';
import type { Plan } from '../plan/plan.js';
import { byThickness, plyScrewFor, plyScrewHolds, plyStack, sameStack, type PlyStack } from '../plan/ply-screw.js';
import { shelfIn } from '../shelf/in-system.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { serviceClass } from './service-class.js';
import { eachWay } from '../base/joint-give.js';
import type { BraceShape, FrameShape, JointGive, Section } from './frame-shape.js';
import { cornerGive, endGive } from './joint-give.js';
import type { MemberBuild, Model } from './model.js';
import { plateStiffness_Nmm_per_rad } from './plate-stiffness.js';
import { platesOf } from './plates.js';
import { plySection, type PlyBuild } from './ply-section.js';
import { solidSection } from './section.js';
import { weightParts } from './weight.js';

/**
 * A finished plan and shelf → the model that is solved. The plan must have passed its checks against the shelf; throws
 * on a key that is not there.
 */
export function buildModel(plan: Plan, shop: Shelf): Model {
  const shelf = shelfIn(shop, plan.units);
  const stock = lumberOf(shelf, plan.bars.stock);
  const { w_mm } = builtSize(stock, plan.bars.lay, plan.bars.plies, plan.bars.stack);
  const span_x_mm = plan.face.width_mm - w_mm;
  const span_y_mm = plan.face.height_mm - w_mm;
  const screws = plyScrews(plan, shelf);
  const screwsOf = (lumber: Lumber, lying: Lying): PlyBuild['screws'] =>
    screws(plyStack(lumber, lying, plan.bars.stack));
  const barScrews = screwsOf(stock, plan.bars);
  const top = member('top', stock, plan.bars, plan.bars, barScrews, span_x_mm, 0);
  const left = member('left', stock, plan.bars, plan.bars, barScrews, span_y_mm, 0);
  const bars = { top, bottom: { ...top, name: 'bottom' }, left, right: { ...left, name: 'right' } };
  const crossbars = plan.crossbars.map((crossbar, i) =>
    member(
      `crossbar-${i + 1}`,
      lumberOf(shelf, crossbar.stock),
      crossbar,
      plan.bars,
      screwsOf(lumberOf(shelf, crossbar.stock), crossbar),
      crossbar.runs === 'upright' ? span_y_mm : span_x_mm,
      w_mm,
    ),
  );
  const braces = timberBraces(plan, shelf);
  const shape = frameShape(plan, shelf, bars, crossbars, braces, (build) => build.section);
  /** Only screwed plies have another section for stability; the same object lets the solver share its work. */
  const slips = [...Object.values(bars), ...crossbars].some((build) => build.section_stability !== build.section);
  const shape_stability = slips
    ? frameShape(plan, shelf, bars, crossbars, braces, (build) => build.section_stability)
    : shape;
  const wood_kg = [...Object.values(bars), ...crossbars, ...braces].reduce((sum, part) => sum + part.mass_kg, 0);
  const service_class = serviceClass(plan.room.humidity_high);
  const accidental = shelfNumber(shelf, 'accidental-pull');
  return {
    plan,
    shelf,
    bars,
    crossbars,
    braces,
    plate: platesOf(plan, shelf, bars.top.section),
    shape,
    shape_stability,
    shape_soft: softened(shape_stability, shelfNumber(shelf, 'second-give')),
    working: { x: plan.cloth.working.x_N_per_m / 1000, y: plan.cloth.working.y_N_per_m / 1000 },
    peak: { x: plan.cloth.peak.x_N_per_m / 1000, y: plan.cloth.peak.y_N_per_m / 1000 },
    accidental: { x: accidental / 1000, y: accidental / 1000 },
    k_def: shelfNumber(shelf, `creep-class-${service_class}` as const),
    service_class,
    weight: weightParts(plan, shelf, wood_kg),
  };
}

type Lying = Pick<Plan['bars'], 'lay' | 'plies'>;

function member(
  name: string,
  stock: Lumber,
  lying: Lying,
  bars: Plan['bars'],
  screws: PlyBuild['screws'],
  span_mm: number,
  shorter_mm: number,
): MemberBuild {
  const { w_mm: ply_w_mm, d_mm: ply_d_mm } = laidSize(stock, lying.lay);
  /** Plies that screws alone should hold, but none does, lie loose. */
  const bond = bars.bond === 'screws' && lying.plies > 1 && screws === null ? 'none' : bars.bond;
  const build: PlyBuild = {
    ply_w_mm,
    ply_d_mm,
    plies: lying.plies,
    stack: bars.stack,
    bond,
    E_MPa: stock.E_MPa,
    G_MPa: stock.G_MPa,
    density_kg_per_m3: stock.density_kg_per_m3,
    span_mm,
    screws,
  };
  const { section, fibre_mm } = plySection(build, 1);
  const section_stability =
    lying.plies > 1 && bond === 'screws' ? plySection(build, 0.6666666666666666).section : section;
  const mass_kg = section.A_mm2 * (span_mm - shorter_mm) * stock.density_kg_per_m3 * 1e-9;
  return {
    name,
    stock,
    lay: lying.lay,
    plies: lying.plies,
    stack: bars.stack,
    bond,
    pairing: bars.pairing,
    ply_w_mm,
    ply_d_mm,
    section,
    section_stability,
    fibre_mm,
    span_mm,
    mass_kg,
  };
}

function timberBraces(plan: Plan, shelf: Shelf): Model['braces'] {
  const brace = plan.corners.brace;
  if (brace === null || brace.kind !== 'timber') return [];
  const stock = lumberOf(shelf, brace.stock ?? plan.bars.stock);
  const { w_mm, d_mm } = laidSize(stock, brace.lay);
  const section = solidSection(w_mm, d_mm, stock.E_MPa, stock.G_MPa);
  const mass_kg = section.A_mm2 * brace.leg_mm * Math.SQRT2 * stock.density_kg_per_m3 * 1e-9;
  const give = endGive(brace, plan, shelf.joints);
  return cornerNames.map((corner) => ({ corner, leg_mm: brace.leg_mm, stock, section, give, mass_kg }));
}

function frameShape(
  plan: Plan,
  shelf: Shelf,
  bars: Model['bars'],
  crossbars: readonly MemberBuild[],
  braces: readonly BraceShape[],
  sectionOf: (build: MemberBuild) => Section,
): FrameShape {
  const bar = bars.top.section;
  const give = cornerGive(plan, shelf, bar);
  const plate = plateStiffness_Nmm_per_rad(plan, shelf, bars.top.stock, bar);
  const { w_mm } = bar;
  const each = <T>(of: (name: BarName) => T): Record<BarName, T> => ({
    top: of('top'),
    bottom: of('bottom'),
    left: of('left'),
    right: of('right'),
  });
  return {
    span_x_mm: bars.top.span_mm,
    span_y_mm: bars.left.span_mm,
    bars: each((name) => sectionOf(bars[name])),
    eccentricity_mm: each((name) => bars[name].section.d_mm / 2 + plan.bars.lip_mm),
    corner_give: { 'top-left': give, 'top-right': give, 'bottom-left': give, 'bottom-right': give },
    corner_plate_Nmm_per_rad: { 'top-left': plate, 'top-right': plate, 'bottom-left': plate, 'bottom-right': plate },
    crossbars: plan.crossbars.map((crossbar, i) => {
      const face_mm = crossbar.runs === 'upright' ? plan.face.width_mm : plan.face.height_mm;
      const build = crossbars[i] as MemberBuild;
      return {
        name: build.name,
        runs: crossbar.runs,
        at: (crossbar.at * face_mm - w_mm / 2) / (face_mm - w_mm),
        section: sectionOf(build),
        give: endGive(crossbar, plan, shelf.joints),
      };
    }),
    braces: braces.map(({ corner, leg_mm, section, give: ends }) => ({ corner, leg_mm, section, give: ends })),
  };
}

/**
 * The frame with joints softer than hoped: each gives twice as much as its own, and at least so much, in every way;
 * plates hold half as stiffly.
 */
function softened(shape: FrameShape, least: number): FrameShape {
  const softer = (give: JointGive): JointGive => eachWay(give, (widths) => Math.max(least, 2 * widths));
  const each = <T, U>(corners: Readonly<Record<CornerName, T>>, of: (value: T) => U): Record<CornerName, U> => ({
    'top-left': of(corners['top-left']),
    'top-right': of(corners['top-right']),
    'bottom-left': of(corners['bottom-left']),
    'bottom-right': of(corners['bottom-right']),
  });
  return {
    ...shape,
    corner_give: each(shape.corner_give, softer),
    corner_plate_Nmm_per_rad: each(shape.corner_plate_Nmm_per_rad, (stiffness) => stiffness / 2),
    crossbars: shape.crossbars.map((crossbar) => ({ ...crossbar, give: softer(crossbar.give) })),
    braces: shape.braces.map((brace) => ({ ...brace, give: softer(brace.give) })),
  };
}

/**
 * The screws that hold a stack of plies, as they are driven: those of the bars for pieces built like them, and for
 * other crossbars those of the thinnest. Null where none reaches the next ply.
 */
function plyScrews(plan: Plan, shelf: Shelf): (stack: PlyStack) => PlyBuild['screws'] {
  const every_mm = plan.ply_screws?.every_mm ?? usualLengths[plan.units].ply_screw_every_mm;
  const bars = plyStack(lumberOf(shelf, plan.bars.stock), plan.bars, plan.bars.stack);
  const likeBars = (stack: PlyStack): boolean => bars.plies > 1 && sameStack(stack, bars);
  const others = plan.crossbars
    .map((crossbar) => plyStack(lumberOf(shelf, crossbar.stock), crossbar, plan.bars.stack))
    .filter((stack) => stack.plies > 1 && !likeBars(stack));
  const [thinnest] = [...others].sort(byThickness);
  return (stack) => {
    const lead = likeBars(stack) ? bars : thinnest;
    const screw = lead === undefined ? null : plyScrewFor(plan, shelf, lead);
    return screw !== null && plyScrewHolds(screw, stack) ? { shank_mm: screw.shank_mm, every_mm } : null;
  };
}

function lumberOf(shelf: Shelf, key: string): Lumber {
  const lumber = shelf.lumber[key];
  if (lumber === undefined) throw new Error(`lumber ${key} is not on the shelf`);
  return lumber;
}
