import { measureSag } from '../../measure/measure-sag.js';
import { apart } from '../../measure/plausible.js';
import { digits } from '../../measure/reading.js';
import { spreadFromReadings } from '../../measure/spread.js';
import type { Shelf } from '../../shelf/shelf.js';
import type { SagOptions } from '../option-types.js';
import { allOptions, dayOption, needed, neededQuantity, optionalValue, readingsOption } from '../quantities.js';
import { readingText, spreadText } from './report.js';
import { shelfOption, shelfPaste, sizeIfNamed, sizeOf } from './shelf-entry.js';

/** `measure sag`: stiffness of one board or several, and the shelf entry. Throws BadOption, RangeError. */
export function sag(options: SagOptions): string {
  const { stock, span, weight, sags, error, date, shelf } = allOptions({
    stock: () => needed('stock', options.stock, 'strip-19x38'),
    span: () => neededQuantity('span', options.span, 'length', '1500 mm'),
    weight: () => neededQuantity('weight', options.weight, 'mass', '5 kg'),
    sags: () => readingsOption('sag', options.sag, 'length', '17 mm'),
    error: () => optionalValue('error', options.error, 'length', '0.25 mm'),
    date: () => dayOption(options.date),
    shelf: () => shelfOption(options.shelf),
    size: () => sizeIfNamed(options),
  });
  const { thickness_mm, width_mm } = sizeOf(shelf, stock, options.size);
  const [across, tall] = options.lies === 'flat' ? [width_mm, thickness_mm] : [thickness_mm, width_mm];
  const doubtful = apart(
    '--sag',
    sags.map(({ value }) => value),
    options.sag ?? [],
  );
  const readings = sags.map(({ value }) =>
    measureSag({
      stock,
      span_mm: span.value,
      width_mm: across,
      height_mm: tall,
      weight_g: weight.value,
      sag_mm: value,
      ...(error === undefined ? {} : { errors: { sag_mm: error } }),
    }),
  );
  const inch = span.inch || sags.some((one) => one.inch);
  const many = readings.length > 1;
  const together = spreadFromReadings(
    readings.map(({ value }) => value),
    'MPa',
  );
  return [
    ...readings.map((reading, i) => readingText(reading, inch, many ? `Board ${i + 1}` : '')),
    doubtful === null ? '' : `Note: ${doubtful}\n\n`,
    many ? spreadText(together, 'MPa', inch, `Stiffness of ${stock}`) : '',
    shearText(shelf, stock, together.mean),
    shelfPaste(
      shelf,
      stock,
      options.size,
      { E_MPa: Number(digits(together.mean, 3)) },
      {
        date,
        words: many
          ? `mean of ${together.count} boards, ${together.sd === null ? 'all alike' : `standard deviation ${digits(together.sd)} MPa`}`
          : 'one board',
      },
    ),
  ].join('');
}

/** Where the stiffness in shear comes from: a sag tells of bending alone. */
function shearText(shelf: Shelf, stock: string, E_MPa: number): string {
  const known = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
  const own = known !== undefined && !known.assumed.includes('G');
  const why = 'a sag tells of bending, hardly of shear';
  return own
    ? `Shear: G stays ${digits(known.G_MPa)} MPa, as the shelf has it for ${stock}: ${why}.\n\n`
    : `Shear: G is taken as E ÷ ${digits(shelf.lumber_defaults.E_over_G)}, ${digits(E_MPa / shelf.lumber_defaults.E_over_G)} MPa, because the shelf has none for ${stock}: ${why}.\n\n`;
}
