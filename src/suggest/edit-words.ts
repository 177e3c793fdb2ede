import { countInWords } from '../base/count-words.js';
import { formatLength, formatQuantity } from '../base/units-format.js';
import type { Choosing, UnitSystem } from '../base/names.js';
import type { Bond, Lay, Plan, PlanCrossbar, Stack } from '../plan/plan.js';
import type { NewCrossbar } from './edit.js';

/** How each change is said to a person: one sentence of advice each. */

export const stock = (nameWithKey: string): string => `Build it from ${nameWithKey}.`;

export const lay = (to: Lay): string => (to === 'edge' ? 'Turn the bars on edge.' : 'Lay the bars flat.');

const bonds: Readonly<Record<Bond, string>> = {
  none: 'loose',
  screws: 'screwed',
  glue: 'glued',
  'glue+screws': 'glued and screwed',
};

export const plies = (n: number, stack: Stack, bond: Bond): string =>
  n === 1
    ? 'Build each bar from one board.'
    : `Build each bar from ${countInWords(n)} boards, ${stack === 'side-by-side' ? 'side by side' : 'one behind the other'}, ${bonds[bond]}.`;

export const bond = (to: Bond): string =>
  to === 'glue'
    ? 'Only glue the boards of each bar together.'
    : 'Glue the boards of each bar together, and screw them.';

export const opposed = 'Pair the boards of each bar so that their warps oppose each other.';

export const noBraces = 'Leave out the corner braces.';
export const braces = (glued: boolean): string => `${glued ? 'Glue' : 'Fix'} a wooden brace across each corner.`;

export const fittingScrew = 'Take the ply screw and the lead hole that fit.';

export const cloth = (name: string, roll_mm: number, units: UnitSystem): string =>
  `Take ${name}, from a roll ${formatLength(roll_mm, units)} wide.`;
export const glueCorners = (name: string): string => `Glue the corners with ${name}.`;
export const nails = (to: 'none' | 'fitting'): string =>
  to === 'none' ? 'Leave the nails out of the corners.' : 'Take the nail that fits the corners.';

export const chosen = (to: Choosing): string =>
  to === 'picked'
    ? 'Pick the boards: sight down each one and check it with winding sticks.'
    : 'Look along each board and leave the crooked ones.';

export const settle = (moisture_pct: number): string =>
  `Let the boards settle in the room, to about ${formatQuantity(moisture_pct, 'pct', 'metric')}, before you cut.`;

export const setback = (to_mm: number, units: UnitSystem): string =>
  `Set the crossbars ${formatLength(to_mm, units)} back from the front.`;

const shares: readonly (readonly [number, string])[] = [
  [1 / 2, '1/2'],
  [1 / 3, '1/3'],
  [2 / 3, '2/3'],
  [1 / 4, '1/4'],
  [3 / 4, '3/4'],
];

/** A place along a side as one says and writes it: `1/3`. */
export function share(at: number): string {
  return shares.find(([value]) => Math.abs(value - at) < 1e-9)?.[1] ?? String(Math.round(at * 1000) / 1000);
}

const along = ({ runs, at }: Pick<NewCrossbar, 'runs' | 'at'>): string =>
  Math.abs(at - 1 / 2) < 1e-9
    ? 'in the middle'
    : `at ${share(at)} of the ${runs === 'upright' ? 'width from the left' : 'height from the bottom'}`;

/** One sentence for each crossbar that comes or goes, whichever are more. */
export function crossbars(
  come: readonly NewCrossbar[],
  go: readonly PlanCrossbar[],
  all: readonly NewCrossbar[],
): readonly string[] {
  if (come.length === 0 && go.length === 0) return [];
  if (come.length === 0) return go.map((one) => `Leave out the ${one.runs} crossbar ${along(one)}.`);
  const how = all[0]?.lay === 'edge' ? 'on edge' : 'laid flat';
  const instead =
    go.length === 0 ? '' : `, in place of ${go.length === 1 ? 'the one' : `the ${countInWords(go.length)}`} planned`;
  const [first, ...rest] = come.map((one) =>
    `Put in an ${one.runs} crossbar ${along(one)}, ${how}`.replace('an level', 'a level'),
  );
  const more = go.slice(come.length).map((one) => `Leave out the ${one.runs} crossbar ${along(one)}.`);
  return come.length === 1 && go.length <= 1
    ? [`${first}${instead}.`]
    : [`${first}${instead}.`, ...rest.map((text) => `${text}.`), ...more];
}

/** How it is to hang instead. */
export function hang(from: Plan['hang'], to: Plan['hang'], units: UnitSystem): readonly string[] {
  return [
    ...(to.by === from.by
      ? []
      : [
          to.by === 'wire'
            ? `Hang it by a wire with ${formatLength(to.slack_mm, units)} of slack.`
            : 'Hang it from two hooks, without a wire.',
        ]),
    ...(to.by === 'wire' && from.by === 'wire' && to.slack_mm !== from.slack_mm
      ? [`Give the wire ${formatLength(to.slack_mm, units)} of slack.`]
      : []),
    ...(to.by === 'wire' && to.hooks !== from.hooks ? [`Hang the wire over ${countInWords(to.hooks)} hooks.`] : []),
    ...(to.from === from.from
      ? []
      : [`Screw the rings into the ${to.from === 'back' ? 'back' : 'inside'} of the bars.`]),
  ];
}
