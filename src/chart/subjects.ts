import { specOf } from '../facts/catalogue.js';
import type { FrameByFrame } from '../facts/declare.js';
import { linesOf, type Rule, type Ruleset } from '../rules/ruleset.js';

/**
 * What a chart of sizes leaves out, in words: it asks how large a frame its wood can hold, not what is decided frame by
 * frame, as each fact declares.
 */
export const leftOutOfCharts: Readonly<Record<FrameByFrame, string>> = {
  hanging: 'how it hangs',
  cloth: 'cloth, roll width and staples',
  spending: 'spending',
  fastenings: 'screws and nails',
  boards: 'how the boards are chosen and dried',
  door: 'doors',
  lifting: 'weight and lifting',
  squaring: 'squaring small frames',
};

/** Whether a chart asks a rule, a class's own rules too: not one that requires something of what is left out. */
export const isAskedByCharts = ({ require }: Rule): boolean =>
  linesOf(require).every(({ fact }) => specOf(fact).frame_by_frame === undefined);

/** The rules of a ruleset that a chart asks. */
export const chartRules = (ruleset: Ruleset): Ruleset => ({ ...ruleset, rules: ruleset.rules.filter(isAskedByCharts) });
