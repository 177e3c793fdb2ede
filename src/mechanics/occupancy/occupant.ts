import type { About, BarName } from '../../base/names.js';

/** From and to, mm. */
export type Span = readonly [from_mm: number, to_mm: number];

/** What can lie on or in a side bar. */
export type OccupantKind =
  | 'brace'
  | 'brace-screw'
  | 'gusset'
  | 'gusset-screw'
  | 'angle'
  | 'angle-screw'
  | 'crossbar'
  | 'crossbar-screw'
  | 'corner-nail'
  | 'ring'
  | 'ply-screw';

/** Something that can be in the way: a thing on a bar, or one that is there for the whole frame. */
export interface Obstacle {
  readonly kind: OccupantKind | 'whole-crossbar' | 'top-braces' | 'side-bars' | 'all-gussets' | 'all-angles';
  /** The corner, crossbar or bar it belongs to, or `frame`. */
  readonly of: About;
}

const same = (p: Obstacle, q: Obstacle): boolean => p.kind === q.kind && p.of === q.of;

/** Whether it is among them. */
export const among = (all: readonly Obstacle[], one: Obstacle): boolean => all.some((other) => same(one, other));

/** Each once, without its place. */
export const eachOnce = (all: readonly Obstacle[]): readonly Obstacle[] =>
  all.filter((one, i) => all.findIndex((other) => same(one, other)) === i).map(({ kind, of }) => ({ kind, of }));

/** Something that takes up room on or in a side bar: a box in the bar's own directions. */
export interface Occupant extends Obstacle {
  readonly bar: BarName;
  readonly kind: OccupantKind;
  /** Along the bar, from the left or bottom outside corner of the frame. */
  readonly along_mm: Span;
  /** Across it, from its inner edge (0) to its outer edge (w); below 0 it lies in the opening. */
  readonly across_mm: Span;
  /** From its back (0) to its front (d); below 0 it lies on the back. */
  readonly deep_mm: Span;
  /** Room it wants around itself: beside another that wants as much, the sum of both. */
  readonly keep_mm: number;
}

/**
 * Clear room a fastening wants around its axis, in its own diameters: two of them stand four apart, as in a row along
 * the grain. Source: nds-2018 (spacing).
 */
export const KEEP_DIAMETERS = 2;
/** Clear room that a body such as the foot of a brace wants, mm (proposal). */
export const KEEP_BODY_MM = 2;

const apart = (p: Span, q: Span): number => Math.max(q[0] - p[1], p[0] - q[1]);

/**
 * Room left between two things on one bar, mm, less what both want; negative when they are in each other's way,
 * Infinity on different bars.
 */
export function roomBetween(p: Occupant, q: Occupant): number {
  if (p.bar !== q.bar) return Infinity;
  return (
    Math.max(apart(p.along_mm, q.along_mm), apart(p.across_mm, q.across_mm), apart(p.deep_mm, q.deep_mm)) -
    p.keep_mm -
    q.keep_mm
  );
}

/** So little room too few is none, mm. */
const hair_mm = 1e-9;

/** True when they get in each other's way. */
export const inTheWay = (p: Occupant, q: Occupant): boolean => roomBetween(p, q) < -hair_mm;

/** Whether one could get in the other's way when it is moved along their bar. */
export const inLine = (p: Occupant, q: Occupant): boolean =>
  p.bar === q.bar &&
  Math.max(apart(p.across_mm, q.across_mm), apart(p.deep_mm, q.deep_mm)) - p.keep_mm - q.keep_mm < -hair_mm;

/** Of two in line: whether one gets in the other's way when it is moved so far along the bar. */
export const inTheWayAt = (p: Occupant, moved_mm: number, q: Occupant): boolean =>
  Math.max(q.along_mm[0] - (p.along_mm[1] + moved_mm), p.along_mm[0] + moved_mm - q.along_mm[1]) -
    p.keep_mm -
    q.keep_mm <
  -hair_mm;

/** What a fastening is, and in which bar. */
type Fixing = Pick<Occupant, 'bar' | 'kind' | 'of'>;

/** A straight fastening as a box: its axis at `along` and `deep`, its wood from `across`. */
export function shaft(
  { bar, kind, of }: Fixing,
  diameter_mm: number,
  along_mm: number,
  across_mm: Span,
  deep_mm: number,
): Occupant {
  return {
    bar,
    kind,
    of,
    along_mm: about(along_mm, diameter_mm / 2),
    across_mm,
    deep_mm: about(deep_mm, diameter_mm / 2),
    keep_mm: KEEP_DIAMETERS * diameter_mm,
  };
}

/** The same for one driven from the back: its axis at `along` and `across`, its wood from the back inwards. */
export function backShaft(
  { bar, kind, of }: Fixing,
  diameter_mm: number,
  along_mm: number,
  across_mm: number,
  deep_mm: Span,
): Occupant {
  return {
    bar,
    kind,
    of,
    along_mm: about(along_mm, diameter_mm / 2),
    across_mm: about(across_mm, diameter_mm / 2),
    deep_mm,
    keep_mm: KEEP_DIAMETERS * diameter_mm,
  };
}

const about = (middle_mm: number, half_mm: number): Span => [middle_mm - half_mm, middle_mm + half_mm];
