import { evenGive, type JointGive } from '../base/joint-give.js';
import { readQuantity } from '../base/units.js';
import { Defaults, planDefaults as usual, usualLeg_mm } from './defaults.js';
import { maybe_mm, mm } from './fill-quantities.js';
import type { PlanInput } from './plan-schema.js';
import type { Plan, PlanBars, PlanCorners, PlanCrossbar } from './plan.js';

/** The side bars. */
export function fillBars({ bars, crossbars }: PlanInput, defaults: Defaults): PlanBars {
  const plies = defaults.take('bars.plies', bars.plies, 1, 'one ply');
  const single = plies === 1;
  const built = !single || (crossbars ?? []).some((crossbar) => (crossbar.plies ?? 1) > 1);
  return {
    stock: bars.stock,
    lay: bars.lay,
    lip_mm: defaults.length('bars.lip', maybe_mm(bars.lip), 0),
    plies,
    stack: single ? (bars.stack ?? 'side-by-side') : defaults.take('bars.stack', bars.stack, 'side-by-side'),
    bond: built ? defaults.take('bars.bond', bars.bond, 'glue+screws') : 'none',
    pairing: single ? (bars.pairing ?? 'unsorted') : defaults.take('bars.pairing', bars.pairing, 'unsorted'),
  };
}

/** One number means all three ways. */
const fillGive = (give: number | JointGive | undefined): JointGive | null =>
  typeof give === 'number' ? evenGive(give) : (give ?? null);

/** One crossbar on a face this long across it. */
export function fillCrossbar(
  input: NonNullable<PlanInput['crossbars']>[number],
  index: number,
  plan: PlanInput,
  span_mm: number,
  defaults: Defaults,
): PlanCrossbar {
  const path = `crossbars[${index}]`;
  const at =
    input.at === undefined ? undefined : typeof input.at === 'number' ? input.at : fractionOf(input.at, span_mm);
  return {
    runs: input.runs,
    at: defaults.take(`${path}.at`, at, 0.5, 'the middle'),
    stock: defaults.take(`${path}.stock`, input.stock, plan.bars.stock),
    lay: defaults.take(`${path}.lay`, input.lay, plan.bars.lay),
    plies: defaults.take(`${path}.plies`, input.plies, 1, 'one ply'),
    setback_mm: defaults.length(`${path}.setback`, maybe_mm(input.setback), defaults.lengths.setback_mm),
    give: fillGive(input.give),
  };
}

/** `1/2` or `450 mm` as a fraction of the face. */
function fractionOf(at: string, span_mm: number): number {
  const share = readQuantity(at, 'fraction');
  return share.ok ? share.value : mm(at) / span_mm;
}

/** The corners of a face with this shorter side. */
export function fillCorners(
  corners: PlanInput['corners'],
  plan: PlanInput,
  shorter_mm: number,
  defaults: Defaults,
): PlanCorners {
  const given = corners ?? {};
  const keyed = given.cut === 'keyed';
  const glue = keyed
    ? defaults.take('corners.glue', given.glue, 'none', 'none: a keyed corner stays dry')
    : defaults.take('corners.glue', given.glue, usual.glue);
  const nails =
    given.nails === undefined
      ? keyed
        ? defaults.take('corners.nails', undefined, null, 'none: a keyed corner stays dry')
        : defaults.take(
            'corners.nails',
            undefined,
            { use: usual.nail, each: 1 } as { use: string; each: number },
            `${usual.nail}, one in each corner`,
          )
      : given.nails === 'none'
        ? null
        : {
            use: defaults.take('corners.nails.use', given.nails.use, usual.nail),
            each: defaults.take('corners.nails.each', given.nails.each, 1),
          };
  const brace = given.brace === undefined || given.brace === 'none' ? null : given.brace;
  const kind = brace === null ? 'timber' : defaults.take('corners.brace.kind', brace.kind, 'timber');
  return {
    cut: defaults.take('corners.cut', given.cut, 'mitre'),
    glue: glue === 'none' ? null : glue,
    nails,
    brace:
      brace === null
        ? null
        : {
            kind,
            leg_mm: defaults.length('corners.brace.leg', maybe_mm(brace.leg), usualLeg_mm(shorter_mm, defaults.units)),
            stock:
              kind === 'timber'
                ? defaults.take('corners.brace.stock', brace.stock, plan.bars.stock)
                : (brace.stock ?? null),
            lay: kind === 'timber' ? defaults.take('corners.brace.lay', brace.lay, 'flat') : (brace.lay ?? 'flat'),
            give: fillGive(brace.give),
          },
    give: fillGive(given.give),
  };
}

/** The screws between plies; null where none hold them: bond `none` stands where nothing is built of several plies. */
export function fillPlyScrews(input: PlanInput['ply-screws'], bars: PlanBars, defaults: Defaults): Plan['ply_screws'] {
  const wanted = bars.bond === 'screws' || bars.bond === 'glue+screws';
  if (!wanted || input === 'none') return null;
  if (input?.pilot === undefined)
    defaults.take('ply-screws.pilot', undefined, null, 'chosen from the drills on the shelf');
  return {
    use: defaults.take('ply-screws.use', input?.use, usual.ply_screw),
    every_mm: defaults.length('ply-screws.every', maybe_mm(input?.every), defaults.lengths.ply_screw_every_mm),
    pilot_mm: maybe_mm(input?.pilot) ?? null,
  };
}
