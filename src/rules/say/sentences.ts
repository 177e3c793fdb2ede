import type { Rule } from '../ruleset.js';

/** Every sentence of a rule that may hold placeholders: what it says either way, and its advice. */
export const sentencesOf = (rule: Rule): readonly string[] => [
  ...[rule.say, rule.say_clear, rule.say_stop, rule.say_below_zero].filter((one) => one !== null),
  ...rule.do.map((advice) => advice.say),
];
