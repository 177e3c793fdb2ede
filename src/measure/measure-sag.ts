import { GRAVITY_N_PER_KG } from '../base/gravity.js';
import { mustBePositive } from '../fit/span.js';
import { doubt } from './plausible.js';
import { combinedError, digits, type Reading } from './reading.js';

/**
 * A board on two blocks with a weight in the middle; the sag is the difference of two readings, with and without the
 * weight.
 */
export interface SagReading {
  /** Shelf key the result belongs to. */
  readonly stock: string;
  readonly span_mm: number;
  /** Size of the board as it lies: across, and from top to bottom. */
  readonly width_mm: number;
  readonly height_mm: number;
  readonly weight_g: number;
  readonly sag_mm: number;
  /** Reading errors, ±; taken from a tape and a ruler when not given. */
  readonly errors?: {
    readonly span_mm?: number;
    readonly width_mm?: number;
    readonly height_mm?: number;
    readonly weight_g?: number;
    readonly sag_mm?: number;
  };
}

/**
 * Stiffness in bending over stiffness in shear, and the share of a rectangle that carries shear. Proposal of the
 * project for softwood; plane rectangle.
 */
const E_over_G = 16;
const shearShare = 5 / 6;

const ordinaryErrors = { span_mm: 2, width_mm: 0.3, height_mm: 0.3, weight_g: 10, sag_mm: 0.25 } as const;

type Numbers = Pick<SagReading, 'span_mm' | 'width_mm' | 'height_mm' | 'weight_g'>;

/** Sag times stiffness, N/mm: what the sag would be for a stiffness of 1 MPa, shear included. */
function sagTimesE(n: Numbers): number {
  const P = (n.weight_g / 1000) * GRAVITY_N_PER_KG;
  const I = (n.width_mm * n.height_mm ** 3) / 12;
  return (P * n.span_mm ** 3) / (48 * I) + (P * n.span_mm * E_over_G) / (4 * shearShare * n.width_mm * n.height_mm);
}

/**
 * Stiffness E of a board from its sag on two blocks, MPa, as a band. Source: wood-handbook-memory, eq. 9-2. Throws
 * RangeError for a number not above zero.
 */
export function measureSag(reading: SagReading): Reading {
  const { span_mm, width_mm, height_mm, weight_g, sag_mm } = reading;
  mustBePositive({ span: span_mm, width: width_mm, height: height_mm, weight: weight_g, sag: sag_mm });
  const error = { ...ordinaryErrors, ...reading.errors };
  const inputs = { span_mm, width_mm, height_mm, weight_g };
  const E = sagTimesE(inputs) / sag_mm;
  const moved = (['span_mm', 'width_mm', 'height_mm', 'weight_g'] as const).map(
    (key) => sagTimesE({ ...inputs, [key]: inputs[key] + error[key] }) / sag_mm,
  );
  const others = combinedError(E, moved);
  // the sag stands below the fraction line, so its error is not even on both sides
  const low = E - Math.hypot(others, E - (E * sag_mm) / (sag_mm + error.sag_mm));
  const high = sag_mm > error.sag_mm ? E + Math.hypot(others, (E * sag_mm) / (sag_mm - error.sag_mm) - E) : Infinity;
  const doubtful = doubt('stiffness', E);
  const shear = 1 - (sagTimesE(inputs) - shearPart(inputs)) / sagTimesE(inputs);
  return {
    words: `Stiffness = weight × span³ ÷ (48 × width × height³ ÷ 12 × sag), plus ${digits(100 * shear, 2)} % for shear: ${digits(weight_g)} g over ${digits(span_mm, 4)} mm sank ${digits(sag_mm)} mm on a board ${digits(width_mm)} mm wide and ${digits(height_mm)} mm high.`,
    value: E,
    low: Math.max(low, 0),
    high,
    unit: 'MPa',
    paste: `lumber:\n  ${reading.stock}:\n    E: ${digits(E, 3)} MPa\n    source: measured`,
    notes: [...(doubtful === null ? [] : [doubtful]), ...sagNotes(sag_mm, error.sag_mm, span_mm, height_mm)],
  };
}

function shearPart(n: Numbers): number {
  return ((n.weight_g / 1000) * GRAVITY_N_PER_KG * n.span_mm * E_over_G) / (4 * shearShare * n.width_mm * n.height_mm);
}

function sagNotes(sag_mm: number, error_mm: number, span_mm: number, height_mm: number): string[] {
  const notes: string[] = [];
  if (sag_mm < 8 * error_mm)
    notes.push(
      'The sag is small beside the reading error: lay the board flat, widen the span or add weight until it sinks at least eight times the error.',
    );
  if (sag_mm > span_mm / 50)
    notes.push(
      'The sag is more than a fiftieth of the span: use less weight, or the board may stay bent and the formula drifts.',
    );
  if (span_mm < 15 * height_mm)
    notes.push(
      'The span is short for the height of the board: shear takes a large part and its stiffness is only assumed.',
    );
  return notes;
}
