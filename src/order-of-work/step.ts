/** One step at the bench. */
export interface WorkStep {
  readonly id: string;
  readonly text: string;
  /** How long to wait before the next step, h; null = go on at once. */
  readonly wait_h: number | null;
  /** What the waiting is for. */
  readonly wait_for: string;
  /** Ids of the shop-safety cautions that belong to the step. */
  readonly cautions: readonly string[];
}

/** A step from its id, its sentence, its cautions and, where the work rests after it, how long and what for. */
export const step = (
  id: string,
  text: string,
  cautions: readonly string[] = [],
  wait_h: number | null = null,
  wait_for = '',
): WorkStep => ({ id, text, wait_h, wait_for, cautions });

/** `one clamp`, `3 clamps`. */
export const counted = (n: number, one: string, many = `${one}s`): string => (n === 1 ? `one ${one}` : `${n} ${many}`);
