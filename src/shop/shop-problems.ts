import { worder, type Details, type Wording } from '../base/wording.js';

/** What can be wrong with a workshop beyond what any file can have wrong, by code. */
export const wordings = {
  'session-twice': (d) => ({
    found: `a session on ${d.value} that begins before another one ends`,
    allowed: 'sessions one after the other',
    hint: 'Give each the hour at which it begins, such as `at: 18:30`, or put them together into a longer one.',
  }),
  'no-saw-with': (d) => ({
    found: `\`kind: none\` with ${d.name}`,
    allowed: '`kind: none` alone, where the shop cuts the pieces',
    hint: 'Remove it, or say which saw there is.',
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** A problem of this kind at a place, worded. */
export const shopProblem = worder<keyof typeof wordings, Details>(wordings);
