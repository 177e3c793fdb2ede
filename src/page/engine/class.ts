import {
  appliedOf,
  auditText,
  classRow,
  composeClassPack,
  concludeClass,
  formatQuantity,
  mayBeCut,
  planSheet,
  whyNotRead,
  writeHtml,
  type Audit,
  type Bench,
  type ClassRow,
  type NotRead,
  type Plan,
  type PlanSheet,
  type Problem,
  type Result,
} from '../../index.js';
import type { ClassSeen, NamedText, PackSeen } from './protocol.js';
import { rowOf } from './seen.js';

/** What is kept of one file of a class: what the pages about all say of it, never a whole audit. */
type Kept =
  | { readonly row: ClassRow; readonly sheet: PlanSheet; readonly plan: Plan | null }
  | { readonly other: NotRead; readonly problems: readonly Problem[] };

/** The files of a class as they are gone through, one after the other. */
export class ClassRoom {
  private readonly kept: Kept[] = [];

  /** Judges a file by its place among all, counted from 1. */
  async look({ file, text }: NamedText, no: number, bench: Bench | null): Promise<ClassSeen> {
    if (no === 1) this.kept.length = 0;
    const read: Result<Audit> | null = bench === null ? null : await auditText(text, file, bench);
    const kept =
      bench === null || read === null
        ? null
        : read.ok
          ? keptOf(read.value, file, no, bench)
          : notRead(file, no, read.problems);
    if (kept !== null) this.kept[no - 1] = kept;
    return {
      ...rowOf(file, read),
      marks: new Map(
        kept !== null && 'row' in kept ? [...kept.row.marks].map(([rule, { verdict }]) => [rule, { verdict }]) : [],
      ),
    };
  }

  /** Everything to print for the files that were gone through, as the command writes it. */
  pack(bench: Bench): PackSeen {
    const read = this.kept.filter((one) => 'row' in one);
    const sheets = read.map(({ sheet }, row): PlanSheet => ({ ...sheet, row }));
    const others = this.kept.filter((one) => 'other' in one);
    const found = concludeClass(
      {
        rows: read.map(({ row }) => row),
        others: others.map(({ other }) => other),
        told: others.flatMap(({ problems }) => problems),
        pool: read.flatMap(({ plan }, row) => (plan === null ? [] : [{ row, plan }])),
      },
      { ...bench, applied: appliedOf(bench.ruleset, bench.baseline ?? null) },
    );
    const { tree, pictures } = composeClassPack(found, sheets);
    return {
      html: writeHtml(tree, pictures, { title: 'Class pack', lang: 'en', layout: 'pack' }),
      buying: buyingInWords(found),
    };
  }
}

function keptOf(audit: Audit, file: string, no: number, { ruleset }: Bench): Kept {
  const row = classRow(audit, { no, file, page: null, points: ruleset.points });
  return { row, sheet: planSheet(audit, no, 0), plan: mayBeCut(audit.verdict) ? audit.plan : null };
}

function notRead(file: string, no: number, problems: readonly Problem[]): Kept {
  const errors = problems.filter(({ severity }) => severity === 'error');
  return { other: { no, file, kind: 'not-read', why: whyNotRead(errors), page: null }, problems: errors };
}

/** What all that may be cut cost when they are bought for together, and whether less is possible. */
function buyingInWords({ pooled, currency }: ReturnType<typeof concludeClass>): string {
  if (pooled === null) return 'No plan may be cut yet, so there is nothing to buy.';
  const { plans, total_cost, reason, cut } = pooled;
  const units = plans[0]?.units ?? 'metric';
  const cost =
    total_cost === null
      ? `the cost of everything is unknown. ${reason ?? ''}`
      : `everything together costs ${formatQuantity(total_cost, 'cost', units)} ${currency}.`;
  return `Bought together for the ${plans.length === 1 ? 'one plan' : `${plans.length} plans`} that may be cut, ${cost} ${cut.proven ? 'No choice of boards costs less: proven.' : 'That boards cannot cost less is not proven.'}`;
}
