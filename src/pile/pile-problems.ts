import { worder, type Details, type Wording } from '../base/wording.js';

/** What can be wrong with a pile of boards, or with the boards that a plan names, beyond any file’s faults; by code. */
export const wordings = {
  'mark-twice': (d) => ({
    found: `a second board marked \`${d.value}\``,
    allowed: 'each mark once',
    hint: 'Chalk another letter on one of them.',
  }),
  'one-for-several': (d) => ({
    found: `one \`${d.name}\` for ${d.value} boards`,
    allowed: 'boards that nobody read or marked, counted together',
    hint: 'Give the board that has it a line of its own, and count the others.',
  }),
  'knot-beyond-board': (d) => ({
    found: `a knot at \`${d.value}\``,
    allowed: `a place on the board, up to ${d.allowed}`,
    hint: 'Measure from the marked end.',
  }),
  'over-beyond-board': (d) => ({
    found: `a reading over \`${d.value}\``,
    allowed: `no more than the board’s length, ${d.allowed}`,
    hint: 'That is right for a piece cut off since; otherwise check both numbers.',
  }),
  'board-not-in-pile': (d) => ({
    found: `board \`${d.value}\`, which is not in “${d.name}”`,
    allowed: `a mark of the pile: ${d.allowed}`,
    hint: 'The piece is cut from another board, so its readings no longer hold: chalk the right mark, put the board back into the pile, or run `sightdown place` anew.',
  }),
  'no-sound-wood-there': (d) => ({
    found: `a piece that begins at ${d.value} on board \`${d.name}\``,
    allowed: 'a place of sound wood on that board, clear of its knots',
    hint: 'The piece is cut elsewhere: measure from the marked end, or run `sightdown place` anew.',
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** A problem of this kind at a place, worded. */
export const pileProblem = worder<keyof typeof wordings, Details>(wordings);
