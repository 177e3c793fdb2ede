/**
 * An amount in words beside its limit: where both read alike though they differ, `just over` or `just under` goes
 * before it.
 */
export function besideLimit(words: string, limitWords: string, actual: number, limit: number): string {
  return actual === limit || words !== limitWords ? words : `just ${actual > limit ? 'over' : 'under'} ${words}`;
}
