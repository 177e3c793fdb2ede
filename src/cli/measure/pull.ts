import { pushSpan, tapSpan } from '../../mechanics/cloth/frame-spans.js';
import { clothOf, groundOf } from '../../mechanics/cloth/shelf-numbers.js';
import type { ClothSpan } from '../../fit/span.js';
import { measurePush } from '../../mechanics/measure/measure-push.js';
import { measureTap, pastePull } from '../../mechanics/measure/measure-tap.js';
import { apart } from '../../mechanics/measure/plausible.js';
import type { Reading } from '../../mechanics/measure/reading.js';
import { spreadFromReadings } from '../../mechanics/measure/spread.js';
import { buildModel } from '../../model/build-model.js';
import type { Model } from '../../model/model.js';
import { readPlanWith } from '../../plan/read-plan.js';
import { readText } from '../read-text.js';
import type { PushOptions, TapOptions } from '../option-types.js';
import { BadOption, needed, quantityOption, type Given } from '../quantities.js';
import { complain } from '../terminal.js';
import { planPaste } from './plan-lines.js';
import { readingText, spreadText } from './report.js';
import { shelfOption } from './shelf-entry.js';

/** `measure tap`: pull of the cloth from its lowest note, and the line for the plan. Throws BadOption, RangeError. */
export function tap(options: TapOptions): string {
  const notes = needed('note', options.note, '14 Hz').map((text) => quantityOption('note', text, 'frequency', '14 Hz').value);
  const error_Hz = options.error === undefined ? undefined : quantityOption('error', options.error, 'frequency', '0.25 Hz').value;
  const model = modelOf(options);
  const { span, inch } = spanOf(options, model, tapSpan);
  const mass_g_per_m2 = model === null || options.mass !== undefined ? quantityOption('mass', needed('mass', options.mass, '480 g/m2'), 'mass-per-area', '480 g/m2').value : massOf(model, options.bare);
  const doubtful = apart('--note', notes, options.note ?? []);
  return pullText(notes.map((note_Hz) => measureTap({ span, mass_g_per_m2, note_Hz, ...(error_Hz === undefined ? {} : { error_Hz }) })), inch || isInchPlan(model), doubtful);
}

/** `measure push`: pull of the cloth from how far a weight sinks in, and the line for the plan. Throws BadOption, RangeError. */
export function push(options: PushOptions): string {
  const sags = needed('sag', options.sag, '7 mm').map((text) => quantityOption('sag', text, 'length', '7 mm'));
  const weight_g = quantityOption('weight', needed('weight', options.weight, '500 g'), 'mass', '500 g').value;
  const pad_mm = options.pad === undefined ? 50 : quantityOption('pad', options.pad, 'length', '50 mm').value;
  const error_mm = options.error === undefined ? undefined : quantityOption('error', options.error, 'length', '0.5 mm').value;
  const model = modelOf(options);
  const { span, inch } = spanOf(options, model, pushSpan);
  const stiffness_N_per_m = options.stiffness !== undefined ? quantityOption('stiffness', options.stiffness, 'pull', '50 kN/m').value : model === null ? undefined : clothOf(model).stiffness_N_per_m;
  const doubtful = apart('--sag', sags.map(({ value }) => value), options.sag ?? []);
  const readings = sags.map(({ value }) => measurePush({ span, weight_g, pad_mm, sag_mm: value, ...(error_mm === undefined ? {} : { error_mm }), ...(stiffness_N_per_m === undefined ? {} : { stiffness_N_per_m }) }));
  return pullText(readings, inch || isInchPlan(model) || sags.some((one) => one.inch), doubtful);
}

function pullText(readings: readonly Reading[], inch: boolean, doubtful: string | null): string {
  const many = readings.length > 1;
  const together = spreadFromReadings(readings.map(({ value }) => value), 'N/m');
  return [
    ...readings.map((reading, i) => readingText(reading, inch, many ? `Reading ${i + 1}` : '')),
    doubtful === null ? '' : `Note: ${doubtful}\n\n`,
    many ? `${spreadText({ ...together, note: 'Readings of one cloth: they differ by how it was read, and by where.' }, 'N/m', inch, 'Pull')}` : '',
    planPaste('For the plan, as the working pull; the peak is taken as twice that, put the pull while stretching there if you know it:', pastePull(together.mean)),
  ].join('');
}

/** The frame of the plan that was named; null when none was. Throws BadOption after complaining about a plan that cannot be read. */
function modelOf({ plan, shelf: shelfFile }: { readonly plan?: string; readonly shelf?: string }): Model | null {
  if (plan === undefined) return null;
  const shelf = shelfOption(shelfFile);
  const read = readText(plan);
  const result = 'problem' in read ? ({ ok: false, problems: [read.problem] } as const) : readPlanWith(read.text, plan, shelf);
  complain(result.ok ? result.warnings : result.problems);
  if (!result.ok) throw new BadOption('The plan cannot be read.');
  return buildModel(result.value, shelf);
}

function spanOf(options: { readonly width?: string; readonly height?: string }, model: Model | null, ofModel: (model: Model) => ClothSpan): { readonly span: ClothSpan; readonly inch: boolean } {
  if (model !== null && options.width === undefined && options.height === undefined) return { span: ofModel(model), inch: false };
  const side = (name: 'width' | 'height', example: string): Given => quantityOption(name, needed(name, options[name], example), 'length', example);
  const [width, height] = [side('width', '860 mm'), side('height', '610 mm')];
  return { span: { width_mm: width.value, height_mm: height.value }, inch: width.inch || height.inch };
}

function massOf(model: Model, bare: boolean): number {
  const ground = groundOf(model);
  return clothOf(model).mass_g_per_m2 + (bare || ground === null ? 0 : model.plan.ground.coats * ground.mass_g_per_m2_per_coat);
}

const isInchPlan = (model: Model | null): boolean => model?.plan.units === 'inch';
