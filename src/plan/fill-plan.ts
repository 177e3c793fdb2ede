import { formatQuantity } from '../base/units-format.js';
import { readQuantity, readRange } from '../base/units.js';
import { readBoard } from './board-readings.js';
import { Defaults, planDefaults as usual, usualDrop_mm, usualSlack_mm } from './defaults.js';
import { fillBars, fillCorners, fillCrossbar, fillPlyScrews } from './fill-frame.js';
import { maybe_mm, mm, quantity } from './fill-quantities.js';
import { pliesOf } from './plies-of.js';
import type { PlanInput } from './plan-schema.js';
import type { ClothPull, Plan, PlanBoard } from './plan.js';

type Block<K extends keyof PlanInput> = NonNullable<PlanInput[K]>;
type PullInput = NonNullable<Block<'cloth'>['pull']>;
type OnePull = string | { readonly x?: string | undefined; readonly y?: string | undefined };

const pull = (text: string): number => quantity(text, 'pull');
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
    const [x, y] = [value.x_N_per_m, value.y_N_per_m].map((part) => formatQuantity(part, 'N/m', defaults.units));
    return x === y ? `${x}` : `${x} along the width, ${y} along the height`;
  };
  const usualWorking =
    givenPeak === undefined ? both(usual.working_N_per_m) : scaled(givenPeak, 1 / usual.peak_over_working);
  const working = defaults.take('cloth.pull.working', givenWorking, usualWorking, words(usualWorking));
  const twice = scaled(working, usual.peak_over_working);
  const peak = defaults.take('cloth.pull.peak', givenPeak, twice, `${words(twice)}, twice the working pull`);
  return { working, peak };
}

function fillBoard(board: Block<'boards'>[number], index: number, plies: number, defaults: Defaults): PlanBoard {
  return {
    for: board.for,
    ply: plies === 1 ? (board.ply ?? 1) : defaults.take(`boards[${index}].ply`, board.ply, 1, 'ply 1'),
    ...readBoard(board),
    ...(board.board === undefined
      ? {}
      : { on: { mark: board.board, from_mm: board.from === undefined ? 0 : mm(board.from) } }),
  };
}

function fillCloth(cloth: Block<'cloth'>, defaults: Defaults): Plan['cloth'] {
  const pulls = fillPulls(cloth.pull, defaults);
  if (cloth.roll === undefined) defaults.take('cloth.roll', undefined, null, 'the width of the shelf’s roll');
  const { to, every, turn } = cloth.fixing ?? {};
  return {
    use: defaults.take('cloth.use', cloth.use, usual.cloth),
    ...pulls,
    fixing: {
      to: defaults.take('cloth.fixing.to', to, 'back', 'the back'),
      every_mm: defaults.length('cloth.fixing.every', maybe_mm(every), defaults.lengths.staple_every_mm),
      turn_mm: defaults.length('cloth.fixing.turn', maybe_mm(turn), defaults.lengths.turn_mm),
    },
    roll_mm: maybe_mm(cloth.roll) ?? null,
  };
}

const fillLumber = (lumber: Block<'lumber'>, defaults: Defaults): Plan['lumber'] => ({
  chosen: defaults.take('lumber.chosen', lumber.chosen, 'plain'),
  moisture_pct: defaults.take(
    'lumber.moisture',
    lumber.moisture === undefined ? undefined : quantity(lumber.moisture, 'percent'),
    usual.moisture_pct,
    `${usual.moisture_pct} %`,
  ),
  knots: defaults.take('lumber.knots', lumber.knots, 'few'),
  rough_faces: defaults.take('lumber.rough-faces', lumber['rough-faces'], 'inward'),
});

function fillRoom(room: Block<'room'>, defaults: Defaults): Plan['room'] {
  const humidity = room.humidity === undefined ? undefined : readRange(room.humidity, 'fraction');
  return {
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
      formatQuantity(usual.temperature_C, 'C', defaults.units),
    ),
  };
}

/** A cleat, or nothing to hang by, needs no default of what a wire or hooks need. */
function fillHanging(hang: Block<'hang'>, face: Plan['face'], defaults: Defaults): Plan['hang'] {
  const { units } = defaults;
  const by = defaults.take('hang.by', hang.by, 'wire');
  const without = by === 'none' || by === 'cleat';
  const drop_mm = without
    ? (maybe_mm(hang.drop) ?? 0)
    : defaults.length('hang.drop', maybe_mm(hang.drop), usualDrop_mm(face.height_mm, face.width_mm, units));
  return {
    by,
    drop_mm,
    from:
      by === 'd-rings'
        ? 'back'
        : without
          ? (hang.from ?? 'inside')
          : defaults.take('hang.from', hang.from, 'inside', 'the inside of the bars'),
    hooks: without ? (hang.hooks ?? 0) : defaults.take('hang.hooks', hang.hooks, usual.hooks, 'two hooks'),
    slack_mm:
      by !== 'wire'
        ? (maybe_mm(hang.slack) ?? 0)
        : defaults.length('hang.slack', maybe_mm(hang.slack), usualSlack_mm(drop_mm, face.width_mm, units)),
  };
}

/**
 * The complete plan of a checked input, every default filled in and listed in the order in which a plan names its
 * parts. Pure; cross-field checks come after.
 */
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
  const cloth = fillCloth(input.cloth ?? {}, defaults);
  const ground = { coats: defaults.take('ground.coats', input.ground?.coats, usual.coats, 'two coats') };
  const lumber = fillLumber(input.lumber ?? {}, defaults);
  const boards = (input.boards ?? []).map((board, index) =>
    fillBoard(board, index, pliesOf({ bars, crossbars }, board.for) ?? 1, defaults),
  );
  const room = fillRoom(input.room ?? {}, defaults);
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
    cloth,
    ground,
    lumber,
    boards,
    room,
    hang: fillHanging(input.hang ?? {}, face, defaults),
    spend_limit: input.spend?.limit ?? null,
    door: input.door === undefined ? null : { width_mm: mm(input.door.width), height_mm: mm(input.door.height) },
    assumed: defaults.assumed,
  };
}
