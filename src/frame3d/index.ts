/** Space frames of straight members: statics and stability. Knows nothing of what the frame is for; any consistent units. */
export * from './structure.js';
export { solveFrame, solvePrepared } from './solve.js';
export type { FrameAnswer, FrameSolution } from './solve.js';
export { prepare } from './assemble.js';
export type { Preparation, Prepared } from './assemble.js';
export type { Freedom } from './freedoms.js';
