import { place, type Lie, type PlacedCloth, type RollPiece } from './piece.js';

/** A stretch of the front where the roll is used up to `y`. */
interface Step {
  readonly x: number;
  readonly width: number;
  readonly y: number;
}

/**
 * Puts pieces down in the given order, each as near the roll's end as it goes and then as far left, the better of its
 * ways of lying.
 */
export function packAlongSkyline(
  pieces: readonly { readonly piece: RollPiece; readonly lies: readonly Lie[] }[],
  roll_mm: number,
): PlacedCloth[] {
  let front: Step[] = [{ x: 0, width: roll_mm, y: 0 }];
  return pieces.map(({ piece, lies }) => {
    const spots = lies.flatMap((lie) => front.flatMap((_, i) => spotAt(front, i, lie, roll_mm)));
    const best = spots.reduce((p, q) =>
      q.y + q.lie.along < p.y + p.lie.along - 1e-9 ||
      (Math.abs(q.y + q.lie.along - p.y - p.lie.along) <= 1e-9 && q.x < p.x)
        ? q
        : p,
    );
    front = raise(front, best.x, best.lie.across, best.y + best.lie.along);
    return place(piece, best.lie, best.x, best.y);
  });
}

interface Spot {
  readonly lie: Lie;
  readonly x: number;
  readonly y: number;
}

function spotAt(front: readonly Step[], i: number, lie: Lie, roll_mm: number): Spot[] {
  const x = (front[i] as Step).x;
  if (x + lie.across > roll_mm + 1e-9) return [];
  const under = front.filter((step) => step.x < x + lie.across - 1e-9 && step.x + step.width > x + 1e-9);
  return [{ lie, x, y: Math.max(...under.map((step) => step.y)) }];
}

/** The front after the stretch from x over `width` has been used up to `y`. */
function raise(front: readonly Step[], x: number, width: number, y: number): Step[] {
  const end = x + width;
  const rest = front.flatMap((step) => {
    const before = Math.min(step.x + step.width, x) - step.x;
    const after = step.x + step.width - Math.max(step.x, end);
    return [
      ...(before > 1e-9 ? [{ ...step, width: before }] : []),
      ...(after > 1e-9 ? [{ x: Math.max(step.x, end), width: after, y: step.y }] : []),
    ];
  });
  return [...rest, { x, width, y }].sort((p, q) => p.x - q.x);
}
