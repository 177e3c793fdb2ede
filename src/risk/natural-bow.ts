import { barNames, type BarName } from '../base/names.js';
import { anyBowChance, type BarAtLimit, type Estimate, type SampleSettings } from './any-bow.js';
import { barLines, type BarLines } from './bar-lines.js';
import { bowBeyond, bowP90 } from './bow-chance.js';
import type { StationRisk } from './closed-form.js';
import type { WarpTerm } from './terms.js';

/** A value for each bar. */
type OfBars<T> = Readonly<Record<BarName, T>>;

const ofBars = <T>(value: (bar: BarName) => T): OfBars<T> =>
  Object.fromEntries(barNames.map((bar) => [bar, value(bar)])) as OfBars<T>;

/** The lines of the four bars, to be asked for what is wanted of them. */
export function frameLines(terms: readonly WarpTerm[]): OfBars<BarLines> {
  return ofBars((bar) => barLines(terms, bar));
}

/** Nine in ten of each bar depart nowhere by more than this, mm. */
export function bowP90s(lines: OfBars<BarLines>, worst: OfBars<StationRisk>): OfBars<number> {
  return ofBars((bar) => bowP90(lines[bar], worst[bar]));
}

/** Chance that at least one bar departs by more than its limit somewhere. */
export function bowedFrames(lines: OfBars<BarLines>, limit_mm: OfBars<number>, settings: SampleSettings): Estimate {
  const bars = barNames.map((bar): BarAtLimit => {
    const chance = bowBeyond(lines[bar], limit_mm[bar]).chance;
    return { lines: lines[bar], limit_mm: limit_mm[bar], chance };
  });
  return anyBowChance(bars, settings);
}
