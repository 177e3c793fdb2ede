import { lazily } from '../base/lazily.js';
import { barNames, cornerNames } from '../base/names.js';
import type { BarName, CornerName } from '../base/names.js';
import { once } from '../base/once.js';
import type { FrameSolution, Loads, MemberLoad, NodeLoad } from '../frame3d/index.js';
import type { FrameMesh } from './frame-mesh.js';
import type { MeshMember } from './mesh-layout.js';
import { barEnds, barsAt } from './frame-mesh.js';
import type { BarForces, BarStatics, CornerStatics, CrossbarStatics, Statics } from '../model/frame-results.js';
import type { EdgePull, FrameShape, PointForce } from '../model/frame-shape.js';
import { departures, fineFractions, inwardSign, largestOf, perBar, rollSign } from './mesh-shape-lines.js';

/** Inward unit direction of the pull on each bar. */
const inward: Readonly<Record<BarName, readonly [number, number]>> = {
  bottom: [0, 1],
  top: [0, -1],
  left: [1, 0],
  right: [-1, 0],
};

/** Number of equal steps in a bar's bow line. */
const bowSteps = 32;
/** Places along a member, at least, at which its shape and its forces are looked at; in between both are smooth. */
const shapePlaces = 128;
const forcePlaces = 16;

const partsFor = (places: number, { elements }: MeshMember): number => Math.ceil(places / elements.length);

/** What the cloth does to a bar per length: its pull in the plane, and the moment of that about the centre line. */
function edgeLoad(
  shape: FrameShape,
  name: BarName,
  pull: EdgePull,
  eccentric: boolean,
): Pick<MemberLoad, 'force' | 'moment'> {
  const x = inward[name][0] * pull.x;
  const y = inward[name][1] * pull.y;
  const e = eccentric ? shape.eccentricity_mm[name] : 0;
  return { force: [x, y, 0], moment: [-e * y, e * x, 0] };
}

/** Cloth pull along the centre line of every side bar, with the torque it makes about it, and point forces. */
export function frameLoads(
  shape: FrameShape,
  mesh: FrameMesh,
  pull: EdgePull,
  extra: readonly PointForce[],
  eccentric: boolean,
): Loads {
  const members: MemberLoad[] = [];
  for (const name of barNames) {
    const { force, moment } = edgeLoad(shape, name, pull, eccentric);
    for (const member of mesh.bars[name].elements) members.push({ member, force, moment });
  }
  const nodes = extra.map(({ bar, at, Fx, Fy, Fz }): NodeLoad => ({
    node: mesh.nodeAt(bar, at),
    force: [Fx, Fy, Fz],
    moment: [0, 0, 0],
  }));
  return { nodes, members };
}

function axial(member: MeshMember, solution: FrameSolution): number {
  return largestOf(member.elements.flatMap((e) => [-solution.endForces[e]![0]!, solution.endForces[e]![6]!]));
}

/** Forces along a member, at even places in every element and where its in-plane moment turns. */
function forcesAlong(member: MeshMember, solution: FrameSolution): BarForces[] {
  const parts = partsFor(forcePlaces, member);
  return member.elements.flatMap((element, e) => {
    const f = solution.endForces[element]!;
    const from = member.at[e]!;
    const to = member.at[e + 1]!;
    const Vi = -f[1]!;
    const Vj = f[7]!;
    const between = (a: number, b: number, t: number): number => a + t * (b - a);
    const at = (t: number): BarForces => ({
      s: between(from, to, t),
      axial_N: between(-f[0]!, f[6]!, t),
      plane_Nmm: -f[5]! - (Vi * t + ((Vj - Vi) * t * t) / 2) * (to - from) * member.length_mm,
      out_Nmm: between(-f[4]!, f[10]!, t),
    });
    const places = Array.from({ length: parts }, (_, part) => part / parts);
    // A zero that rounding has given a sign is no turning point.
    if (Vi * Vj < 0 && Math.min(Math.abs(Vi), Math.abs(Vj)) > 1e-9 * Math.max(Math.abs(Vi), Math.abs(Vj)))
      places.push(Vi / (Vi - Vj));
    const end = { s: to, axial_N: f[6]!, plane_Nmm: f[11]!, out_Nmm: f[10]! };
    return [...places.sort((p, q) => p - q).map(at), end];
  });
}

/**
 * A bar's largest turn about its own axis, rad: between nodes an even torque (N·mm/mm) bends its course.
 */
function largestTurn(member: MeshMember, u: Float64Array, torque: number): number {
  const turn = (n: number): number => member.along[0] * u[6 * n + 3]! + member.along[1] * u[6 * n + 4]!;
  const parts = partsFor(shapePlaces, member);
  const { G_MPa, J_mm4 } = member.section;
  let largest = 0;
  for (let e = 0; e < member.elements.length; e++) {
    const i = turn(member.nodes[e]!);
    const more = turn(member.nodes[e + 1]!) - i;
    const h = (member.at[e + 1]! - member.at[e]!) * member.length_mm;
    const bulge = (torque * h * h) / (2 * G_MPa * J_mm4);
    for (let part = 0; part <= parts; part++) {
      const t = part / parts;
      const here = i + more * t + bulge * t * (1 - t);
      if (Math.abs(here) > Math.abs(largest)) largest = here;
    }
  }
  return largest;
}

const stations = Array.from({ length: bowSteps + 1 }, (_, i) => i / bowSteps);

function barStatics(
  name: BarName,
  member: MeshMember,
  solution: FrameSolution,
  { force, moment }: ReturnType<typeof edgeLoad>,
): BarStatics {
  const { u } = solution;
  const sign = inwardSign[name];
  const [c, s] = member.along;
  const q = c * force[1] - s * force[0];
  const fine = once(() => fineFractions(member, partsFor(shapePlaces, member)));
  const line = once(() => departures(member, u, 'plane', stations, q));
  const bar: BarStatics = lazily<BarStatics>({
    inward_bow_mm: () => sign * largestOf([largestOf(departures(member, u, 'plane', fine(), q)), largestOf(line())]),
    dish_mm: () => largestOf(departures(member, u, 'out', fine())),
    roll_mrad: () => 1000 * rollSign[name] * largestTurn(member, u, c * moment[0] + s * moment[1]),
    axial_N: () => axial(member, solution),
    moment_Nmm: () => Math.max(...bar.forces.map(({ plane_Nmm }) => Math.abs(plane_Nmm))),
    forces: () => forcesAlong(member, solution),
    bow_line: () => stations.map((at, i) => ({ s: at, inward_mm: sign * line()[i]! })),
  });
  return bar;
}

function crossbarStatics(member: MeshMember, solution: FrameSolution): CrossbarStatics {
  const bow = largestOf(departures(member, solution.u, 'plane', fineFractions(member, partsFor(shapePlaces, member))));
  return { name: member.name, axial_N: axial(member, solution), bow_mm: Math.abs(bow), span_mm: member.length_mm };
}

/**
 * In-plane moment of the plate at a corner on the end of the level bar (the opposite on the upright bar's); 0 without
 * one.
 */
function plateMoment(corner: CornerName, mesh: FrameMesh, { u }: FrameSolution): number {
  const plate = mesh.plates[corner];
  if (plate === null) return 0;
  const { i, j, k } = mesh.structure.springs[plate]!;
  return k[5] * (u[6 * j + 5]! - u[6 * i + 5]!);
}

/** Actions in the two bar ends at a corner, the larger of each kind; the plate's share of the moment apart. */
function cornerStatics(corner: CornerName, mesh: FrameMesh, solution: FrameSolution): CornerStatics {
  const ends = barsAt(corner).map((bar) => {
    const { elements } = mesh.bars[bar];
    const starts = barEnds[bar][0] === corner;
    return {
      f: solution.endForces[elements[starts ? 0 : elements.length - 1]!]!,
      from: starts ? 0 : 6,
      pull: starts ? -1 : 1,
    };
  });
  const plate = plateMoment(corner, mesh, solution);
  const largest = (d: number): number => Math.abs(largestOf(ends.map(({ f, from }) => f[from + d]!)));
  return {
    moment_Nmm: Math.abs(largestOf(ends.map(({ f, from }, e) => f[from + 5]! - (e === 0 ? plate : -plate)))),
    plate_moment_Nmm: Math.abs(plate),
    out_moment_Nmm: largest(4),
    torque_Nmm: largest(3),
    axial_N: largestOf(ends.map(({ f, from, pull }) => pull * f[from]!)),
    shear_N: largest(1),
  };
}

/** Change in length of the diagonal between two corner nodes. */
function stretch(mesh: FrameMesh, u: Float64Array, from: CornerName, to: CornerName): number {
  const [p, q] = [mesh.corners[from], mesh.corners[to]];
  const [a, b] = [mesh.structure.nodes[p]!, mesh.structure.nodes[q]!];
  const [x, y] = [b.x - a.x, b.y - a.y];
  return ((u[6 * q]! - u[6 * p]!) * x + (u[6 * q + 1]! - u[6 * p + 1]!) * y) / Math.hypot(x, y);
}

/**
 * Reads everything a frame's statics tells of bars, crossbars and corners from the solution of its mesh under a pull.
 */
export function readStatics(
  shape: FrameShape,
  mesh: FrameMesh,
  solution: FrameSolution,
  pull: EdgePull,
  eccentric: boolean,
): Statics {
  const found: Statics = lazily<Statics>({
    bars: () => perBar((bar) => barStatics(bar, mesh.bars[bar], solution, edgeLoad(shape, bar, pull, eccentric))),
    crossbars: () => mesh.crossbars.map((c) => crossbarStatics(c, solution)),
    corners: () =>
      Object.fromEntries(cornerNames.map((c) => [c, cornerStatics(c, mesh, solution)])) as Record<
        CornerName,
        CornerStatics
      >,
    dish_mm: () => largestOf(Object.values(found.bars).map((b) => b.dish_mm)),
    racking_mm: () =>
      stretch(mesh, solution.u, 'bottom-left', 'top-right') - stretch(mesh, solution.u, 'bottom-right', 'top-left'),
  });
  return found;
}
