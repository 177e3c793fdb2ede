import { planeAxis } from './element-axes.js';
import type { Axes } from './element-axes.js';
import { directions } from './structure.js';
import type { Structure } from './structure.js';

/** All that the numbering of a structure hangs on: what is joined to what, which way it lies, what is given. */
export function keyOf({ nodes, members, springs, supports }: Structure, axes: readonly Axes[]): readonly number[] {
  const key = [nodes.length, members.length, springs.length];
  members.forEach(({ i, j }, e) => key.push(i, j, planeAxis(axes[e]!.R)));
  springs.forEach(({ i, j, k }) => {
    let firm = 0;
    for (let d = 0; d < 6; d++) firm = 3 * firm + (k[d] === Infinity ? 2 : k[d]! > 0 ? 1 : 0);
    key.push(i, j, firm);
  });
  supports.forEach(({ node, fix }) => {
    key.push(node);
    for (const direction of directions) key.push(fix[direction] ?? Infinity);
  });
  return key;
}
