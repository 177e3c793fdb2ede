/** One kind of board that can be had, in the caller's integer units. */
export interface StockKind {
  readonly length: number;
  readonly price: number;
  /** At most this many; absent or null = as many as wanted. A leftover on hand has price 0 and a number here. */
  readonly available?: number | null;
  /**
   * A piece that is alone on the board may be this long (a board picked clear of knots); absent = no longer than
   * `length`. Counts for no other load, nor for the waste.
   */
  readonly alone?: number;
}

/** So many equal pieces to cut. */
export interface PieceKind {
  readonly length: number;
  readonly count: number;
  /** Index into `setups`: pieces that nest in one another; absent = none. */
  readonly group?: number;
}

/**
 * A cutting problem in integers. Pieces fit a board iff their lengths, the kerf between neighbours (n − 1 of them) and
 * the setup of each
 * group that is present come to no more than the board's length.
 */
export interface CutProblem {
  readonly kerf: number;
  readonly stock: readonly StockKind[];
  readonly items: readonly PieceKind[];
  /**
   * Length taken once on every board that carries a piece of the group (for nested mitres: the one triangle nobody
   * shares).
   */
  readonly setups?: readonly number[];
  /** A cutting that is known already: many pieces are not searched anew. */
  readonly known?: readonly CutBoard[];
  readonly timeLimit_ms: number;
  /**
   * The clock, injected: milliseconds from any start. A counter does as well and makes the result the same on every
   * machine.
   */
  readonly now: () => number;
}

/**
 * One board of the answer: which stock (index), and which pieces (index into `items`, one entry per piece, longest
 * first).
 */
export interface CutBoard {
  readonly stock: number;
  readonly pieces: readonly number[];
}

/**
 * A complete cutting: every piece once. `proven` speaks of the cost alone, `tiesProven` also of the waste and the
 * number of boards.
 */
export interface Cutting {
  readonly ok: true;
  readonly boards: readonly CutBoard[];
  readonly cost: number;
  /** Bought length that is not piece: kerf, setups and leftovers. */
  readonly waste: number;
  readonly proven: boolean;
  readonly tiesProven: boolean;
  /** No cutting costs less than this; equals `cost` when proven. */
  readonly bound: number;
  /** (cost − bound) / cost, 0 when proven. */
  readonly gap: number;
}

/**
 * Why there is no cutting: pieces longer than every board (indices into `items`), too few boards on offer, or the time
 * ran out before either was known.
 */
export type NoCutting =
  | { readonly ok: false; readonly reason: 'too-long'; readonly items: readonly number[] }
  | { readonly ok: false; readonly reason: 'not-enough' | 'undecided' };

export type CutResult = Cutting | NoCutting;

/** Throws a RangeError that names the first number of a problem that is not a sensible integer: a bug of the caller. */
export function checkProblem(problem: CutProblem): void {
  const whole = (name: string, value: number, least: number): void => {
    if (!Number.isSafeInteger(value) || value < least || value > 1e12)
      throw new RangeError(`${name} must be a whole number from ${least}, not ${value}`);
  };
  whole('kerf', problem.kerf, 0);
  for (const { length, price, available, alone } of problem.stock) {
    whole('stock length', length, 1);
    if (alone !== undefined) whole('length for one piece alone', alone, length);
    whole('stock price', price, 0);
    if (available !== undefined && available !== null) whole('available', available, 0);
  }
  for (const setup of problem.setups ?? []) whole('setup', setup, 0);
  for (const { length, count, group } of problem.items) {
    whole('piece length', length, 1);
    whole('piece count', count, 0);
    if (group !== undefined && problem.setups?.[group] === undefined)
      throw new RangeError(`no setup for group ${group}`);
  }
}
