import type { core } from 'zod/mini';

/**
 * Replaces the failure of a choice by the failures of the one branch that fits best: a line, a group and a switched-off
 * rule
 * are told apart by their keys, so the branch with the fewest complaints is the one that was meant.
 */
export function followBestBranch(issues: readonly core.$ZodIssue[]): core.$ZodIssue[] {
  return issues.flatMap((issue) => {
    if (issue.code !== 'invalid_union') return [issue];
    const branches = issue.errors.filter(
      (branch) => !branch.some((inner) => inner.path.length === 0 && inner.code === 'invalid_type'),
    );
    const best = branches.reduce<readonly core.$ZodIssue[] | null>(
      (least, branch) => (least === null || weight(branch) < weight(least) ? branch : least),
      null,
    );
    if (best === null || best.some((inner) => inner.path.length === 0 && inner.code === 'invalid_value'))
      return [issue];
    return followBestBranch(best.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] })));
  });
}

/** Complaints, those near the top counting for more: they say that the branch was not the one meant. */
function weight(issues: readonly core.$ZodIssue[]): number {
  return issues.reduce((sum, issue) => {
    const each = 1 + 1 / (1 + issue.path.length);
    if (issue.code === 'unrecognized_keys') return sum + each * issue.keys.length;
    if (issue.code === 'invalid_union') return sum + Math.min(each, ...issue.errors.map(weight));
    return sum + each;
  }, 0);
}
