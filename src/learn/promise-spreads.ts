/**
 * How far readings may lie from what an audit tells of them, where the audit itself gives a number and no spread (all
 * `proposal`): nine in ten
 * frames lie within the first share, or one standard deviation is the second kind.
 */
export const promiseSpread = {
  /**
   * Hands reach a pull within 1.25 times too low or too high in nine frames of ten: standard deviation of its
   * logarithm.
   */
  ln_pull: Math.log(1.25) / 1.645,
  /** Wood of one kind weighs within 15 % in nine frames of ten: standard deviation as a share. */
  weight_share: 0.15 / 1.645,
  /** Moisture of single boards about what the plan says, percentage points. */
  moisture_pct: 1,
} as const;
