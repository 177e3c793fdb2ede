import { cornerNames } from '../base/names.js';
import { cornerUse } from '../mechanics/corners/corner-use.js';
import { DURATION } from '../mechanics/fasteners/load-duration.js';
import type { Model, Solution } from '../model/model.js';
import type { Fact } from './fact.js';

/** Facts about each corner: its moment, how much of its strength the peak pull and an accidental pull use, and what part of it decides. */
export function cornerFacts(model: Model, solution: Solution): Fact[] {
  return cornerNames.flatMap((corner): Fact[] => {
    const peak = solution.peak.corners[corner];
    const normal = cornerUse(model, peak, model.peak, DURATION.normal);
    const accident = cornerUse(model, solution.accidental.corners[corner], model.accidental, DURATION.knock);
    return [
      { path: 'corner.moment_Nm', about: corner, value: Math.abs(peak.moment_Nmm) / 1000, unit: 'Nm' },
      { path: 'corner.use_normal', about: corner, value: normal.use, unit: 'ratio' },
      { path: 'corner.use_accidental', about: corner, value: accident.use, unit: 'ratio' },
      { path: 'corner.governs', about: corner, value: normal.governs, unit: 'word' },
    ];
  });
}
