import { GRAVITY_N_PER_KG } from '../base/gravity.js';
import { pullAddedByPush_N_per_m, pullFromPush_N_per_m } from '../mechanics/cloth/push-test.js';
import type { ClothSpan } from '../fit/span.js';
import { pastePull } from './measure-tap.js';
import { doubt } from './plausible.js';
import { digits, type Reading } from './reading.js';

/** A weight on a square pad in the middle of the cloth, lying level or pushed with a scale. */
export interface PushReading {
  /** Free rectangle of the cloth, mm. */
  readonly span: ClothSpan;
  readonly weight_g: number;
  /** Side of the pad, mm. */
  readonly pad_mm: number;
  readonly sag_mm: number;
  /** Reading error of the sag, ± mm; half a millimetre when not given. */
  readonly error_mm?: number;
  /** Stiffness of the cloth, N/m, if known: then the low end allows for the pull that the push itself adds. */
  readonly stiffness_N_per_m?: number;
}

/**
 * Pull of a cloth from the sag under a weight, N/m, equal both ways, as a band. Throws RangeError for a number not
 * above zero or a pad larger than the cloth.
 */
export function measurePush(reading: PushReading): Reading {
  const { span, weight_g, pad_mm, sag_mm } = reading;
  const error_mm = reading.error_mm ?? 0.5;
  const at = (sag: number): number => pullFromPush_N_per_m(span, sag, weight_g, pad_mm);
  const value = at(sag_mm);
  const doubtful = doubt('pull', value);
  const added =
    reading.stiffness_N_per_m === undefined
      ? 0
      : pullAddedByPush_N_per_m(span, value, (weight_g / 1000) * GRAVITY_N_PER_KG, sag_mm, reading.stiffness_N_per_m);
  return {
    words: `Pull = how far the same weight would sink at 1 N/m ÷ how far it sank: ${digits(weight_g)} g on a pad of ${digits(pad_mm)} mm sank ${digits(sag_mm)} mm in the middle of ${digits(span.width_mm, 4)} × ${digits(span.height_mm, 4)} mm.`,
    value,
    low: Math.max(at(sag_mm + error_mm) - added, 0),
    high: sag_mm > error_mm ? at(sag_mm - error_mm) : Infinity,
    unit: 'N/m',
    paste: pastePull(value),
    notes: [
      ...(doubtful === null ? [] : [doubtful]),
      ...(added > 0.1 * value
        ? ['The push itself stretches the cloth by a tenth of its pull or more: use less weight.']
        : []),
      ...(sag_mm < 5 * error_mm ? ['The sag is small beside the reading error: use more weight.'] : []),
      'Taken as the same pull along and across.',
    ],
  };
}
