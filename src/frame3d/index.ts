/**
 * Space frames of straight members: statics and stability. Knows nothing of what the frame is for; any consistent
 * units.
 */
export * from './structure.js';
export { solveFrame, solvePrepared, spreadUnknowns } from './solve.js';
export type { FrameAnswer, FrameSolution } from './solve.js';
export { prepare } from './assemble.js';
export type { Preparation, Prepared } from './assemble.js';
export type { Freedom } from './freedoms.js';
export { prepareStretched, sameUnknowns, secondOrder } from './stretched-frame.js';
export type { SecondOrder, StretchedFrame } from './stretched-frame.js';
export { largeMovement } from './second-order-strain.js';
export type { LargeMovement } from './second-order-strain.js';
export { smallestFactors } from './smallest-factors.js';
export { tangentOf } from './tangent.js';
export type { Tangent } from './tangent.js';
export type { MembraneBorder } from './membrane-border.js';
export type { Tension } from './skin-energy.js';
export { smallestLoadFactors } from './load-factors.js';
export type { LoadFactor, StabilityProblem } from './load-factors.js';
export { addProduct, factorise, solveFactored } from './profile-matrix.js';
export type { ProfileFactors, ProfileMatrix } from './profile-matrix.js';
