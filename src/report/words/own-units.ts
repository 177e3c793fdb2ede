import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';

const millimetres = /(\d+(?:\.\d+)?) mm\b/gu;

/** A sentence that was made in millimetres, said in the reader's own units. */
export function inOwnUnits(sentence: string, units: UnitSystem): string {
  if (units === 'metric') return sentence;
  return sentence.replace(millimetres, (_, mm: string) => formatLength(Number(mm), units));
}
