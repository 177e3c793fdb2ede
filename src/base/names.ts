/** The names by which every part of a frame is known, in plans, facts, rules and reports alike. */

/** One side of the frame, as seen from the front. */
export const barNames = ['top', 'bottom', 'left', 'right'] as const;
export type BarName = (typeof barNames)[number];

/** One corner of the frame, as seen from the front. */
export const cornerNames = ['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const;
export type CornerName = (typeof cornerNames)[number];

/** The unit system a person wrote their plan in, and therefore reads their report in. */
export type UnitSystem = 'metric' | 'inch';

/** How boards are chosen: as they come, with a glance along each, or sighted and checked with winding sticks. */
export type Choosing = 'unsorted' | 'plain' | 'picked';

/** What a fact or finding speaks about: `frame`, a bar, a corner, `crossbar-1`, a fastening such as `ply-screws` … */
export type About = string;

/** The name of a corner or a crossbar as one says it: `top left`, `crossbar 1`. */
export const spokenName = (name: string): string => name.replace('-', ' ');
