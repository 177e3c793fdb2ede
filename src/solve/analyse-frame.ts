import { remembered } from '../base/remembered.js';
import {
  eulerBernoulli,
  prepare,
  prepareStretched,
  sameUnknowns,
  secondOrder,
  smallestFactors,
  solvePrepared,
  tangentOf,
  timoshenko,
} from '../frame3d/index.js';
import type { Freedom, LoadFactor, Prepared, SecondOrder, StretchedFrame, Tangent, Theory } from '../frame3d/index.js';
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
  /**
   * Elements along a shorter side bar (6; under loads alone as few as there can be); longer bars get some more,
   * crossbars and braces follow in proportion.
   */
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

/**
 * Elements along a side bar for stability and influence unless asked otherwise. Against eight times as many the first
 * factor errs by 0.15 % at most, what comes of influence by 0.01 %, how far a frame turns by 0.3 %, the second
 * factor by 0.6 % (129 frames).
 */
export const usualMesh = 6;

/** The first factor, and the second to tell how near another mode lies. */
const usualFactors = 2;

/** A frame meshed and factorised, for any pull. */
interface ReadyFrame {
  readonly mesh: FrameMesh;
  readonly frame: StretchedFrame;
  /** What was found at the pulls asked for so far. */
  readonly pulled: Map<string, PulledFrame>;
}

/** A frame under a pull: what that adds to its stiffness, and what was read from there. */
interface PulledFrame {
  readonly second: SecondOrder;
  /** The smallest load factors, and how many were asked for so far. */
  factors: readonly LoadFactor[];
  asked: number;
  tangent: Tangent | null;
}

/**
 * Elements along crossbars and braces for so many along a bar: they buckle in shorter waves, and cost less than those
 * of the bars, which the cloth ties to each other.
 */
export const finenessOf = (steps: number): MeshFineness => ({
  bar: steps,
  crossbar: Math.max(2, Math.ceil((5 * steps) / 3)),
  brace: Math.max(2, Math.ceil((2 * steps) / 3)),
});

/**
 * A frame under loads needs no elements but those between its joints and the places where something pushes: beams under
 * even loads are exact.
 */
const fewest: MeshFineness = { bar: 1, crossbar: 1, brace: 1 };

const theoryOf = ({ shear }: FrameOptions): Theory => (shear === false ? eulerBernoulli : timoshenko);

function checkMesh(steps: number): void {
  if (!Number.isInteger(steps) || steps < 1) throw new RangeError('a mesh has a whole number of elements');
}

const cannotBeSolved = (freedoms: readonly Freedom[]): RangeError =>
  new RangeError(`the frame cannot be solved: ${freedoms.map((f) => f.words).join(', ')}`);

function makeReady(shape: FrameShape, options: FrameOptions): ReadyFrame {
  const steps = options.mesh ?? usualMesh;
  checkMesh(steps);
  const mesh = meshFrame(shape, [], finenessOf(steps), theoryOf(options));
  const preparation = prepareStretched(mesh.structure, mesh.border, theoryOf(options));
  if (!preparation.stable) throw cannotBeSolved(preparation.freedoms);
  return { mesh, frame: preparation.stretched, pulled: new Map() };
}

/** A frame meshed and factorised for loads alone. */
interface ReadyStatics {
  readonly mesh: FrameMesh;
  readonly prepared: Prepared;
}

function makeStatics(shape: FrameShape, extra: readonly PointForce[], options: FrameOptions): ReadyStatics {
  if (options.mesh !== undefined) checkMesh(options.mesh);
  const fineness = options.mesh === undefined ? fewest : finenessOf(options.mesh);
  const mesh = meshFrame(shape, extra, fineness, theoryOf(options));
  const preparation = prepare(mesh.structure, theoryOf(options));
  if (!preparation.stable) throw cannotBeSolved(preparation.freedoms);
  return { mesh, prepared: preparation.prepared };
}

/**
 * What was made of a shape before, by mesh and theory: the same shape object is meshed and factorised only once for
 * each; shapes are never changed in place.
 */
function kept<Ready>(
  made: (shape: FrameShape, options: FrameOptions) => Ready,
): (shape: FrameShape, options: FrameOptions) => Ready {
  const madeOf = remembered((_: FrameShape) => new Map<string, Ready>());
  return (shape, options) => {
    const ready = madeOf(shape);
    const key = `${options.mesh} ${options.shear ?? true}`;
    let frame = ready.get(key);
    if (!frame) ready.set(key, (frame = made(shape, options)));
    return frame;
  };
}
const readyFrame = kept(makeReady);
const readyStatics = kept((shape, options) => makeStatics(shape, [], options));

function checkPull(pull: EdgePull): void {
  if (!(pull.x >= 0 && pull.y >= 0) || !Number.isFinite(pull.x + pull.y))
    throw new RangeError('a pull is a finite number, 0 or more, each way');
}

/**
 * The frame under a pull on the centre lines: the forces of the linear solution and the second-order stiffness they
 * make with the cloth.
 */
function pulledFrame(shape: FrameShape, { mesh, frame, pulled }: ReadyFrame, pull: EdgePull): PulledFrame {
  const key = `${pull.x} ${pull.y}`;
  let found = pulled.get(key);
  if (!found) {
    const solution = solvePrepared(frame.prepared, frameLoads(shape, mesh, pull, [], false));
    pulled.set(key, (found = { second: secondOrder(frame, solution, pull), factors: [], asked: 0, tangent: null }));
  }
  return found;
}

/** The smallest load factors of a frame at a pull: at least `wanted`, where it has so many. */
function factorsOf({ frame }: ReadyFrame, at: PulledFrame, wanted: number): readonly LoadFactor[] {
  if (at.asked < wanted) {
    at.factors = smallestFactors(frame, at.second, wanted);
    at.asked = wanted;
  }
  return at.factors;
}

/** The tangent stiffness of a frame at a pull. */
function tangentAt(shape: FrameShape, ready: ReadyFrame, pull: EdgePull): Tangent {
  if (pull.x === 0 && pull.y === 0) return tangentOf(ready.frame, null);
  const at = pulledFrame(shape, ready, pull);
  return (at.tangent ??= tangentOf(ready.frame, at.second));
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
  const { mesh, prepared } = extra.length > 0 ? makeStatics(shape, extra, options) : readyStatics(shape, options);
  const eccentric = options.eccentric ?? true;
  const loads = frameLoads(shape, mesh, pull, extra, eccentric);
  return readStatics(shape, mesh, solvePrepared(prepared, loads), pull, eccentric);
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
  const wanted = options.factors ?? usualFactors;
  const at = pulledFrame(shape, ready, pull);
  return readStability(ready.mesh, ready.frame.prepared, factorsOf(ready, at, wanted).slice(0, wanted), wanted);
}

/**
 * The first factor on a pull (N/mm) of `shape`, a frame that is like `stiff` but for its joints; null without one. The
 * search begins at the first mode of `stiff`: always, so that the answer does not hang on what was asked before. Throws
 * a RangeError as `solveStatics` does.
 */
export function softerFactor(shape: FrameShape, stiff: FrameShape, pull: EdgePull): number | null {
  checkPull(pull);
  if (pull.x === 0 && pull.y === 0) return null;
  const like = readyFrame(stiff, {});
  const { frame } = like;
  const soft = makeReady(shape, {});
  const near = sameUnknowns(soft.frame, frame)
    ? factorsOf(like, pulledFrame(stiff, like, pull), usualFactors)[0]?.mode
    : undefined;
  const { second } = pulledFrame(shape, soft, pull);
  return smallestFactors(soft.frame, second, 1, near)[0]?.factor ?? null;
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
  return readInfluence(ready.mesh, ready.frame.prepared, tangentAt(shape, ready, pull));
}

/**
 * How far the corner lift of the frame goes under a unit force on it at a pull (N/mm), mm/N; null when the flat frame
 * is unstable there. Throws a RangeError as `solveStatics` does.
 */
export function solveLiftCompliance(shape: FrameShape, pull: EdgePull, options: FrameOptions = {}): number | null {
  checkPull(pull);
  const ready = readyFrame(shape, options);
  return readLiftCompliance(ready.mesh, ready.frame.prepared, tangentAt(shape, ready, pull));
}
