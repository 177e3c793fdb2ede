import type { Plan } from './plan.js';

/** How many plies a bar or a crossbar (`crossbar-1` …) has; null when the plan has no such crossbar. */
export function pliesOf({ bars, crossbars }: Pick<Plan, 'bars' | 'crossbars'>, member: string): number | null {
  const [, index] = /^crossbar-(\d+)$/.exec(member) ?? [];
  return index === undefined ? bars.plies : (crossbars[Number(index) - 1]?.plies ?? null);
}
