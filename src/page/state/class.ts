import { signal } from '@preact/signals';
import type { Ask } from '../engine/client.js';
import type { ClassSeen, NamedText, PackSeen } from '../engine/protocol.js';

/** The plans of a class, and a row for each that has been looked at. */
export const classPlans = signal<readonly NamedText[]>([]);
export const classRows = signal<readonly ClassSeen[]>([]);
/** Verdicts as they were before shelf or limits were changed, by file. */
export const classBefore = signal<ReadonlyMap<string, string>>(new Map());

/** What the class prints; null until all of it has been looked at. */
export const classPack = signal<PackSeen | null>(null);

let run = 0;

/** Looks at every plan of the class; a later run takes the place of one that is under way. */
export async function judgeClass(ask: Ask): Promise<void> {
  const mine = ++run;
  const rows: ClassSeen[] = [];
  classPack.value = null;
  for (const [i, plan] of classPlans.peek().entries()) {
    const row = await ask('row', { ...plan, no: i + 1 });
    if (mine !== run) return;
    rows.push(row);
    if (classRows.peek().length <= rows.length) classRows.value = [...rows];
  }
  classRows.value = rows;
  const pack = rows.length === 0 ? null : await ask('pack', null);
  if (mine !== run) return;
  classPack.value = pack;
  if (classBefore.peek().size === 0) classBefore.value = new Map(rows.map(({ file, word }) => [file, word]));
}

/** Another class. */
export function openClass(plans: readonly NamedText[], ask: Ask): void {
  classPlans.value = plans;
  classRows.value = [];
  classBefore.value = new Map();
  void judgeClass(ask);
}
