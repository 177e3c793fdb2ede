import { worder, type Details, type Wording } from '../base/wording.js';

/** What can be wrong with a bench sheet beyond what any file can have wrong, by code. */
export const wordings = {
  'not-two-diagonals': (d) => ({
    found: `${d.value} under \`diagonals\``,
    allowed: 'two lengths, corner to corner each way, such as `[1110 mm, 1112 mm]`',
    hint: 'Measure the other one too.',
  }),
  'no-cloth-yet': (d) => ({
    found: `\`${d.name}\` with \`when: before-cloth\``,
    allowed: 'a reading that needs no cloth',
    hint: 'Write `when: after-cloth`, or remove the reading.',
  }),
  'corner-without-lift': () => ({
    found: '`lifted` without a lift',
    allowed: '`corner-lift` or `winding` beside it',
    hint: 'Say by how much that corner stands up.',
  }),
  'nothing-read': () => ({
    found: 'a sheet without a reading',
    allowed: 'at least one, such as `corner-lift: 4 mm`',
    hint: 'Fill in what you measured; the rest may stay out.',
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** A problem of this kind at a place, worded. */
export const sheetProblem = worder<keyof typeof wordings, Details>(wordings);
