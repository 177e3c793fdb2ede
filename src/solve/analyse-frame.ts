import { eulerBernoulli, prepareStretched, secondOrder, solvePrepared, timoshenko } from '../frame3d/index.js';
import type { SecondOrder, StretchedFrame } from '../frame3d/index.js';
import { meshFrame } from './frame-mesh.js';
import type { FrameMesh, MeshFineness } from './frame-mesh.js';
import type { Influence, Stability, Statics } from '../model/frame-results.js';
import type { EdgePull, FrameShape, PointForce } from '../model/frame-shape.js';
import { readInfluence, readLiftCompliance } from './mesh-influence.js';
import { neverUnstable, readStability } from './mesh-stability.js';
import type { ReadStability } from './mesh-stability.js';
import { frameLoads, readStatics } from './mesh-statics.js';

/** How a frame is solved. */
export interface FrameOptions {
  /** Elements along a shorter side bar (16); longer bars get some more, crossbars and braces follow in proportion. */
  readonly mesh?: number;
  /** Members deform in shear (true); false gives Euler–Bernoulli beams. */
  readonly shear?: boolean;
  /** The pull acts at the front edge of the bars (true), not on their centre lines. */
  readonly eccentric?: boolean;
  /**
   * For stability: how many load factors to find (2); with 1 the second, its words and how far the frame turns are
   * null.
   */
  readonly factors?: 1 | 2;
}

/** Elements along a side bar unless asked otherwise: reported numbers change by less than 1 % when it is doubled. */
export const usualMesh = 16;

/**
 * How the reserve with softer joints is found: the first factor alone, on a mesh that gives it within 1 % (too high by
 * as much, never too low).
 */
export const softJointOptions: FrameOptions = { factors: 1, mesh: 10 };

/** A frame meshed and factorised, for any pull. */
interface ReadyFrame {
  readonly mesh: FrameMesh;
  readonly frame: StretchedFrame;
  /** Second-order stiffness at the pulls asked for so far. */
  readonly second: Map<string, SecondOrder>;
}

/** Elements along crossbars and braces for so many along a bar. */
export const finenessOf = (steps: number): MeshFineness => ({
  bar: steps,
  crossbar: Math.max(2, Math.ceil(steps / 2)),
  brace: Math.max(2, Math.ceil(steps / 4)),
});

function makeReady(shape: FrameShape, extra: readonly PointForce[], options: FrameOptions): ReadyFrame {
  const steps = options.mesh ?? usualMesh;
  if (!Number.isInteger(steps) || steps < 1) throw new RangeError('a mesh has a whole number of elements');
  const theory = options.shear === false ? eulerBernoulli : timoshenko;
  const mesh = meshFrame(shape, extra, finenessOf(steps), theory);
  const preparation = prepareStretched(mesh.structure, mesh.grid, theory);
  if (!preparation.stable)
    throw new RangeError(`the frame cannot be solved: ${preparation.freedoms.map((f) => f.words).join(', ')}`);
  return { mesh, frame: preparation.stretched, second: new Map() };
}

const kept = new WeakMap<FrameShape, Map<string, ReadyFrame>>();

/** The same shape object is meshed and factorised only once per mesh and theory; shapes are never changed in place. */
function readyFrame(shape: FrameShape, options: FrameOptions): ReadyFrame {
  const key = `${options.mesh ?? usualMesh} ${options.shear ?? true}`;
  let ready = kept.get(shape);
  if (!ready) kept.set(shape, (ready = new Map()));
  let frame = ready.get(key);
  if (!frame) ready.set(key, (frame = makeReady(shape, [], options)));
  return frame;
}

function checkPull(pull: EdgePull): void {
  if (!(pull.x >= 0 && pull.y >= 0) || !Number.isFinite(pull.x + pull.y))
    throw new RangeError('a pull is a finite number, 0 or more, each way');
}

/**
 * Forces of the linear solution under a pull on the centre lines, and the second-order stiffness they make with the
 * cloth.
 */
function secondOrderAt(shape: FrameShape, { mesh, frame, second }: ReadyFrame, pull: EdgePull): SecondOrder {
  const key = `${pull.x} ${pull.y}`;
  let found = second.get(key);
  if (!found) {
    const solution = solvePrepared(frame.prepared, frameLoads(shape, mesh, pull, [], false));
    second.set(key, (found = secondOrder(frame, solution, pull)));
  }
  return found;
}

/**
 * Linear statics of a frame under the pull of its cloth and point forces on its bars (N and N/mm; results in mm, N,
 * N·mm).
 * Throws a RangeError for a shape that is no frame or a pull that is negative or not finite.
 */
export function solveStatics(
  shape: FrameShape,
  pull: EdgePull,
  extra: readonly PointForce[] = [],
  options: FrameOptions = {},
): Statics {
  checkPull(pull);
  const ready = extra.length > 0 ? makeReady(shape, extra, options) : readyFrame(shape, options);
  const loads = frameLoads(shape, ready.mesh, pull, extra, options.eccentric ?? true);
  return readStatics(ready.mesh, solvePrepared(ready.frame.prepared, loads), pull);
}

/**
 * The factors on a pull (N/mm) at which the flat frame with its cloth stops being stable, smallest first, and their
 * modes; nulls without pull.
 * The cloth follows the frame out of the plane and its threads follow the bars in it: a pull of fixed direction would
 * let a frame lean over that its cloth holds,
 * and differently when it is turned a quarter. Where two modes of the side bars lie so near to each other that they
 * mix, as unlike crossbars may bring them, how far the frame
 * turns past the critical pull is found on two meshes and extrapolated. Throws a RangeError as `solveStatics` does.
 */
export function findStability(shape: FrameShape, pull: EdgePull, options: FrameOptions = {}): Stability {
  checkPull(pull);
  if (pull.x === 0 && pull.y === 0) return neverUnstable;
  const { stability, mixed } = stabilityOn(shape, pull, options);
  const { propeller } = stability;
  if (!mixed || propeller === null || shape.crossbars.length < 2) return stability;
  const finer = stabilityOn(shape, pull, { ...options, mesh: 2 * (options.mesh ?? usualMesh) }).stability.propeller;
  return finer === null
    ? stability
    : {
        ...stability,
        propeller: { ...propeller, beta_per_mm2: extrapolated(propeller.beta_per_mm2, finer.beta_per_mm2) },
      };
}

/**
 * What a number that errs by the square of the step goes to, from its value and that on a mesh twice as fine (L. F.
 * Richardson; memory).
 */
const extrapolated = (coarse: number, fine: number): number => (4 * fine - coarse) / 3;

function stabilityOn(shape: FrameShape, pull: EdgePull, options: FrameOptions): ReadStability {
  const ready = readyFrame(shape, options);
  return readStability(ready.mesh, ready.frame.prepared, secondOrderAt(shape, ready, pull), options.factors ?? 2);
}

/**
 * How the stretched frame answers a unit natural curvature of each side bar and crossbar, in each kind, on the tangent
 * stiffness at a pull (N/mm); null when the flat frame is unstable there. Throws a RangeError as `solveStatics` does.
 */
export function solveInfluence(
  shape: FrameShape,
  pull: EdgePull,
  options: FrameOptions = {},
): readonly Influence[] | null {
  checkPull(pull);
  const ready = readyFrame(shape, options);
  return readInfluence(ready.mesh, ready.frame, secondOrderAt(shape, ready, pull));
}

/**
 * How far the corner lift of the frame goes under a unit force on it at a pull (N/mm), mm/N; null when the flat frame
 * is unstable there. Throws a RangeError as `solveStatics` does.
 */
export function solveLiftCompliance(shape: FrameShape, pull: EdgePull, options: FrameOptions = {}): number | null {
  checkPull(pull);
  const ready = readyFrame(shape, options);
  return readLiftCompliance(ready.mesh, ready.frame, secondOrderAt(shape, ready, pull));
}
