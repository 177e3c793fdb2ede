import type { PileBoard } from '../pile/pile.js';
import type { Piece } from '../cutting/pieces/piece.js';

/** How a board lies in its bar, told by its chalk marks. */
export interface Lie {
  /**
   * Which wide face shows: to the viewer where the bar lies flat, outwards (of a crossbar up, or to the right) where it
   * stands on edge.
   */
  readonly face: 'marked' | 'other';
  /** Whether the marked end is the first one: left, or bottom. */
  readonly end: 'marked-first' | 'marked-last';
}

export const allLies: readonly Lie[] = [
  { face: 'marked', end: 'marked-first' },
  { face: 'marked', end: 'marked-last' },
  { face: 'other', end: 'marked-first' },
  { face: 'other', end: 'marked-last' },
];

type Vector = readonly [number, number, number];
const times = (v: Vector, k: number): Vector => [v[0] * k, v[1] * k, v[2] * k];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Axes of the frame: x along the width, y up, z to the viewer. */
const x: Vector = [1, 0, 0];
const y: Vector = [0, 1, 0];
const z: Vector = [0, 0, 1];

/** What a place asks of the turning of its board. */
export type Placing = Pick<Piece, 'about' | 'runs' | 'lay'>;

/** Where the marked face and the marked edge of a board look as it lies, in axes of the frame. */
export function markedSides(
  { about, runs, lay }: Placing,
  { face, end }: Lie,
): { readonly face: Vector; readonly edge: Vector } {
  const across = runs === 'level' ? y : x;
  const outward = about === 'bottom' || about === 'left' ? -1 : 1;
  const shown = lay === 'flat' ? z : times(across, outward);
  const normal = times(shown, face === 'marked' ? 1 : -1);
  const along = times(runs === 'level' ? x : y, end === 'marked-first' ? 1 : -1);
  return { face: normal, edge: cross(normal, along) };
}

/** How a board may lie in a place: any way, but the long side of a piece that is mitred already looks outwards. */
export function liesFor({ cut }: Pick<PileBoard, 'cut'>, place: Placing): readonly Lie[] {
  if (cut === null || cut === 'square') return allLies;
  const outward = times(place.runs === 'level' ? y : x, place.about === 'bottom' || place.about === 'left' ? -1 : 1);
  return allLies.filter((lie) => dot(markedSides(place, lie)[cut === 'mitre' ? 'edge' : 'face'], outward) > 0);
}

/** The readings of a board as a plan writes them for its place, each null where it was not taken. */
export interface Lying {
  readonly twist_rad_per_m: number | null;
  readonly bow_per_m: number | null;
  readonly crook_per_m: number | null;
}

/**
 * Signs by which a board's bow (positive hollow on the marked face) and crook (hollow on the marked edge) become those
 * of its place: the middle towards the viewer, up or to the right positive.
 */
export function turningSigns(place: Placing, lie: Lie): { readonly bow: 1 | -1; readonly crook: 1 | -1 } {
  const across = place.runs === 'level' ? y : x;
  const { face, edge } = markedSides(place, lie);
  const [ofFace, ofEdge] = place.lay === 'flat' ? [z, across] : [across, z];
  return { bow: dot(face, ofFace) > 0 ? -1 : 1, crook: dot(edge, ofEdge) > 0 ? -1 : 1 };
}

/**
 * A board's readings in its place: the middle of a bowed board goes away from its hollow side; twist keeps its hand
 * however it is turned.
 */
export function asLying(
  { twist_rad_per_m, bow_per_m, crook_per_m }: Pick<PileBoard, 'twist_rad_per_m' | 'bow_per_m' | 'crook_per_m'>,
  place: Placing,
  lie: Lie,
): Lying {
  const sign = turningSigns(place, lie);
  const turned = (value: number | null, by: number): number | null => (value === null ? null : value * by + 0);
  return { twist_rad_per_m, bow_per_m: turned(bow_per_m, sign.bow), crook_per_m: turned(crook_per_m, sign.crook) };
}
