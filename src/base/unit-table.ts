import type { UnitSystem } from './names.js';
import { rational, times, type Rational } from './rational.js';

/** What kind of quantity a text is read as. */
export type Dimension =
  | 'length'
  | 'pull'
  | 'stress'
  | 'density'
  | 'mass-per-area'
  | 'volume-per-area'
  | 'twist'
  | 'curvature'
  | 'percent'
  | 'temperature'
  | 'force'
  | 'moment'
  | 'mass'
  | 'time'
  | 'volume'
  | 'frequency'
  | 'angle'
  | 'diffusion'
  | 'fraction';

/** One way of writing a unit: value in the dimension's own unit = factor × number + offset. */
export interface Unit {
  readonly factor: Rational;
  readonly offset?: Rational;
  readonly system?: UnitSystem;
  /** An irrational factor on top (degrees to radians). */
  readonly also?: number;
}

const r = rational;
const inch = r(254, 10);
const pound_force_N = r(44482216152605n, 10n ** 13n);
const pound_kg = r(45359237n, 10n ** 8n);
const radians = Math.PI / 180;
const of = (factor: Rational, system?: UnitSystem, also?: number): Unit => ({
  factor,
  ...(system ? { system } : {}),
  ...(also === undefined ? {} : { also }),
});
const metric = (n: number | bigint, d: number | bigint = 1): Unit => of(r(n, d), 'metric');
const psi_MPa = times(pound_force_N, r(100, 254 * 254));

/** Every unit understood, by dimension; values come out in the first unit of each line. */
export const units: Readonly<Record<Dimension, Readonly<Record<string, Unit>>>> = {
  length: {
    mm: metric(1),
    cm: metric(10),
    m: metric(1000),
    in: of(inch, 'inch'),
    '"': of(inch, 'inch'),
    inch: of(inch, 'inch'),
    inches: of(inch, 'inch'),
    ft: of(times(inch, r(12)), 'inch'),
    "'": of(times(inch, r(12)), 'inch'),
    foot: of(times(inch, r(12)), 'inch'),
    feet: of(times(inch, r(12)), 'inch'),
  },
  pull: {
    'N/m': metric(1),
    'N/cm': metric(100),
    'N/mm': metric(1000),
    'kN/m': metric(1000),
    'lbf/in': of(times(pound_force_N, r(10000, 254)), 'inch'),
    'lb/in': of(times(pound_force_N, r(10000, 254)), 'inch'),
    'lbf/ft': of(times(pound_force_N, r(10000, 254 * 12)), 'inch'),
  },
  stress: {
    MPa: metric(1),
    GPa: metric(1000),
    kPa: metric(1, 1000),
    'N/mm2': metric(1),
    'N/mm²': metric(1),
    psi: of(psi_MPa, 'inch'),
    ksi: of(times(psi_MPa, r(1000)), 'inch'),
    Mpsi: of(times(psi_MPa, r(10n ** 6n)), 'inch'),
  },
  density: {
    'kg/m3': metric(1),
    'kg/m³': metric(1),
    'g/cm3': metric(1000),
    'g/cm³': metric(1000),
    'g/ml': metric(1000),
    'lb/ft3': of(times(pound_kg, r(10n ** 12n, 3048n ** 3n)), 'inch'),
    pcf: of(times(pound_kg, r(10n ** 12n, 3048n ** 3n)), 'inch'),
  },
  'mass-per-area': {
    'g/m2': metric(1),
    'g/m²': metric(1),
    gsm: metric(1),
    'kg/m2': metric(1000),
    'kg/m²': metric(1000),
    'oz/yd2': of(times(pound_kg, r(1000n * 10n ** 8n, 16n * 9144n ** 2n)), 'inch'),
    'oz/yd²': of(times(pound_kg, r(1000n * 10n ** 8n, 16n * 9144n ** 2n)), 'inch'),
  },
  'volume-per-area': { 'ml/m2': metric(1), 'ml/m²': metric(1) },
  twist: {
    'rad/m': metric(1),
    'mrad/m': metric(1, 1000),
    'deg/m': of(r(1), 'metric', radians),
    '°/m': of(r(1), 'metric', radians),
    'deg/ft': of(r(10000, 3048), 'inch', radians),
  },
  curvature: {
    '/m': metric(1),
    '1/m': metric(1),
    '/mm': metric(1000),
    '1/mm': metric(1000),
    '/ft': of(r(10000, 3048), 'inch'),
    '1/ft': of(r(10000, 3048), 'inch'),
  },
  percent: { '%': of(r(1)), pct: of(r(1)), percent: of(r(1)) },
  temperature: {
    C: metric(1),
    '°C': metric(1),
    F: { factor: r(5, 9), offset: r(-160, 9), system: 'inch' },
    '°F': { factor: r(5, 9), offset: r(-160, 9), system: 'inch' },
  },
  force: { N: metric(1), kN: metric(1000), lbf: of(pound_force_N, 'inch'), lb: of(pound_force_N, 'inch') },
  moment: {
    Nm: metric(1),
    'N·m': metric(1),
    'N m': metric(1),
    'lbf·in': of(times(pound_force_N, r(254, 10000)), 'inch'),
    'lbf in': of(times(pound_force_N, r(254, 10000)), 'inch'),
  },
  mass: {
    g: metric(1),
    kg: metric(1000),
    lb: of(times(pound_kg, r(1000)), 'inch'),
    oz: of(times(pound_kg, r(1000, 16)), 'inch'),
  },
  time: {
    h: of(r(1)),
    hours: of(r(1)),
    hour: of(r(1)),
    min: of(r(1, 60)),
    minutes: of(r(1, 60)),
    day: of(r(24)),
    days: of(r(24)),
  },
  volume: { ml: metric(1), cl: metric(10), l: metric(1000) },
  frequency: { Hz: of(r(1)) },
  angle: {
    deg: of(r(1)),
    '°': of(r(1)),
    rad: of(r(1), undefined, 1 / radians),
    mrad: of(r(1, 1000), undefined, 1 / radians),
  },
  diffusion: { 'm2/s': metric(1) },
  fraction: { '': of(r(1)), '%': of(r(1, 100)) },
};
