import type { Structure } from './structure.js';
import type { Equations } from './equations.js';
import { nullVector } from './profile-matrix.js';
import type { ProfileFactors } from './profile-matrix.js';

/** One way in which a structure moves without resistance, told by the node that moves most. */
export interface Freedom {
  /** Id of the node. */
  readonly node: string;
  readonly way: 'move' | 'turn';
  readonly axis: 'x' | 'y' | 'z';
  /** `node "N3" is free to turn about y`, `node "N3" is free to move along x`. */
  readonly words: string;
}

/** Size of the structure, to compare a rotation with a shift; 1 for a single point. */
function extent(structure: Structure): number {
  let size = 0;
  const a = structure.nodes[0];
  if (a) for (const b of structure.nodes) size = Math.max(size, Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z));
  return size > 0 ? size : 1;
}

function freedomAt(structure: Structure, movement: number): Freedom {
  const node = structure.nodes[Math.floor(movement / 6)]!.id;
  const d = movement % 6;
  const axis = (['x', 'y', 'z'] as const)[d % 3]!;
  const way = d < 3 ? 'move' : 'turn';
  return {
    node,
    way,
    axis,
    words: `node "${node}" is free to ${way === 'move' ? 'move along' : 'turn about'} ${axis}`,
  };
}

/**
 * Every independent free movement behind the vanished pivots of a singular stiffness. A shift counts before a rotation.
 */
export function freedomsOf(structure: Structure, equations: Equations, factors: ProfileFactors): Freedom[] {
  const size = extent(structure);
  const seen = new Set<number>();
  const freedoms: Freedom[] = [];
  for (const row of factors.vanished) {
    const x = nullVector(factors, row);
    const largest = (from: number, to: number, taken: boolean): { movement: number; amount: number } => {
      let best = { movement: -1, amount: 0 };
      for (let m = 0; m < equations.of.length; m++) {
        const eq = equations.of[m]!;
        if (eq < 0 || m % 6 < from || m % 6 >= to || (!taken && seen.has(m))) continue;
        const amount = Math.abs(x[eq]!);
        if (amount > best.amount * (1 + 1e-6)) best = { movement: m, amount };
      }
      return best;
    };
    const anyShift = largest(0, 3, true).amount;
    const anyTurn = largest(3, 6, true).amount * size;
    const fresh = anyShift > 1e-6 * anyTurn ? largest(0, 3, false) : largest(3, 6, false);
    const chosen = fresh.movement >= 0 ? fresh : largest(0, 6, true);
    if (chosen.movement < 0) continue;
    seen.add(chosen.movement);
    freedoms.push(freedomAt(structure, chosen.movement));
  }
  return freedoms;
}
