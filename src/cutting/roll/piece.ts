/** A cloth to cut from a roll. */
export interface RollPiece {
  readonly name: string;
  /** Size along the roll (the long threads) and across it, mm. */
  readonly along_mm: number;
  readonly across_mm: number;
  /** May also lie the other way: a square frame, or one whose thread direction does not matter. */
  readonly turnable: boolean;
}

/** A piece with its place on the roll: `x` across from one selvedge, `y` along from the cut end, mm. */
export interface PlacedCloth {
  readonly name: string;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly across_mm: number;
  readonly along_mm: number;
  /** Lies the other way than the piece was given. */
  readonly turned: boolean;
}

/** One way a piece may lie. */
export interface Lie {
  readonly across: number;
  readonly along: number;
  readonly turned: boolean;
}

/** The ways a piece may lie on a roll of this width, as given first; empty when it fits neither way. */
export function liesOf(piece: RollPiece, roll_mm: number): Lie[] {
  const given: Lie = { across: piece.across_mm, along: piece.along_mm, turned: false };
  const other: Lie = { across: piece.along_mm, along: piece.across_mm, turned: true };
  const ways = piece.turnable && piece.across_mm !== piece.along_mm ? [given, other] : [given];
  return ways.filter((way) => way.across <= roll_mm);
}

/** Roll length that a set of places takes, mm. */
export function lengthOf(placed: readonly PlacedCloth[]): number {
  return placed.reduce((most, p) => Math.max(most, p.y_mm + p.along_mm), 0);
}

/** A piece put down one way at a place. */
export function place(piece: RollPiece, lie: Lie, x_mm: number, y_mm: number): PlacedCloth {
  return { name: piece.name, x_mm, y_mm, across_mm: lie.across, along_mm: lie.along, turned: lie.turned };
}
