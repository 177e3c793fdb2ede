import type { Ruleset } from '../rules/ruleset.js';

/**
 * What a chart of sizes leaves out, by the beginning of the rule's id: it asks how large a frame its wood can hold, not what is decided frame by frame.
 * Everything else counts, a class's own rules too.
 */
export const leftOutOfCharts: readonly { readonly prefix: string; readonly what: string }[] = [
  { prefix: 'hanging/', what: 'how it hangs' },
  { prefix: 'cloth/', what: 'cloth, roll width and staples' },
  { prefix: 'cutting/spend', what: 'spending' },
  { prefix: 'fastenings/', what: 'screws and nails' },
  { prefix: 'lumber/', what: 'how the boards are chosen and dried' },
  { prefix: 'frame/door', what: 'doors' },
  { prefix: 'frame/lifting', what: 'lifting' },
  { prefix: 'frame/square-by-tape', what: 'squaring small frames' },
];

/** The rules of a ruleset that a chart asks. */
export function chartRules(ruleset: Ruleset): Ruleset {
  return { ...ruleset, rules: ruleset.rules.filter(({ id }) => !leftOutOfCharts.some(({ prefix }) => id.startsWith(prefix))) };
}
