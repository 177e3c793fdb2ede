import type { Problem } from '../base/problem.js';
import type { Plan } from '../plan/plan.js';
import { readPlanWith } from '../plan/read-plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { otherKind, planFiles } from './plans.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/** A plan with the file it came from and that file's text. */
export interface OpenPlan {
  readonly file: string;
  readonly text: string;
  readonly plan: Plan;
}

/**
 * All plans, or null after complaining about every file that cannot be read. Files of a folder that are no plans are
 * left alone.
 */
export function openPlans(named: readonly string[], shelf: Shelf): readonly OpenPlan[] | null {
  const { files, problems } = planFiles(named);
  const all: Problem[] = [...problems];
  const open = files.flatMap((file): OpenPlan[] => {
    const read = readText(file);
    if ('problem' in read) {
      all.push(read.problem);
      return [];
    }
    if (!named.includes(file) && otherKind(read.text) !== null) return [];
    const result = readPlanWith(read.text, file, shelf);
    all.push(...(result.ok ? result.warnings : result.problems));
    return result.ok ? [{ file, text: read.text, plan: result.value }] : [];
  });
  complain(all);
  return open.length === 0 || all.some(({ severity }) => severity === 'error') ? null : open;
}
