import type { Placing } from './placing.js';
import type { PlaceProblem } from './problem.js';
import { asLying, type Lie } from './turning.js';

/** In-plane curvatures nearer than this (1/m) count as equal. */
const hair_per_m = 1e-9;

/**
 * One way to lie for every slot, out of those that do the same to the frame out of its plane: in the plane the plies of
 * a member are set against each other,
 * and what is left of the crook looks outwards, where the pull of the cloth draws it straight; then letter and marked
 * end as they come.
 */
export function chooseLies(
  { slots, boards }: Pick<PlaceProblem, 'slots' | 'boards'>,
  placing: Placing,
): readonly Lie[] {
  const lies = placing.map(({ lies: all }) => all[0] as Lie);
  const members = new Map<string, number[]>();
  slots.forEach(({ frame, piece }, i) =>
    members.set(`${frame} ${piece.about}`, [...(members.get(`${frame} ${piece.about}`) ?? []), i]),
  );
  for (const plies of members.values()) {
    let best = { sum: Infinity, outward: -Infinity };
    for (const combination of product(plies.map((i) => placing[i]?.lies ?? []))) {
      const along = plies.reduce((sum, i, k) => sum + inPlane(i, combination[k] as Lie), 0);
      const about = slots[plies[0] as number]?.piece.about;
      const now = { sum: Math.abs(along), outward: about === 'bottom' || about === 'left' ? -along : along };
      if (
        now.sum > best.sum + hair_per_m ||
        (now.sum > best.sum - hair_per_m && now.outward <= best.outward + hair_per_m)
      )
        continue;
      best = now;
      plies.forEach((i, k) => (lies[i] = combination[k] as Lie));
    }
  }
  return lies;

  /** In-plane curvature of one ply, up or to the right positive; 0 where it was not read. */
  function inPlane(i: number, lie: Lie): number {
    const { piece } = slots[i] as PlaceProblem['slots'][number];
    const board = boards[placing[i]?.board ?? -1];
    if (board === undefined) return 0;
    const { bow_per_m, crook_per_m } = asLying(board, piece, lie);
    return (piece.lay === 'flat' ? crook_per_m : bow_per_m) ?? 0;
  }
}

function product<T>(lists: readonly (readonly T[])[]): readonly (readonly T[])[] {
  return lists.reduce<readonly (readonly T[])[]>(
    (all, list) => all.flatMap((before) => list.map((one) => [...before, one])),
    [[]],
  );
}
