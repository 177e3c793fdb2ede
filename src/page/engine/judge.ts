import {
  auditText,
  composeReport,
  frontPicture,
  glanceOf,
  loadRuleset,
  readPlanWith,
  buildModel,
  readShelf,
  readSources,
  reportTitle,
  withChanges,
  writeEdit,
  writeHtml,
  writeJson,
  writeMarkdown,
  type Audit,
  type Bench,
  type Problem,
  type Result,
  type Ruleset,
  type Shelf,
} from '../../index.js';
import { ClassRoom } from './class.js';
import { placeSeen } from './place.js';
import { benchSeen, changeSeen } from './seen.js';
import type {
  Answer,
  BenchSeen,
  BenchTexts,
  ChangeSeen,
  ClassSeen,
  NamedText,
  PackSeen,
  PlacedSeen,
} from './protocol.js';

/** As the command judges when it is told nothing else. */
const usual = { seed: 1, samples: 20_000 } as const;

/** The ruleset that every other is held against. */
const baselineFile = 'baseline.yaml';

/** Thrown out of a search for changes when the plan is another by now. */
class Overtaken extends Error {}

/**
 * The engine as the page asks it: a bench that is set up once, and the last audit kept, so that changes and report need
 * not judge again.
 */
export class Judge {
  private readonly room = new ClassRoom();
  private bench: Bench | null = null;
  private base: { readonly text: string; readonly shelf: Shelf } | null = null;
  private last: { readonly plan: NamedText; readonly audit: Audit } | null = null;

  /** Reads shelf and rules; what cannot be read is told, and the bench before stays out of use. */
  set({ shelf, own_shelf, rules, entry, sources }: BenchTexts): BenchSeen {
    this.last = null;
    const list = readSources(sources);
    const keys = new Set(list.map(({ key }) => key));
    const problems: Problem[] = [];
    if (this.base?.text !== shelf.text) {
      const read = readShelf(shelf.text, shelf.file, undefined, keys);
      problems.push(...(read.ok ? [] : read.problems));
      this.base = read.ok ? { text: shelf.text, shelf: read.value } : null;
    }
    const laid =
      this.base === null || own_shelf === null
        ? null
        : readShelf(own_shelf.text, own_shelf.file, this.base.shelf, keys);
    const load = (file: string): Result<Ruleset> =>
      loadRuleset((name) => rules.find((one) => one.file === name)?.text ?? null, file, { sources: keys });
    const ruleset = load(entry);
    const baseline = load(baselineFile);
    for (const read of [laid, ruleset]) if (read !== null) problems.push(...(read.ok ? read.warnings : read.problems));
    const chosen = laid === null ? (this.base?.shelf ?? null) : laid.ok ? laid.value : null;
    this.bench =
      chosen === null || !ruleset.ok
        ? null
        : {
            shelf: chosen,
            ruleset: ruleset.value,
            ...(baseline.ok ? { baseline: baseline.value } : {}),
            sources: list,
            ...usual,
          };
    return benchSeen(problems, chosen ?? this.base?.shelf ?? null, ruleset.ok ? ruleset.value : null);
  }

  /** Judges a plan. */
  async audit(plan: NamedText): Promise<Answer> {
    const { bench } = this;
    if (bench === null) return { glance: null, problems: [], assumed: [] };
    this.last = null;
    const read = await auditText(plan.text, plan.file, bench);
    if (!read.ok) return { glance: null, problems: read.problems, assumed: [] };
    this.last = { plan, audit: read.value };
    return { glance: glanceOf(read.value), problems: read.warnings, assumed: read.value.assumed };
  }

  /** What the usual changes to a plan would do; null once `pause` finds that another plan is asked for. */
  async changes(plan: NamedText, pause: () => Promise<boolean>): Promise<readonly ChangeSeen[] | null> {
    const audit = await this.auditOf(plan);
    if (audit === null || this.bench === null) return [];
    const giveUp = async (): Promise<void> => {
      if (await pause()) throw new Overtaken();
    };
    try {
      await giveUp();
      const { changes } = await withChanges(audit, this.bench, giveUp);
      return changes.map((change) => changeSeen(change, audit, writeEdit(plan.text, change.edit, change.plan)));
    } catch (error) {
      if (error instanceof Overtaken) return null;
      throw error;
    }
  }

  /** The front view of a plan. */
  front({ text, file }: NamedText): string | null {
    if (this.bench === null) return null;
    const { shelf } = this.bench;
    const read = readPlanWith(text, file, shelf);
    return read.ok ? frontPicture({ plan: read.value, shelf, model: buildModel(read.value, shelf) }).svg : null;
  }

  /** What the command writes of a plan, to the byte. */
  async report(plan: NamedText, format: 'md' | 'html' | 'json'): Promise<string | null> {
    const audit = await this.auditOf(plan);
    if (audit === null || this.bench === null) return null;
    if (format === 'json') return writeJson(audit);
    const whole = await withChanges(audit, this.bench);
    const report = composeReport(whole);
    const { tree, pictures } = report;
    return format === 'md'
      ? writeMarkdown(tree)
      : writeHtml(tree, pictures, { title: reportTitle(whole), lang: 'en', first: report.first, sheet: report.sheet });
  }

  /** Which board of a pile becomes which piece of a plan. */
  place(plan: NamedText, pile: NamedText): PlacedSeen | null {
    return this.bench === null ? null : placeSeen(plan, pile, this.bench);
  }

  /** A plan's row in the table of a class. */
  row(plan: NamedText, no: number): Promise<ClassSeen> {
    return this.room.look(plan, no, this.bench);
  }

  /** What the class prints. */
  pack(): PackSeen | null {
    return this.bench === null ? null : this.room.pack(this.bench);
  }

  private async auditOf(plan: NamedText): Promise<Audit | null> {
    if (this.last?.plan.text !== plan.text || this.last.plan.file !== plan.file) await this.audit(plan);
    return this.last?.audit ?? null;
  }
}
