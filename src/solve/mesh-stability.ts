import { spokenName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { largeMovement, spreadUnknowns } from '../frame3d/index.js';
import type { LoadFactor, Prepared } from '../frame3d/index.js';
import type { FrameMesh } from './frame-mesh.js';
import type { MeshMember } from './mesh-layout.js';
import type { ModeLine, ModeName, Propeller, Stability } from '../model/frame-results.js';
import { departures, fineFractions, largestOf } from './mesh-shape-lines.js';

/** The answer for a frame that no pull of this kind makes unstable. */
export const neverUnstable: Stability = {
  load_factor: null,
  second_factor: null,
  mode: null,
  mode_words: null,
  second_mode_words: null,
  mode_shape: [],
  propeller: null,
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

/** Bows that differ by less are the same but for the rounding of a mode: the first member is named. */
const alike = 1e-4;

/**
 * Names a mode: `propeller` when the free corner moves at least half as much as anything, otherwise by what bows most:
 * a bar of the `frame`, or what lies `inside` it.
 */
function nameMode(
  mesh: FrameMesh,
  u: Float64Array,
): { readonly mode: ModeName; readonly words: string; readonly moves: 'frame' | 'inside' } {
  const { plane, out } = largestShifts(mesh, u);
  const side = out >= plane ? 'out' : 'plane';
  if (side === 'out' && Math.abs(u[6 * mesh.corners['top-right'] + 2]!) >= 0.5 * out)
    return { mode: 'propeller', words: 'propeller', moves: 'frame' };
  const bows = membersOf(mesh).map((member) => ({
    member,
    bow: Math.abs(largestOf(departures(member, u, side, fineFractions(member, 2)))),
  }));
  const most = bows.reduce((a, b) => (b.bow > a.bow * (1 + alike) ? b : a));
  const name = most.member.kind === 'bar' ? `${most.member.name} bar` : spokenName(most.member.name);
  return {
    mode: 'sideways',
    moves: most.member.kind === 'bar' ? 'frame' : 'inside',
    words: side === 'out' ? `${name} bows out of the plane` : `${name} bows in the plane`,
  };
}

/** Places along a member, at least, at which a mode is drawn. */
const drawnPlaces = 16;

/** A member's line with its movements: its ends', and how it departs from the chord between them. */
function modeLine(member: MeshMember, mesh: FrameMesh, u: Float64Array): ModeLine {
  const { name, nodes, elements } = member;
  const fractions = fineFractions(member, Math.ceil(drawnPlaces / elements.length));
  const [across, out] = [departures(member, u, 'plane', fractions), departures(member, u, 'out', fractions)];
  const [from, to] = [nodes[0]!, nodes[nodes.length - 1]!];
  const [a, b] = [mesh.structure.nodes[from]!, mesh.structure.nodes[to]!];
  const [c, s] = member.along;
  return {
    member: name,
    points: fractions.map((t, i) => {
      const between = (p: number, q: number): number => p + t * (q - p);
      const moved = (d: number): number => between(u[6 * from + d]!, u[6 * to + d]!);
      return {
        x: between(a.x, b.x),
        y: between(a.y, b.y),
        dx: moved(0) - s * across[i]!,
        dy: moved(1) + c * across[i]!,
        dz: moved(2) + out[i]!,
      };
    }),
  };
}

/**
 * Lines of every member with their movements in a mode, the largest shift being 1. The propeller's free corner comes
 * forward.
 */
function modeLines(mesh: FrameMesh, u: Float64Array): ModeLine[] {
  const lines = membersOf(mesh).map((member) => modeLine(member, mesh, u));
  const shifts = lines.flatMap(({ points }) =>
    points.map(({ dx, dy, dz }) => Math.max(Math.hypot(dx, dy), Math.abs(dz))),
  );
  const lift = u[6 * mesh.corners['top-right'] + 2]!;
  const scale = (lift < 0 ? -1 : 1) / (Math.abs(largestOf(shifts)) || 1);
  return lines.map(({ member, points }) => ({
    member,
    points: points.map(({ x, y, dx, dy, dz }) => ({ x, y, dx: scale * dx, dy: scale * dy, dz: scale * dz })),
  }));
}

/** A propeller, its mode scaled to unit lift of the free corner. */
function readPropeller(mesh: FrameMesh, prepared: Prepared, lifting: LoadFactor): Propeller {
  const free = prepared.equations.of[6 * mesh.corners['top-right'] + 2]!;
  const { k, E4 } = largeMovement(
    prepared,
    lifting.mode.map((v) => v / lifting.mode[free]!),
  );
  return { factor: lifting.factor, beta_per_mm2: (4 * E4) / k };
}

/**
 * Modes of the side bars nearer to each other than this (second factor over first) trade shapes as the mesh is refined.
 */
const NEAR = 1.6;

/**
 * The answer, and whether how far the frame turns needs a finer mesh: two modes of its side bars come so near to each
 * other that a small error of either mixes them.
 */
export interface ReadStability {
  readonly stability: Stability;
  readonly mixed: boolean;
}

/** What the `wanted` smallest load factors found (one or two) of a frame with its cloth say, and their modes look like. */
export function readStability(
  mesh: FrameMesh,
  prepared: Prepared,
  found: readonly LoadFactor[],
  wanted: number,
): ReadStability {
  const [first, next] = found;
  if (!first) return { stability: neverUnstable, mixed: false };
  const u = spreadUnknowns(prepared, first.mode);
  const { mode, words, moves } = nameMode(mesh, u);
  const other = next ? nameMode(mesh, spreadUnknowns(prepared, next.mode)) : null;
  const lifting = mode === 'propeller' ? first : other?.mode === 'propeller' ? next : undefined;
  const stability: Stability = lazily(
    { mode_shape: () => modeLines(mesh, u) },
    {
      load_factor: first.factor,
      second_factor: next?.factor ?? null,
      mode,
      mode_words: words,
      second_mode_words: other?.words ?? null,
      propeller: wanted > 1 && lifting !== undefined ? readPropeller(mesh, prepared, lifting) : null,
    },
  );
  return {
    stability,
    mixed: next !== undefined && next.factor < NEAR * first.factor && moves === 'frame' && other?.moves === 'frame',
  };
}
