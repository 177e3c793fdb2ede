import { formatLength, formatQuantity } from '../../base/units-format.js';
import type { HangingPicture } from './hanging-shape.js';

/** Less than this cannot be seen. */
export const liesFlat = (lean_deg: number): boolean => lean_deg < 0.05;

/** How a piece that does not lean meets the wall. */
export const onWall = ({ behind, units }: HangingPicture): string =>
  behind !== null ? `bars ${formatLength(behind.out_mm, units)} off the wall` : 'lies flat on the wall';

/** The picture for who cannot see it. */
export function describeHanging(h: HangingPicture): string {
  const force = (n: number): string => formatQuantity(n, 'N', h.units);
  const wire =
    h.by === 'cleat'
      ? 'It hangs by bevelled strips under the top bar, without a wire'
      : h.by !== 'wire'
        ? `It hangs on two hooks${h.by === 'd-rings' ? ' by strap hangers on the backs' : ''} without a wire, so nothing draws the side bars inward`
        : `It hangs by a wire on ${h.hooks === 1 ? 'one hook' : `${h.hooks} hooks`}${h.wire_angle_deg === null ? '' : `, at ${formatQuantity(h.wire_angle_deg, 'deg', h.units)} to the level`}${
            h.wire_tension_N === null ? '' : `; the wire carries ${force(h.wire_tension_N)}`
          }${h.inward_pull_N === null ? '' : ` and draws each side bar inward with ${force(h.inward_pull_N)}`}`;
  const lean =
    h.lean_deg === null
      ? ''
      : liesFlat(h.lean_deg)
        ? `; ${h.behind !== null ? '' : 'it '}${onWall(h)}`
        : `; the top leans ${formatQuantity(h.lean_deg, 'deg', h.units)} from the wall`;
  return `Back and side view. ${wire}${h.by === 'cleat' ? '' : `; the hanging points are ${formatLength(h.drop_mm, h.units)} below the top edge`}${lean}.`;
}

/** The forces in words, below the picture: arrow down, arrows inward, wire. */
export function forces(h: HangingPicture): readonly string[] {
  const force = (n: number): string => formatQuantity(n, 'N', h.units);
  return [
    `Arrow down: weight ${force(h.weight_N)}.`,
    ...(h.by === 'cleat' ? ['Dark, at the top: the bevelled strips, flush with the back.'] : []),
    ...(h.by === 'wire' && h.inward_pull_N !== null
      ? [`Arrows inward: ${force(h.inward_pull_N)} on each side bar.`]
      : []),
    ...(h.by === 'wire' && h.wire_tension_N !== null
      ? [
          `In the wire: ${force(h.wire_tension_N)}${h.wire_angle_deg === null ? '' : `, at ${formatQuantity(h.wire_angle_deg, 'deg', h.units)}`}.`,
        ]
      : []),
  ];
}
