import { capital } from '../../base/capital.js';
import { readQuantity } from '../../base/units.js';
import { doubt } from '../../measure/plausible.js';
import { spreadFromReadings, type SpreadOfReadings } from '../../measure/spread.js';
import type { SpreadOptions } from '../option-types.js';
import { allOptions, BadOption, dayOption, eachReading, needed, optionalValue, quantityOption } from '../quantities.js';
import { spreadText } from './report.js';
import { shelfOption, shelfPaste, sizeIfGiven } from './shelf-entry.js';

/**
 * `measure spread`: mean and spread of twist, bow and crook of several boards, and the shelf entry. Throws BadOption.
 */
export function spread(options: SpreadOptions): string {
  const read = allOptions({
    stock: () => needed('stock', options.stock, 'strip-19x38'),
    date: () => dayOption(options.date),
    over: () => overOption(options.over),
    size: () => sizeIfGiven(options.size),
    twist: () => (options.twist === undefined ? null : several('twist', options.twist, twist_deg_per_m, 'deg/m')),
    bow: () =>
      options.bow === undefined
        ? null
        : several('bow', options.bow, (text) => curvature_per_m('bow', text, options.over), '/m'),
    crook: () =>
      options.crook === undefined
        ? null
        : several('crook', options.crook, (text) => curvature_per_m('crook', text, options.over), '/m'),
  });
  const { stock, date } = read;
  const found: Partial<Record<'twist' | 'bow' | 'crook', SpreadOfReadings>> = {
    ...(read.twist === null ? {} : { twist: read.twist }),
    ...(read.bow === null ? {} : { bow: read.bow }),
    ...(read.crook === null ? {} : { crook: read.crook }),
  };
  const entries = Object.entries(found);
  if (entries.length === 0)
    throw new BadOption('Give the readings of at least two boards, such as --twist "0.4 deg/m" "1.1 deg/m".');
  const inch = [...(options.twist ?? []), ...(options.bow ?? []), ...(options.crook ?? [])].some((text) =>
    /in|ft|["']/.test(text),
  );
  const words = entries.map(([kind, { count }]) => `${kind} of ${count} boards`).join(', ');
  const texts = Object.fromEntries(entries.map(([kind, { paste }]) => [kind, paste as string]));
  return [
    'Spread = how far single boards lie from their mean: the root of the mean square, divided by one less than their count.\n\n',
    ...entries.map(([kind, one]) => spreadText(one, kind === 'twist' ? 'deg/m' : '/m', inch, capital(kind))),
    shelfPaste(
      shelfOption(options.shelf),
      stock,
      options.size,
      { spread: { chosen: options.chosen, ...texts } },
      { date, words },
    ),
  ].join('');
}

const twist_deg_per_m = (text: string): number =>
  (quantityOption('twist', text, 'twist', '0.4 deg/m').value * 180) / Math.PI;

function overOption(text: string | undefined): number | null {
  const over_mm = optionalValue('over', text, 'length', '2400 mm') ?? null;
  if (over_mm !== null && !(over_mm > 0)) throw new BadOption('--over must be above zero.');
  return over_mm;
}

function several(
  kind: string,
  texts: readonly string[],
  read: (text: string) => number,
  unit: string,
): SpreadOfReadings {
  const values = eachReading(texts, read);
  if (values.length < 2)
    throw new BadOption(`--${kind}: one board says nothing about spread; give at least two readings, better twenty.`);
  for (const value of values) doubt(unit === 'deg/m' ? 'twist' : 'bow', value);
  const found = spreadFromReadings(values, unit);
  if (found.paste === null) throw new BadOption(`--${kind}: ${found.note}`);
  return found;
}

/** Curvature from a rise over the length it was read over (8 × rise ÷ length²), or as given. */
function curvature_per_m(kind: string, text: string, over: string | undefined): number {
  const direct = readQuantity(text, 'curvature');
  if (direct.ok) return direct.value;
  const rise_mm = quantityOption(kind, text, 'length', '3 mm').value;
  const over_mm = overOption(over);
  if (over_mm === null)
    throw new BadOption(`--over is missing: the length that --${kind} was read over, such as --over "2400 mm".`);
  return (8000 * rise_mm) / over_mm ** 2;
}
