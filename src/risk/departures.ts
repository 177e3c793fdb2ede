import type { BarName } from '../base/names.js';
import { remembered } from '../base/remembered.js';
import type { WarpTerm } from './terms.js';

/** How far a bar departs at its stations over frames built alike, mm. */
export interface Departures {
  /** Station by station. */
  readonly means: Float64Array;
  /** Station by station, for each term: what one standard deviation of it does. */
  readonly spreads: Float64Array;
}

/** Departures of one bar out of the plane (`bow`) or in it (`crook`). */
export function departuresOf(terms: readonly WarpTerm[], way: 'bow' | 'crook', bar: BarName): Departures {
  const columns = terms.length;
  const stations = terms[0]?.[way][bar].length ?? 0;
  const means = new Float64Array(stations);
  const spreads = new Float64Array(stations * columns);
  for (let j = 0; j < columns; j++) {
    const { [way]: lines, mean_per_m, sd_per_m } = terms[j] as WarpTerm;
    addTerm(means, spreads, j, lines[bar], mean_per_m, sd_per_m);
  }
  return { means, spreads };
}

function addTerm(
  means: Float64Array,
  spreads: Float64Array,
  column: number,
  line: ArrayLike<number>,
  mean_per_m: number,
  sd_per_m: number,
): void {
  const columns = spreads.length / means.length;
  for (let s = 0; s < means.length; s++) {
    const each = line[s] as number;
    means[s] = (means[s] as number) + each * mean_per_m;
    spreads[s * columns + column] = each * sd_per_m;
  }
}

/** The same out of the plane for every bar, which chances of a bowed bar and its worst station both begin with. */
export const bowDepartures = remembered((terms: readonly WarpTerm[]): Readonly<Record<BarName, Departures>> => ({
  top: departuresOf(terms, 'bow', 'top'),
  bottom: departuresOf(terms, 'bow', 'bottom'),
  left: departuresOf(terms, 'bow', 'left'),
  right: departuresOf(terms, 'bow', 'right'),
}));
