import type { Diagnosis } from './diagnose.js';
import type { PullRead } from './pull-read.js';
import type { Rescue } from './rescue.js';
import type { Sheet } from './sheet.js';
import type { JudgedFinding } from './make-finding.js';

/** A bench sheet held against the promise. */
export interface Measured {
  readonly sheet: Sheet;
  /** The pull the readings of the cloth mean; null when none was taken. */
  readonly pull: PullRead | null;
  readonly findings: readonly JudgedFinding[];
  /** Why a corner stands up more than promised; null when it does not. */
  readonly diagnosis: Diagnosis | null;
  /** What brings it flat again; null when it is flat enough. */
  readonly rescue: Rescue | null;
}
