import type { ProposalName } from '../shelf/proposals.js';

/**
 * What a step of the order of work takes besides a person; how long it takes is the shelf's number of the same name.
 */
export interface StepNeeds {
  readonly minutes: ProposalName;
  readonly saw?: true;
  readonly flat?: true;
  /** Clamps that go on in this step and stay on for as long as its glue asks. */
  readonly clamps?: 'corner' | 'bar';
  /** What one does, in two or three words. */
  readonly words: string;
  /** Part of the work, for the picture. */
  readonly stage: Stage;
}

/** The parts of the work, in order. */
export const stages = ['wood', 'glue', 'frame', 'cloth', 'ground'] as const;
export type Stage = (typeof stages)[number];

/**
 * Every step that somebody's time goes into, by its id in the order of work. Steps that are not here only wait, or come
 * after the painting.
 */
export const stepTable: Readonly<Record<string, StepNeeds>> = {
  sort: { minutes: 'minutes-sort', words: 'sort and mark the boards', stage: 'wood' },
  'rough-cut': { minutes: 'minutes-rough-cut', saw: true, words: 'saw the plies over length', stage: 'wood' },
  plies: { minutes: 'minutes-plies', clamps: 'bar', words: 'glue the plies', stage: 'glue' },
  edge: { minutes: 'minutes-edge', words: 'shape the front edges', stage: 'wood' },
  trial: { minutes: 'minutes-trial', saw: true, words: 'make the trial joint', stage: 'wood' },
  cut: { minutes: 'minutes-cut', saw: true, words: 'saw the bars', stage: 'wood' },
  'dry-fit': { minutes: 'minutes-dry-fit', flat: true, words: 'lay out dry', stage: 'frame' },
  'glue-corners': {
    minutes: 'minutes-glue-corners',
    flat: true,
    clamps: 'corner',
    words: 'glue the corners',
    stage: 'glue',
  },
  'nail-corners': { minutes: 'minutes-nail-corners', words: 'nail the corners', stage: 'frame' },
  'set-corners': { minutes: 'minutes-set-corners', words: 'take off the clamps', stage: 'frame' },
  'assemble-corners': {
    minutes: 'minutes-assemble-corners',
    flat: true,
    words: 'push the corners together',
    stage: 'frame',
  },
  crossbars: { minutes: 'minutes-crossbars', words: 'fit the crossbars', stage: 'frame' },
  braces: { minutes: 'minutes-braces', words: 'set the braces', stage: 'frame' },
  square: { minutes: 'minutes-square', flat: true, words: 'measure the diagonals', stage: 'frame' },
  threads: { minutes: 'minutes-threads', words: 'lay the cloth true', stage: 'cloth' },
  stretch: { minutes: 'minutes-stretch', words: 'stretch and staple', stage: 'cloth' },
  'second-round': { minutes: 'minutes-second-round', words: 'staple a second round', stage: 'cloth' },
  corners: { minutes: 'minutes-corners', words: 'fold the corners', stage: 'cloth' },
  trim: { minutes: 'minutes-trim', words: 'trim the turn', stage: 'cloth' },
  keys: { minutes: 'minutes-keys', words: 'slip in the keys', stage: 'cloth' },
  ground: { minutes: 'minutes-ground', words: 'brush on ground', stage: 'ground' },
};
