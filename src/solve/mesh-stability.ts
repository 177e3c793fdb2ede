import { cornerNames } from '../base/names.js';
import type { CornerName } from '../base/names.js';
import { addMembraneProduct, addProduct, smallestLoadFactors, solveFactored, spreadUnknowns, tangentFactors } from '../frame3d/index.js';
import type { LoadFactor, Prepared, SecondOrder } from '../frame3d/index.js';
import type { FrameMesh } from './frame-mesh.js';
import type { MeshMember } from './mesh-layout.js';
import type { ModeLine, ModeName, Stability } from '../model/frame-results.js';
import { departures, fineFractions, largestOf } from './mesh-shape-lines.js';

/** The answer for a frame that no pull of this kind makes unstable. */
export const neverUnstable: Stability = {
  load_factor: null,
  second_factor: null,
  mode: null,
  mode_words: null,
  second_mode_words: null,
  mode_shape: [],
};

const membersOf = (mesh: FrameMesh): MeshMember[] => [...Object.values(mesh.bars), ...mesh.crossbars, ...mesh.braces];

/** Largest shift of any node, in the plane and out of it. */
function largestShifts(mesh: FrameMesh, u: Float64Array): { readonly plane: number; readonly out: number } {
  let plane = 0;
  let out = 0;
  for (let n = 0; n < mesh.structure.nodes.length; n++) {
    plane = Math.max(plane, Math.hypot(u[6 * n]!, u[6 * n + 1]!));
    out = Math.max(out, Math.abs(u[6 * n + 2]!));
  }
  return { plane, out };
}

/**
 * Whether a shape out of the plane is a propeller: seen from the plane through three corners, the fourth moves at least half
 * as much as anything. Any corner may be the fourth, so that the name does not hang on which corners hold the frame.
 */
function isPropeller(mesh: FrameMesh, u: Float64Array): boolean {
  const { corners, structure, grid } = mesh;
  const [width, height] = [grid.xs[grid.xs.length - 1]!, grid.ys[grid.ys.length - 1]!];
  const z = (corner: CornerName): number => u[6 * corners[corner] + 2]!;
  const [p, q, r, s] = [z('bottom-left'), z('bottom-right'), z('top-left'), z('top-right')];
  const lift = s + p - q - r;
  return cornerNames.some((free) => {
    let largest = 0;
    structure.nodes.forEach((node, n) => {
      const [x, y] = [node.x / width, node.y / height];
      const flat = p * (1 - x) * (1 - y) + q * x * (1 - y) + r * (1 - x) * y + s * x * y;
      const share = (free.endsWith('right') ? x : 1 - x) * (free.startsWith('top') ? y : 1 - y);
      const own = free === 'top-right' || free === 'bottom-left' ? lift : -lift;
      largest = Math.max(largest, Math.abs(u[6 * n + 2]! - flat + own * share));
    });
    return Math.abs(lift) >= 0.5 * largest;
  });
}

/** How far the corners move when the frame leans over into a parallelogram, whichever of its bars is taken to stand still: the smaller way. */
function lean(mesh: FrameMesh, u: Float64Array): number {
  const { corners, grid } = mesh;
  const [width, height] = [grid.xs[grid.xs.length - 1]!, grid.ys[grid.ys.length - 1]!];
  const shift = (corner: CornerName, d: number): number => u[6 * corners[corner] + d]!;
  const topOverBottom = (shift('top-left', 0) + shift('top-right', 0) - shift('bottom-left', 0) - shift('bottom-right', 0)) / 2;
  const rightOverLeft = (shift('top-right', 1) + shift('bottom-right', 1) - shift('top-left', 1) - shift('bottom-left', 1)) / 2;
  return Math.abs(topOverBottom / height + rightOverLeft / width) * Math.min(width, height);
}

/** Names a mode: a propeller, or sideways with what bows most, or that the frame leans over when its corners move more than any bar bows. */
function nameMode(mesh: FrameMesh, u: Float64Array): { readonly mode: ModeName; readonly words: string } {
  const { plane, out } = largestShifts(mesh, u);
  const side = out >= plane ? 'out' : 'plane';
  if (side === 'out' && isPropeller(mesh, u)) return { mode: 'propeller', words: 'propeller' };
  const bows = membersOf(mesh).map((member) => ({
    member,
    bow: Math.abs(largestOf(departures(member, u, side, fineFractions(member, 2)))),
  }));
  // Bars that bow alike differ by the rounding of the mode; the first of them is named.
  const most = bows.reduce((a, b) => (b.bow > a.bow * (1 + 1e-3) ? b : a));
  if (side === 'plane' && lean(mesh, u) > most.bow) return { mode: 'sideways', words: 'the frame leans over in its plane' };
  const name = most.member.kind === 'bar' ? `${most.member.name} bar` : most.member.name;
  return { mode: 'sideways', words: side === 'out' ? `${name} bows out of the plane` : `${name} bows in the plane` };
}

/** Lines of every member with their movements in a mode, the largest shift being 1. The propeller's free corner comes forward. */
function modeLines(mesh: FrameMesh, u: Float64Array): ModeLine[] {
  const { plane, out } = largestShifts(mesh, u);
  const lift = u[6 * mesh.corners['top-right'] + 2]!;
  const scale = (lift < 0 ? -1 : 1) / (Math.max(plane, out) || 1);
  return membersOf(mesh).map(({ name, nodes }) => ({
    member: name,
    points: nodes.map((n) => {
      const { x, y } = mesh.structure.nodes[n]!;
      return { x, y, dx: scale * u[6 * n]!, dy: scale * u[6 * n + 1]!, dz: scale * u[6 * n + 2]! };
    }),
  }));
}

/** The `wanted` smallest load factors (one or two) of a frame with its cloth, and what their modes look like. */
export function readStability(mesh: FrameMesh, prepared: Prepared, second: SecondOrder, wanted: number): Stability {
  const found: LoadFactor[] = smallestLoadFactors(
    {
      n: prepared.equations.count,
      solve: (b) => solveFactored(prepared.factors, b),
      addProduct: (x, y) => {
        addProduct(second.geometric, x, y);
        addMembraneProduct(second.membrane, x, y);
      },
      countBelow: (factor) => tangentFactors(second, factor).negative,
    },
    wanted,
  );
  const [first, next] = found;
  if (!first) return neverUnstable;
  const u = spreadUnknowns(prepared, first.mode);
  const { mode, words } = nameMode(mesh, u);
  return {
    load_factor: first.factor,
    second_factor: next?.factor ?? null,
    mode,
    mode_words: words,
    second_mode_words: next ? nameMode(mesh, spreadUnknowns(prepared, next.mode)).words : null,
    mode_shape: modeLines(mesh, u),
  };
}
