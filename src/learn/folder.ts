import type { Problem } from '../base/problem.js';
import { nearest } from '../base/schema-problems.js';
import { readYaml } from '../base/yaml-document.js';
import { readSheet } from '../bench-sheet/read-sheet.js';
import type { Sheet } from '../bench-sheet/sheet.js';
import { readPile } from '../pile/read-pile.js';
import type { Plan } from '../plan/plan.js';
import { readPlanWith } from '../plan/read-plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { FiledSheet } from './filed-sheet.js';
import { withPileBoards, type FiledBoard } from './pile-boards.js';

export type { FiledSheet };

/** A file of the folder, read as text. */
export interface FolderText {
  readonly file: string;
  readonly text: string;
}

/** One frame that was built: its plan, and its sheets from the first stage of the work to the last. */
export interface BuiltFrame {
  readonly plan: Plan;
  /** Which of the plan's frames; counted from one. */
  readonly number: number;
  readonly sheets: readonly FiledSheet[];
}

/** What a folder holds. */
export interface StudioFolder {
  readonly frames: readonly BuiltFrame[];
  readonly plans_without_sheets: readonly { readonly file: string; readonly name: string }[];
  readonly sheets_without_plan: readonly { readonly file: string; readonly why: string }[];
  /** Files that are neither plan nor sheet, or that another file repeats, and why they do not count. */
  readonly left: readonly { readonly file: string; readonly why: string }[];
  /** What should be looked at, in sentences. */
  readonly questions: readonly string[];
  /** Plans and sheets that could not be read. */
  readonly problems: readonly Problem[];
}

const stageOrder = ['before-cloth', 'after-cloth', 'after-ground', 'finished'];

/**
 * Sorts a folder: plans, sheets and piles told apart by their first key, each sheet put to its plan by the plan's name
 * and given the readings of the boards it names. The order of the files makes no difference.
 */
export function readFolder(texts: readonly FolderText[], shelf: Shelf): StudioFolder {
  const left: { file: string; why: string }[] = [];
  const problems: Problem[] = [];
  const plans: { file: string; plan: Plan }[] = [];
  const read: FiledSheet[] = [];
  const piles: FiledBoard[] = [];
  const seen = new Map<string, string>();
  for (const { file, text } of [...texts].sort((a, b) => (a.file < b.file ? -1 : 1))) {
    const twin = seen.get(text.trim());
    seen.set(text.trim(), twin ?? file);
    if (twin !== undefined) left.push({ file, why: `the same, word for word, as ${twin}; it counts once` });
    else take(file, text);
  }

  function take(file: string, text: string): void {
    const { source, problems: found } = readYaml(text, file);
    const first =
      source !== null && typeof source.data === 'object' && source.data !== null && !Array.isArray(source.data)
        ? Object.keys(source.data)[0]
        : undefined;
    if (first === 'sheet') {
      const sheet = readSheet(text, file);
      if (sheet.ok) read.push({ file, sheet: sheet.value });
      else problems.push(...sheet.problems);
    } else if (first === 'plan') {
      const plan = readPlanWith(text, file, shelf);
      if (!plan.ok) problems.push(...plan.problems);
      else if (plans.some((one) => one.plan.name === plan.value.name))
        left.push({
          file,
          why: `another plan is called “${plan.value.name}” too; give each a name of its own, or sheets cannot be told apart`,
        });
      else plans.push({ file, plan: plan.value });
    } else if (first === 'pile') {
      const pile = readPile(text, file, shelf);
      if (pile.ok) piles.push(...pile.value.boards.filter(({ marked }) => marked).map((board) => ({ file, board })));
      else problems.push(...pile.problems);
    } else if (source === null) problems.push(...found);
    else left.push({ file, why: 'its first line starts neither plan: nor sheet: nor pile:' });
  }

  const names = plans.map(({ plan }) => plan.name);
  const ofPlan = (sheet: Sheet): string | null => sheet.plan ?? (plans.length === 1 ? names[0]! : null);
  const full = read.map((filed) =>
    withPileBoards(filed, plans.find(({ plan }) => plan.name === ofPlan(filed.sheet))?.plan, piles),
  );
  const sheets = full.map(({ filed }) => filed);
  const questions = full.flatMap((one) => one.questions);
  const frames = plans.flatMap(({ plan }) =>
    framesOf(
      plan,
      sheets.filter(({ sheet }) => ofPlan(sheet) === plan.name),
      questions,
    ),
  );
  return {
    frames,
    plans_without_sheets: plans
      .filter(({ plan }) => !sheets.some(({ sheet }) => ofPlan(sheet) === plan.name))
      .map(({ file, plan }) => ({ file, name: plan.name })),
    sheets_without_plan: sheets.flatMap(({ file, sheet }) =>
      names.includes(ofPlan(sheet) ?? '') ? [] : [{ file, why: whyAlone(sheet, names) }],
    ),
    left,
    questions,
    problems,
  };
}

function whyAlone({ plan }: Sheet, names: readonly string[]): string {
  if (plan === null) return 'it does not say whose it is: write plan: and the name of its plan';
  const close = nearest(plan, names);
  return `no plan here is called “${plan}”${close === undefined ? '' : `; did you mean “${close}”?`}`;
}

/**
 * Sheets of one plan by frame. A second sheet of one stage without a number is taken as another frame, and asked about.
 */
function framesOf(plan: Plan, sheets: readonly FiledSheet[], questions: string[]): readonly BuiltFrame[] {
  const byFrame = new Map<number, FiledSheet[]>();
  const put = (number: number, filed: FiledSheet): void =>
    void byFrame.set(number, [...(byFrame.get(number) ?? []), filed]);
  const has = (number: number, { sheet }: FiledSheet): boolean =>
    (byFrame.get(number) ?? []).some((other) => other.sheet.when === sheet.when);
  for (const filed of sheets.filter(({ sheet }) => sheet.frame !== null)) {
    const number = filed.sheet.frame as number;
    if (has(number, filed))
      questions.push(
        `${filed.file}: another sheet has frame ${number} of “${plan.name}” at the same stage already, so this one does not count. Which is right?`,
      );
    else put(number, filed);
  }
  const unnumbered = sheets.filter(({ sheet }) => sheet.frame === null);
  for (const filed of unnumbered) {
    let number = 1;
    while (has(number, filed)) number += 1;
    if (number > 1)
      questions.push(
        `${filed.file}: it has no frame: number and is not the only sheet of that stage of “${plan.name}”, so it is taken as frame ${number}. Write frame: 1, frame: 2 … to be sure.`,
      );
    put(number, filed);
  }
  const most = Math.max(0, ...byFrame.keys());
  if (most > plan.count)
    questions.push(`“${plan.name}” says count: ${plan.count}, but its sheets speak of ${most} frames.`);
  const stage = ({ sheet }: FiledSheet): number => stageOrder.indexOf(sheet.when);
  return [...byFrame]
    .sort(([a], [b]) => a - b)
    .map(([number, filed]) => ({ plan, number, sheets: [...filed].sort((a, b) => stage(a) - stage(b)) }));
}
