import { pushSpan, tapSpan } from '../../mechanics/cloth/frame-spans.js';
import { clothOf, groundOf } from '../../mechanics/cloth/shelf-numbers.js';
import type { ClothSpan } from '../../fit/span.js';
import { measurePush } from '../../measure/measure-push.js';
import { measureTap, pastePull } from '../../measure/measure-tap.js';
import { apart } from '../../measure/plausible.js';
import type { Reading } from '../../measure/reading.js';
import { spreadFromReadings } from '../../measure/spread.js';
import { buildModel } from '../../model/build-model.js';
import type { Model } from '../../model/model.js';
import { readPlanWith } from '../../plan/read-plan.js';
import { readText } from '../read-text.js';
import type { PushOptions, TapOptions } from '../option-types.js';
import { allOptions, BadOption, neededQuantity, optionalValue, readingsOption } from '../quantities.js';
import { complain } from '../terminal.js';
import { planPaste } from './plan-lines.js';
import { readingText, spreadText } from './report.js';
import { shelfOption } from './shelf-entry.js';

/** `measure tap`: pull of the cloth from its lowest note, and the line for the plan. Throws BadOption, RangeError. */
export function tap(options: TapOptions): string {
  const { notes, error_Hz, model, at, mass } = allOptions({
    notes: () => readingsOption('note', options.note, 'frequency', '14 Hz').map(({ value }) => value),
    error_Hz: () => optionalValue('error', options.error, 'frequency', '0.25 Hz'),
    model: () => modelOf(options),
    at: () => spanGiven(options),
    mass: () =>
      options.plan !== undefined && options.mass === undefined
        ? undefined
        : neededQuantity('mass', options.mass, 'mass-per-area', '480 g/m2').value,
  });
  const { span, inch } = at ?? spanOf(model, tapSpan);
  const mass_g_per_m2 = mass ?? massOf(model, options.bare);
  const doubtful = apart('--note', notes, options.note ?? []);
  return pullText(
    notes.map((note_Hz) =>
      measureTap({ span, mass_g_per_m2, note_Hz, ...(error_Hz === undefined ? {} : { error_Hz }) }),
    ),
    inch || isInchPlan(model),
    doubtful,
  );
}

/**
 * `measure push`: pull of the cloth from how far a weight sinks in, and the line for the plan. Throws BadOption,
 * RangeError.
 */
export function push(options: PushOptions): string {
  const { sags, weight, pad, error_mm, model, at, stiffness } = allOptions({
    sags: () => readingsOption('sag', options.sag, 'length', '7 mm'),
    weight: () => neededQuantity('weight', options.weight, 'mass', '500 g'),
    pad: () => optionalValue('pad', options.pad, 'length', '50 mm'),
    error_mm: () => optionalValue('error', options.error, 'length', '0.5 mm'),
    model: () => modelOf(options),
    at: () => spanGiven(options),
    stiffness: () => optionalValue('stiffness', options.stiffness, 'pull', '50 kN/m'),
  });
  const [weight_g, pad_mm] = [weight.value, pad ?? 50];
  const { span, inch } = at ?? spanOf(model, pushSpan);
  const stiffness_N_per_m = stiffness ?? (model === null ? undefined : clothOf(model).stiffness_N_per_m);
  const doubtful = apart(
    '--sag',
    sags.map(({ value }) => value),
    options.sag ?? [],
  );
  const readings = sags.map(({ value }) =>
    measurePush({
      span,
      weight_g,
      pad_mm,
      sag_mm: value,
      ...(error_mm === undefined ? {} : { error_mm }),
      ...(stiffness_N_per_m === undefined ? {} : { stiffness_N_per_m }),
    }),
  );
  return pullText(readings, inch || isInchPlan(model) || sags.some((one) => one.inch), doubtful);
}

function pullText(readings: readonly Reading[], inch: boolean, doubtful: string | null): string {
  const many = readings.length > 1;
  const together = spreadFromReadings(
    readings.map(({ value }) => value),
    'N/m',
  );
  return [
    ...readings.map((reading, i) => readingText(reading, inch, many ? `Reading ${i + 1}` : '')),
    doubtful === null ? '' : `Note: ${doubtful}\n\n`,
    many
      ? `${spreadText({ ...together, note: 'Readings of one cloth: they differ by how it was read, and by where.' }, 'N/m', inch, 'Pull')}`
      : '',
    planPaste(
      'For the plan, as the working pull; the peak is taken as twice that, put the pull while stretching there if you know it:',
      pastePull(together.mean),
    ),
  ].join('');
}

/**
 * The frame of the plan that was named; null when none was. Throws BadOption after complaining about a plan that cannot
 * be read.
 */
function modelOf({ plan, shelf: shelfFile }: { readonly plan?: string; readonly shelf?: string }): Model | null {
  if (plan === undefined) return null;
  const shelf = shelfOption(shelfFile);
  const read = readText(plan);
  const result =
    'problem' in read ? ({ ok: false, problems: [read.problem] } as const) : readPlanWith(read.text, plan, shelf);
  complain(result.ok ? result.warnings : result.problems);
  if (!result.ok) throw new BadOption('The plan cannot be read.');
  return buildModel(result.value, shelf);
}

interface SpanRead {
  readonly span: ClothSpan;
  readonly inch: boolean;
}

/** The span that the options give; null where it is the plan's. Throws BadOption. */
function spanGiven(options: {
  readonly width?: string;
  readonly height?: string;
  readonly plan?: string;
}): SpanRead | null {
  if (options.plan !== undefined && options.width === undefined && options.height === undefined) return null;
  const { width, height } = allOptions({
    width: () => neededQuantity('width', options.width, 'length', '860 mm'),
    height: () => neededQuantity('height', options.height, 'length', '610 mm'),
  });
  return { span: { width_mm: width.value, height_mm: height.value }, inch: width.inch || height.inch };
}

const named = (model: Model | null): Model => {
  if (model === null) throw new Error('neither a plan nor its numbers were given');
  return model;
};

const spanOf = (model: Model | null, ofModel: (model: Model) => ClothSpan): SpanRead => ({
  span: ofModel(named(model)),
  inch: false,
});

function massOf(of: Model | null, bare: boolean): number {
  const model = named(of);
  const ground = groundOf(model);
  return (
    clothOf(model).mass_g_per_m2 +
    (bare || ground === null ? 0 : model.plan.ground.coats * ground.mass_g_per_m2_per_coat)
  );
}

const isInchPlan = (model: Model | null): boolean => model?.plan.units === 'inch';
