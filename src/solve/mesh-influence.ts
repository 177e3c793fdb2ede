import { lazily } from '../base/lazily.js';
import { spreadUnknowns } from '../frame3d/index.js';
import type { Prepared, Tangent } from '../frame3d/index.js';
import type { FrameMesh } from './frame-mesh.js';
import type { MeshMember } from './mesh-layout.js';
import type { Influence, WarpKind } from '../model/frame-results.js';
import { departures, inwardSign, perBar } from './mesh-shape-lines.js';

/** Equal steps along a bar at which influence numbers are kept. */
export const influenceSteps = 16;

const stations = Array.from({ length: influenceSteps + 1 }, (_, i) => i / influenceSteps);

/**
 * End moments (global, at the member's last node; the opposite at its first) that do what a unit natural curvature
 * does:
 * G J about the axis for twist, E I across it for curvature whose middle goes towards the viewer, or to +y or +x in the
 * plane.
 */
function endMoment(member: MeshMember, kind: WarpKind): readonly [number, number, number] {
  const { E_MPa: E, G_MPa: G, J_mm4: J, I_out_mm4, I_plane_mm4 } = member.section;
  const [c, s] = member.along;
  if (kind === 'twist') return [G * J * c, G * J * s, 0];
  if (kind === 'out') return [-E * I_out_mm4 * s, E * I_out_mm4 * c, 0];
  return [0, 0, E * I_plane_mm4 * (Math.abs(s) > Math.abs(c) ? 1 : -1)];
}

/** The movement that lifts the free corner; the three others are held in the plane. */
const liftOf = (mesh: FrameMesh): number => 6 * mesh.corners['top-right'] + 2;

/** No departure at any of the stations: what bends in the plane leaves it nowhere, and the other way. */
const none = new Float64Array(influenceSteps + 1);
const nowhere = perBar(() => none);

/** How each bar departs inward from its chord. */
const crookOf = (mesh: FrameMesh, u: Float64Array) =>
  perBar((bar) => departures(mesh.bars[bar], u, 'plane', stations).map((v) => inwardSign[bar] * v));

/**
 * Influence numbers on the tangent stiffness at a pull, one factorisation for all; null when that stiffness is not
 * positive, the flat frame having lost its stability.
 */
export function readInfluence(mesh: FrameMesh, prepared: Prepared, tangent: Tangent): readonly Influence[] | null {
  if (!tangent.stands) return null;
  const { of, count } = prepared.equations;
  const solveFor = (member: MeshMember, kind: WarpKind): Float64Array => {
    const b = new Float64Array(count);
    const moment = endMoment(member, kind);
    const ends = [member.nodes[0]!, member.nodes[member.nodes.length - 1]!];
    ends.forEach((node, which) => {
      for (let d = 0; d < 3; d++) {
        const eq = of[6 * node + 3 + d]!;
        if (eq >= 0) b[eq]! += (which === 0 ? -1 : 1) * moment[d]!;
      }
    });
    tangent.solve(b);
    return spreadUnknowns(prepared, b);
  };
  const kinds: readonly WarpKind[] = ['twist', 'out', 'plane'];
  return [...Object.values(mesh.bars), ...mesh.crossbars].flatMap((member) =>
    kinds.map((kind): Influence => {
      if (kind === 'plane')
        return lazily(
          { bar_crook: () => crookOf(mesh, solveFor(member, kind)) },
          { member: member.name, kind, corner_lift: 0, bar_bow: nowhere },
        );
      const u = solveFor(member, kind);
      return {
        member: member.name,
        kind,
        corner_lift: u[liftOf(mesh)]!,
        bar_bow: perBar((bar) => departures(mesh.bars[bar], u, 'out', stations)),
        bar_crook: nowhere,
      };
    }),
  );
}

/**
 * How far the corner lift goes under a unit force on it, mm/N: one newton up at top right, which the three corners that
 * are held answer. Null where the flat frame does not hold.
 */
export function readLiftCompliance(mesh: FrameMesh, prepared: Prepared, tangent: Tangent): number | null {
  if (!tangent.stands) return null;
  const { of, count } = prepared.equations;
  const lift = of[liftOf(mesh)]!;
  const b = new Float64Array(count);
  b[lift] = 1;
  tangent.solve(b);
  return b[lift]!;
}
