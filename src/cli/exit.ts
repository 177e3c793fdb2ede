import type { Verdict } from '../findings/finding.js';

/**
 * Exit codes of the command: 0 clear or caution, 1 input or tool error, 2 something unknown (or a caution under
 * --strict), 3 a stop, 130 broken off with Ctrl-C.
 */
export const exitCode = { fine: 0, error: 1, unknown: 2, stop: 3, interrupted: 130 } as const;

/** Exit code of one verdict. */
export function codeOf(verdict: Verdict, strict: boolean): number {
  if (verdict === 'stop') return exitCode.stop;
  if (verdict === 'unknown' || (verdict === 'caution' && strict)) return exitCode.unknown;
  return exitCode.fine;
}
