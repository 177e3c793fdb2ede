import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { auditText, type Bench } from '../audit.js';
import { capital } from '../base/capital.js';
import type { Problem } from '../base/problem.js';
import { steadyJson } from '../class/class-data.js';
import { mayBeCut } from '../class/class-page.js';
import { classRow, type ClassRow, type NotRead } from '../class/class-row.js';
import { whyNotRead } from '../class/conclude.js';
import { planSheet } from '../class/plan-sheet.js';
import type { Plan } from '../plan/plan.js';
import type { Audit } from '../report/audit-view.js';
import { auditData } from '../report/json.js';
import { userText } from '../report/clean-text.js';
import type { AuditOptions } from './option-types.js';
import { verdictLine } from './verdict-lines.js';
import { writeNotRead } from './class-pages.js';
import { packedSheet, type KeptSheet } from './kept-sheet.js';
import { readText } from './read-text.js';
import { otherKind, pageNames, type PlanFile } from './plans.js';
import type { DoPiece } from './do-piece.js';
import { writeReport } from './write-report.js';

/** A class, shared out file by file. */
export interface ClassSharing {
  readonly work: 'class';
  readonly entries: readonly Entry[];
  readonly bench: Bench;
  readonly options: AuditOptions;
}

/** One file of the class: its number, what the pages call it, and the folder of its report. */
export interface Entry extends PlanFile {
  readonly no: number;
  readonly label: string;
  readonly page: string;
}

/** All that is kept of one file: a few kilobytes instead of an audit. */
export interface FileDone {
  readonly row: ClassRow | null;
  readonly other: NotRead | null;
  /** The plan, where it may be cut. */
  readonly plan: Plan | null;
  /** Its row is counted when its turn has come. */
  readonly sheet: KeptSheet | null;
  /** Everything to complain of at the terminal, files by their names. */
  readonly problems: readonly Problem[];
  /** What the pages say of a file that could not be read. */
  readonly told: readonly Problem[];
  readonly lines: readonly string[];
  /** The audit as JSON, where that is asked for. */
  readonly json: string | null;
}

const nothing: FileDone = {
  row: null,
  other: null,
  plan: null,
  sheet: null,
  problems: [],
  told: [],
  lines: [],
  json: null,
};

/** Where the reports of a class go when nobody says. */
export const usualFolder = 'reports';

/** The files of a class with what each is called and where its report goes. */
export function entriesOf(files: readonly PlanFile[], { names }: AuditOptions): readonly Entry[] {
  const pages = pageNames(files.map(({ file }) => file));
  return files.map((file, i) => ({
    ...file,
    no: i + 1,
    label: names === 'hidden' ? `Plan ${i + 1}` : file.file,
    page: names === 'hidden' ? `plan-${i + 1}` : pages[i]!,
  }));
}

/** One file each. */
export const classPieces =
  ({ entries, bench, options }: ClassSharing): DoPiece<FileDone> =>
  async (piece, step) => {
    const done = await fileDone(entries[piece]!, bench, options);
    await step();
    return done;
  };

/** One file: its report and its row, or the page and the row that say why there is none. */
async function fileDone(entry: Entry, bench: Bench, options: AuditOptions): Promise<FileDone> {
  if (entry.not !== null) return missing(entry, entry.not, [], options);
  const read = readText(entry.file);
  const beside = 'problem' in read ? null : otherKind(read.text);
  if (beside !== null) return missing(entry, { kind: 'beside', why: beside }, [], options);
  const result =
    'problem' in read
      ? ({ ok: false, problems: [read.problem] } as const)
      : await auditText(read.text, entry.file, bench);
  if (!result.ok) {
    const errors = result.problems
      .filter(({ severity }) => severity === 'error')
      .map((problem) => ({ ...problem, file: entry.label }));
    const done = await missing(entry, { kind: 'not-read', why: whyNotRead(errors) }, errors, options);
    return { ...done, problems: result.problems, told: errors };
  }
  const { format, out = usualFolder } = options;
  const audit = options.names === 'hidden' ? nameless(result.value, entry.label) : result.value;
  const written = format === 'md' || format === 'html';
  const file = options.names === 'hidden' ? ` (${userText(entry.file, 200)})` : '';
  const lines = written
    ? [`${verdictLine(audit)}${file}  →  ${await writeReport(audit, join(out, entry.page), options)}`]
    : [];
  const row = classRow(audit, {
    no: entry.no,
    file: entry.label,
    page: written ? `${entry.page}/report.${format}` : null,
    points: bench.ruleset.points,
  });
  return {
    ...nothing,
    row,
    plan: mayBeCut(audit.verdict) ? audit.plan : null,
    sheet: written ? packedSheet(planSheet(audit, row.no, 0)) : null,
    problems: result.warnings,
    lines,
    json: format === 'json' ? steadyJson(auditData(audit)) : null,
  };
}

/** A file that gave no plan: its row, and a page in the place of every older report of it. */
async function missing(
  { no, label, page }: Entry,
  not: NonNullable<PlanFile['not']>,
  errors: readonly Problem[],
  options: AuditOptions,
): Promise<FileDone> {
  const folder = join(options.out ?? usualFolder, page);
  const writes = not.kind === 'not-read' && (options.format === 'md' || options.format === 'html');
  const old = writes ? standing(folder, 'report') : [];
  const other: NotRead = {
    no,
    file: label,
    kind: not.kind,
    why: sentence(not.why),
    page: old[0] === undefined ? null : `${page}/report.${old[0]}`,
  };
  const lines: string[] = [];
  for (const format of old)
    lines.push(
      `NOT READ  ${userText(label, 200)}  →  ${await writeNotRead(other, errors, folder, { format, overwrite: options.overwrite })}`,
    );
  return { ...nothing, other, lines };
}

/** The formats in which a page stands in a folder already: what is no longer true there must be said there. */
export const standing = (folder: string, name: string): readonly ('md' | 'html')[] =>
  (['md', 'html'] as const).filter((format) => existsSync(join(folder, `${name}.${format}`)));

/** A reason as a sentence. */
const sentence = (why: string): string => `${capital(why)}${/[.!?]$/u.test(why) ? '' : '.'}`;

/** The audit of a plan that goes by its number. */
const nameless = (audit: Audit, label: string): Audit => {
  const plan = { ...audit.plan, name: label, student: null };
  return { ...audit, plan, model: { ...audit.model, plan }, cut: { ...audit.cut, plan_names: [label] } };
};
