import { formatLength } from '../base/units-format.js';
import type { Problem } from '../base/problem.js';
import type { Path, YamlSource } from '../base/yaml-document.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { builtSize, laidSize, plyThickness_mm, type BuiltSize } from './build-up.js';
import { unknownName } from './check-names.js';
import type { Plan, PlanCrossbar, Stack } from './plan.js';
import { fittingScrew } from './ply-screw.js';

const lumberOf = (shelf: Shelf, key: string): Lumber | undefined =>
  Object.hasOwn(shelf.lumber, key) ? shelf.lumber[key] : undefined;

/** Lengths that differ by less are the same: a place written as a length comes back from its share of the side. */
const dust_mm = 1e-6;

/** Outside size of a crossbar: its plies lie side by side. */
const crossbarSize = (crossbar: PlanCrossbar, lumber: Lumber, stack: Stack): BuiltSize =>
  builtSize(lumber, crossbar.lay, crossbar.plies, stack);

/**
 * What a plan gets wrong against a shelf: names taken by default that the shelf lacks, bars that fill the face,
 * crossbars and braces in each other's way,
 * setbacks deeper than the bars. Errors and warnings, each with its place. Names written in the plan are checked by
 * `checkNames`.
 */
export function checkPlan(plan: Plan, shop: Shelf, source: YamlSource): Problem[] {
  const shelf = shelfIn(shop, plan.units);
  const problems = checkDefaults(plan, shelf, source);
  const bars = lumberOf(shelf, plan.bars.stock);
  if (bars === undefined) return problems;
  const bar = builtSize(bars, plan.bars.lay, plan.bars.plies, plan.bars.stack);
  const shorter_mm = Math.min(plan.face.width_mm, plan.face.height_mm);
  if (bar.w_mm >= shorter_mm / 2)
    return [
      ...problems,
      source.problem(
        'no-opening',
        ['bars'],
        { value: formatLength(bar.w_mm, plan.units), allowed: formatLength(shorter_mm / 2, plan.units) },
        'key',
      ),
    ];
  return [
    ...problems,
    ...checkBrace(plan, bar, shelf, source),
    ...checkCrossbars(plan, bar, shelf, source),
    ...checkPlyScrews(plan, bars, shelf, source),
  ];
}

/** Defaults that name something this shelf does not have. */
function checkDefaults(plan: Plan, shelf: Shelf, source: YamlSource): Problem[] {
  const assumed = new Set(plan.assumed.map(({ path }) => path));
  const problems: Problem[] = [];
  const check = (
    assumedAs: string,
    path: Path,
    name: string | undefined | null,
    section: 'nails' | 'screws' | 'glues' | 'cloths',
  ): void => {
    if (name && assumed.has(assumedAs) && !Object.hasOwn(shelf[section], name))
      problems.push(unknownName(source, path, name, section, shelf));
  };
  check('corners.glue', ['corners'], plan.corners.glue, 'glues');
  check('corners.nails', ['corners'], plan.corners.nails?.use, 'nails');
  check('corners.nails.use', ['corners', 'nails'], plan.corners.nails?.use, 'nails');
  check('ply-screws.use', ['ply-screws'], plan.ply_screws?.use, 'screws');
  check('cloth.use', ['cloth'], plan.cloth.use, 'cloths');
  return problems;
}

/**
 * The leg at which a brace vanishes into the corner, mm. Between the bars' inner edges a timber brace is √2 (leg − w)
 * long along its middle and shorter by its own
 * width along its inner side, so the leg must be more than w + w_brace/√2; a gusset or angle must reach past the middle
 * of the bars to hold anything: w/2.
 */
function leastLeg_mm(plan: Plan, bar: BuiltSize, shelf: Shelf): number {
  const { brace } = plan.corners;
  const stock = brace?.kind === 'timber' ? lumberOf(shelf, brace.stock ?? plan.bars.stock) : undefined;
  return stock === undefined || brace === null ? bar.w_mm / 2 : bar.w_mm + laidSize(stock, brace.lay).w_mm / Math.SQRT2;
}

function checkBrace(plan: Plan, bar: BuiltSize, shelf: Shelf, source: YamlSource): Problem[] {
  const { brace } = plan.corners;
  const shorter_mm = Math.min(plan.face.width_mm, plan.face.height_mm);
  const half_mm = (shorter_mm - bar.w_mm) / 2;
  if (brace === null) return [];
  const least_mm = leastLeg_mm(plan, bar, shelf);
  if (brace.leg_mm <= least_mm)
    return [
      source.problem('leg-too-short', ['corners', 'brace', 'leg'], {
        value: formatLength(brace.leg_mm, plan.units),
        allowed: formatLength(least_mm, plan.units),
      }),
    ];
  if (brace.leg_mm >= shorter_mm / 2 || brace.leg_mm < half_mm) return [];
  return [
    source.problem('leg-too-long', ['corners', 'brace', 'leg'], {
      value: formatLength(brace.leg_mm, plan.units),
      allowed: formatLength(half_mm, plan.units),
    }),
  ];
}

function checkCrossbars(plan: Plan, bar: BuiltSize, shelf: Shelf, source: YamlSource): Problem[] {
  const mm = (length_mm: number): string => formatLength(length_mm, plan.units);
  const problems: Problem[] = [];
  const placed: { readonly runs: string; readonly middle_mm: number; readonly w_mm: number; readonly name: string }[] =
    [];
  plan.crossbars.forEach((crossbar, index) => {
    const lumber = lumberOf(shelf, crossbar.stock);
    if (lumber === undefined || !(crossbar.at > 0 && crossbar.at < 1)) return;
    const path: Path = ['crossbars', index];
    const name = `crossbar-${index + 1}`;
    const { w_mm, d_mm } = crossbarSize(crossbar, lumber, plan.bars.stack);
    const side_mm = crossbar.runs === 'upright' ? plan.face.width_mm : plan.face.height_mm;
    const middle_mm = crossbar.at * side_mm;
    const least_mm = bar.w_mm + w_mm / 2;
    if (middle_mm < least_mm - dust_mm || middle_mm > side_mm - least_mm + dust_mm)
      problems.push(
        source.problem('crossbar-on-bar', [...path, 'at'], {
          name,
          value: mm(middle_mm),
          allowed: `${mm(least_mm)} and ${mm(side_mm - least_mm)}`,
        }),
      );
    for (const other of placed.filter(({ runs }) => runs === crossbar.runs)) {
      const apart_mm = Math.abs(other.middle_mm - middle_mm);
      const needed_mm = (other.w_mm + w_mm) / 2;
      if (apart_mm < needed_mm - dust_mm)
        problems.push(
          source.problem('crossbars-overlap', [...path, 'at'], {
            name: `${other.name} and ${name}`,
            value: mm(apart_mm),
            allowed: mm(needed_mm),
          }),
        );
    }
    placed.push({ runs: crossbar.runs, middle_mm, w_mm, name });
    const depth_mm = bar.d_mm + plan.bars.lip_mm;
    const behind_mm = crossbar.setback_mm + d_mm - depth_mm;
    if (crossbar.setback_mm >= depth_mm)
      problems.push(
        source.problem('setback-too-deep', [...path, 'setback'], {
          value: mm(crossbar.setback_mm),
          allowed: mm(depth_mm),
        }),
      );
    else if (behind_mm > 0.05 && !plan.assumed.some((taken) => taken.path === `crossbars[${index}].setback`))
      problems.push(source.warning('crossbar-stands-out', path, { name, value: mm(behind_mm) }));
    const leg_mm = plan.corners.brace?.leg_mm ?? 0;
    const fromCorner_mm = Math.min(middle_mm, side_mm - middle_mm) - bar.w_mm / 2;
    if (leg_mm > 0 && fromCorner_mm - w_mm / 2 < leg_mm)
      problems.push(
        source.warning('brace-meets-crossbar', [...path, 'at'], {
          name,
          value: mm(fromCorner_mm),
          allowed: mm(leg_mm),
        }),
      );
  });
  return problems;
}

/** A screw taken by default when none on the shelf holds two plies together without coming out. */
function checkPlyScrews(plan: Plan, bars: Lumber, shelf: Shelf, source: YamlSource): Problem[] {
  if (plan.ply_screws === null || !plan.assumed.some(({ path }) => path === 'ply-screws.use')) return [];
  const ply_mm = plyThickness_mm(bars, plan.bars.lay, plan.bars.stack);
  return fittingScrew(Object.values(shelf.screws), ply_mm) === null
    ? [source.warning('no-screw-fits', ['bars', 'plies'], { value: formatLength(ply_mm, plan.units) })]
    : [];
}
