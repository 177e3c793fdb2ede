import type { Choosing } from '../base/names.js';
import type { Lumber, Shelf } from './shelf.js';

/** What was measured of one kind of board. */
export interface Measured {
  /** Stiffness along the grain, MPa. */
  readonly E_MPa?: number;
  /** How these boards vary, for one way of choosing them: texts such as `{ mean: 0.4 deg/m, sd: 0.5 deg/m }`. */
  readonly spread?: {
    readonly chosen: Choosing;
    readonly twist?: string;
    readonly bow?: string;
    readonly crook?: string;
  };
}

/** Where measured numbers come from, for the remark beside them. */
export interface MeasuredBy {
  /** How many boards, and the like. */
  readonly words: string;
  /** As the user gave it, `2024-05-02`; null when not given. */
  readonly date: string | null;
}

const kinds = ['twist', 'bow', 'crook'] as const;
const ways = ['unsorted', 'plain', 'picked'] as const;
const spreadField = { twist: 'twist_rad_per_m', bow: 'bow_per_m', crook: 'crook_per_m' } as const;

/**
 * A shelf file, ready to be saved, with one whole lumber entry: what was measured, with source `measured`, and beside
 * it what the shelf already says of
 * that key with its own sources. A key that is not on the shelf needs `size`, such as `19 x 38 mm`.
 */
export function measuredShelf(
  shelf: Shelf,
  key: string,
  size: string | null,
  measured: Measured,
  by: MeasuredBy,
): string {
  const known = Object.hasOwn(shelf.lumber, key) ? shelf.lumber[key] : undefined;
  const remark = ` # measured${by.date === null ? '' : ` ${by.date}`}, ${by.words}`;
  const source = (field: string): string => shelf.sources[`lumber.${key}.${field}`] ?? known?.source ?? 'measured';
  const lines: string[] = [];
  const sources: Record<string, string> = {};
  const say = (field: string, text: string, isMeasured = false): void => {
    lines.push(`    ${field}: ${text}${isMeasured ? remark : ''}`);
    sources[field] = isMeasured ? 'measured' : source(field);
  };
  if (known?.nominal != null) lines.push(`    nominal: ${JSON.stringify(known.nominal)}`);
  if (size !== null || known === undefined) {
    lines.push(`    size: ${size ?? ''}`);
    sources['size'] = 'measured';
  } else {
    say('size', `${plain(known.thickness_mm)} x ${plain(known.width_mm)} mm`);
    if (known.inches != null)
      lines.push(`    inches: ${plain(known.inches.thickness_mm / 25.4)} x ${plain(known.inches.width_mm / 25.4)} in`);
  }
  if (measured.E_MPa !== undefined) say('E', `${plain(measured.E_MPa)} MPa`, true);
  else if (given(known, 'E')) say('E', `${plain(known.E_MPa)} MPa`);
  if (given(known, 'G')) say('G', `${plain(known.G_MPa)} MPa`);
  if (given(known, 'density')) say('density', `${plain(known.density_kg_per_m3)} kg/m3`);
  if (given(known, 'species')) say('species', known.species.key);
  if (known?.lengths != null) {
    say(
      'lengths',
      `[ ${known.lengths.map(({ length_mm, inches_mm, price, available }) => `{ length: ${plain(length_mm)} mm, ${inches_mm == null ? '' : `inches: ${plain(inches_mm / 25.4)} in, `}price: ${plain(price)}${available === null ? '' : `, available: ${available}`} }`).join(', ')} ]`,
    );
    sources['price'] = source('price');
  }
  const spreads = spreadLines(known, measured.spread, remark);
  if (spreads.length > 0) {
    lines.push('    spread:', ...spreads);
    sources['spread'] = measured.spread === undefined ? source('spread') : 'measured';
  }
  return `shelf: 1\nlumber:\n  ${key}:\n${lines.join('\n')}\n    source: measured\n    sources: { ${Object.entries(
    sources,
  )
    .map(([field, from]) => `${field}: ${from}`)
    .join(', ')} }\n`;
}

function given(known: Lumber | undefined, field: string): known is Lumber {
  return known !== undefined && !known.assumed.includes(field);
}

function spreadLines(known: Lumber | undefined, measured: Measured['spread'], remark: string): string[] {
  return ways.flatMap((way) => {
    const parts = kinds.flatMap((kind) => {
      const own = way === measured?.chosen ? measured[kind] : undefined;
      if (own !== undefined) return [`${kind}: ${own}`];
      if (!given(known, `spread.${way}.${kind}`)) return [];
      const { mean, sd } = known.spread[way][spreadField[kind]];
      return [
        `${kind}: { mean: ${plain(mean)} ${kind === 'twist' ? 'rad/m' : '/m'}, sd: ${plain(sd)} ${kind === 'twist' ? 'rad/m' : '/m'} }`,
      ];
    });
    return parts.length === 0 ? [] : [`      ${way}: { ${parts.join(', ')} }${way === measured?.chosen ? remark : ''}`];
  });
}

/** A number written out, at most eight significant digits, never in powers of ten. */
function plain(value: number): string {
  const text = Number(value.toPrecision(8)).toString();
  return /e/i.test(text) ? value.toFixed(12).replace(/0+$/, '').replace(/\.$/, '') : text;
}
