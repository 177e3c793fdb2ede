import { evenGive, type JointGive } from '../base/joint-give.js';
import { formatQuantity } from '../base/units-format.js';
import { readQuantity, readRange } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';
import { readBoard } from './board-readings.js';
import { Defaults, planDefaults as usual, usualDrop_mm, usualLeg_mm, usualSlack_mm } from './defaults.js';
import { pliesOf } from './plies-of.js';
import { planInputSchema, type PlanInput } from './plan-schema.js';
import type { Assumed, ClothPull, Plan, PlanBars, PlanBoard, PlanCorners, PlanCrossbar } from './plan.js';

/** The value of a quantity the schema has already accepted. */
function quantity(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

const mm = (text: string): number => quantity(text, 'length');
const maybe_mm = (text: string | undefined): number | undefined => (text === undefined ? undefined : mm(text));
const pull = (text: string): number => quantity(text, 'pull');

function fillBars({ bars, crossbars }: PlanInput, defaults: Defaults): PlanBars {
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

function fillCrossbar(
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

function fillCorners(
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

type PullInput = NonNullable<NonNullable<PlanInput['cloth']>['pull']>;
type OnePull = string | { readonly x?: string | undefined; readonly y?: string | undefined };

const both = (N_per_m: number): ClothPull => ({ x_N_per_m: N_per_m, y_N_per_m: N_per_m });
const scaled = (given: ClothPull, factor: number): ClothPull => ({
  x_N_per_m: given.x_N_per_m * factor,
  y_N_per_m: given.y_N_per_m * factor,
});

/**
 * One number stands for both ways; where only one of x and y is given (a problem reported elsewhere) it stands for
 * both.
 */
function onePull(input: OnePull | undefined): ClothPull | undefined {
  if (input === undefined) return undefined;
  if (typeof input === 'string') return both(pull(input));
  const [x, y] = [input.x ?? input.y, input.y ?? input.x];
  return x === undefined || y === undefined ? undefined : { x_N_per_m: pull(x), y_N_per_m: pull(y) };
}

function fillPulls(
  input: PullInput | undefined,
  plan: Pick<Plan, 'units'>,
  defaults: Defaults,
): { readonly working: ClothPull; readonly peak: ClothPull } {
  const block =
    input === undefined
      ? {}
      : typeof input === 'string'
        ? { working: input }
        : input.x !== undefined || input.y !== undefined
          ? { ...input, working: { x: input.x, y: input.y } }
          : input;
  const givenWorking = onePull(block.working);
  const givenPeak = onePull(block.peak);
  const words = (value: ClothPull): string => {
    const [x, y] = [value.x_N_per_m, value.y_N_per_m].map((part) => formatQuantity(part, 'N/m', plan.units));
    return x === y ? `${x}` : `${x} along the width, ${y} along the height`;
  };
  const usualWorking =
    givenPeak === undefined ? both(usual.working_N_per_m) : scaled(givenPeak, 1 / usual.peak_over_working);
  const working = defaults.take('cloth.pull.working', givenWorking, usualWorking, words(usualWorking));
  const twice = scaled(working, usual.peak_over_working);
  const peak = defaults.take('cloth.pull.peak', givenPeak, twice, `${words(twice)}, twice the working pull`);
  return { working, peak };
}

function fillBoard(
  board: NonNullable<PlanInput['boards']>[number],
  index: number,
  plies: number,
  defaults: Defaults,
): PlanBoard {
  return {
    for: board.for,
    ply: plies === 1 ? (board.ply ?? 1) : defaults.take(`boards[${index}].ply`, board.ply, 1, 'ply 1'),
    ...readBoard(board),
    ...(board.board === undefined
      ? {}
      : { on: { mark: board.board, from_mm: board.from === undefined ? 0 : mm(board.from) } }),
  };
}

/** Bond `none` stands where nothing is built of several plies. */
function fillPlyScrews(input: PlanInput['ply-screws'], bars: PlanBars, defaults: Defaults): Plan['ply_screws'] {
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

const blocks = Object.keys(planInputSchema.shape);

/** Defaults in the order in which a plan names its parts. */
const inFileOrder = (assumed: readonly Assumed[]): readonly Assumed[] => {
  const rank = ({ path }: Assumed): number => blocks.indexOf(path.split(/[.[]/)[0] ?? '');
  return [...assumed].sort((a, b) => rank(a) - rank(b));
};

/** The complete plan of a checked input, every default filled in and listed. Pure; cross-field checks come after. */
export function fillPlan(input: PlanInput): Plan {
  const reading = readQuantity(input.face.width, 'length');
  const units = reading.ok && reading.system !== null ? reading.system : 'metric';
  const defaults = new Defaults(units);
  const face = { width_mm: mm(input.face.width), height_mm: mm(input.face.height) };
  const count = defaults.take('count', input.count, 1, 'one frame');
  const bars = fillBars(input, defaults);
  if (input.crossbars === undefined) defaults.take('crossbars', undefined, null, 'none');
  const crossbars = (input.crossbars ?? []).map((crossbar, index) =>
    fillCrossbar(crossbar, index, input, crossbar.runs === 'upright' ? face.width_mm : face.height_mm, defaults),
  );
  const corners = fillCorners(input.corners, input, Math.min(face.width_mm, face.height_mm), defaults);
  const ply_screws = fillPlyScrews(input['ply-screws'], bars, defaults);
  const { cloth = {}, lumber = {}, room = {}, hang = {} } = input;
  const fixing = cloth.fixing ?? {};
  const pulls = fillPulls(cloth.pull, { units }, defaults);
  const humidity = room.humidity === undefined ? undefined : readRange(room.humidity, 'fraction');
  if (cloth.roll === undefined) defaults.take('cloth.roll', undefined, null, 'the width of the shelf’s roll');
  const by = defaults.take('hang.by', hang.by, 'wire');
  const drop_mm =
    by === 'none' || by === 'cleat'
      ? (maybe_mm(hang.drop) ?? 0)
      : defaults.length('hang.drop', maybe_mm(hang.drop), usualDrop_mm(face.height_mm, face.width_mm, units));
  return {
    name: input.name.trim(),
    student: (input.student ?? input.maker)?.trim() ?? null,
    count,
    units,
    face,
    bars,
    crossbars,
    corners,
    ply_screws,
    cloth: {
      use: defaults.take('cloth.use', cloth.use, usual.cloth),
      ...pulls,
      fixing: {
        to: defaults.take('cloth.fixing.to', fixing.to, 'back', 'the back'),
        every_mm: defaults.length('cloth.fixing.every', maybe_mm(fixing.every), defaults.lengths.staple_every_mm),
        turn_mm: defaults.length('cloth.fixing.turn', maybe_mm(fixing.turn), defaults.lengths.turn_mm),
      },
      roll_mm: maybe_mm(cloth.roll) ?? null,
    },
    ground: { coats: defaults.take('ground.coats', input.ground?.coats, usual.coats, 'two coats') },
    lumber: {
      chosen: defaults.take('lumber.chosen', lumber.chosen, 'plain'),
      moisture_pct: defaults.take(
        'lumber.moisture',
        lumber.moisture === undefined ? undefined : quantity(lumber.moisture, 'percent'),
        usual.moisture_pct,
        `${usual.moisture_pct} %`,
      ),
      knots: defaults.take('lumber.knots', lumber.knots, 'few'),
      rough_faces: defaults.take('lumber.rough-faces', lumber['rough-faces'], 'inward'),
    },
    boards: (input.boards ?? []).map((board, index) =>
      fillBoard(board, index, pliesOf({ bars, crossbars }, board.for) ?? 1, defaults),
    ),
    room: {
      ...defaults.take(
        'room.humidity',
        humidity ? { humidity_low: humidity.low, humidity_high: humidity.high } : undefined,
        { humidity_low: usual.humidity_low as number, humidity_high: usual.humidity_high as number },
        '35 to 60 %',
      ),
      temperature_C: defaults.take(
        'room.temperature',
        room.temperature === undefined ? undefined : quantity(room.temperature, 'temperature'),
        usual.temperature_C,
        formatQuantity(usual.temperature_C, 'C', units),
      ),
    },
    hang: {
      by,
      drop_mm,
      from:
        by === 'd-rings'
          ? 'back'
          : by === 'none' || by === 'cleat'
            ? (hang.from ?? 'inside')
            : defaults.take('hang.from', hang.from, 'inside', 'the inside of the bars'),
      hooks:
        by === 'none' || by === 'cleat'
          ? (hang.hooks ?? 0)
          : defaults.take('hang.hooks', hang.hooks, usual.hooks, 'two hooks'),
      slack_mm:
        by !== 'wire'
          ? (maybe_mm(hang.slack) ?? 0)
          : defaults.length('hang.slack', maybe_mm(hang.slack), usualSlack_mm(drop_mm, mm(input.face.width), units)),
    },
    spend_limit: input.spend?.limit ?? null,
    door: input.door === undefined ? null : { width_mm: mm(input.door.width), height_mm: mm(input.door.height) },
    assumed: inFileOrder(defaults.assumed),
  };
}
