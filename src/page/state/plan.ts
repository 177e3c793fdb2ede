import { computed, effect, signal } from '@preact/signals';
import { parseDocument } from 'yaml';
import { plainYaml, setInText, type YamlValue } from '../../index.js';
import { History } from './history.js';

/** A way into the plan: keys and list indices. */
export type Path = readonly (string | number)[];

/** The open plan: its text is the truth, and everything else is read from it. */
export const planText = signal('');
/** What its file is called. */
export const planFile = signal('plan.yaml');
/** How often the plan, or what it is judged with, was changed since the page was opened. */
export const edits = signal(0);
/** The text as it was last saved or opened, so that one is told of what is not saved. */
export const savedText = signal('');
/** A plan that was open, and not saved, when another took its place; null when there is none. */
export const setAside = signal<{ readonly file: string; readonly text: string } | null>(null);
/** What one is told after doing something: a sentence, said by screen readers too. */
export const told = signal('');

const history = signal(new History());
/** Whether there is something to take back, and to do again. */
export const canUndo = computed(() => (edits.value, history.value.canBack));
export const canRedo = computed(() => (edits.value, history.value.canForth));

/** What the text says as plain data; the last that could be read stays while it cannot. */
export const planData = computed<{ readonly data: Readonly<Record<string, unknown>>; readonly readable: boolean }>(
  (): { data: Readonly<Record<string, unknown>>; readable: boolean } => {
    const doc = parseDocument(planText.value, { ...plainYaml, uniqueKeys: false });
    const data: unknown = doc.errors.length > 0 ? null : safely(() => doc.toJS({ maxAliasCount: 100 }) as unknown);
    if (typeof data !== 'object' || data === null || Array.isArray(data)) return { data: lastData, readable: false };
    lastData = data as Readonly<Record<string, unknown>>;
    return { data: lastData, readable: true };
  },
);
let lastData: Readonly<Record<string, unknown>> = {};

/** What the plan says at a place; undefined where it says nothing. */
export function valueAt(path: Path): unknown {
  return path.reduce<unknown>(
    (at, step) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, step)
        ? (at as Record<string | number, unknown>)[step]
        : undefined,
    planData.value.data,
  );
}

/** Changes the text. Steps of the same `kind` in a row are taken back together. */
export function changeText(text: string, kind = ''): void {
  const before = planText.peek();
  if (text === before) return;
  history.peek().note(before, text, kind);
  setText(text);
}

/**
 * Shows the text now and after each change, before the change is over: what one types into a text that is a frame
 * behind would take the change back and, with it,
 * all that could be done again. Returns what ends it.
 */
export const followText = (show: (text: string) => void): (() => void) => effect(() => show(planText.value));

/** Writes a value into the plan at a place, or takes it away; tells when that has to be done in the text. */
export function setAt(path: Path, value: YamlValue, kind = ''): void {
  const text = setInText(planText.peek(), path, value);
  if (text === null)
    told.value = 'This part of the plan is written in a way that only you can change: do it in the text.';
  else changeText(text, kind);
}

/** Takes back the last step, or does it again. */
export function undo(): void {
  const text = history.peek().back(planText.peek());
  if (text !== null) setText(text);
}
export function redo(): void {
  const text = history.peek().forth(planText.peek());
  if (text !== null) setText(text);
}

/** The next step stands for itself. */
export const restHistory = (): void => history.peek().rest();

/** Puts another plan on the bench: nothing of the one before can be taken back into it. */
export function openPlan(text: string, file: string): void {
  if (planText.peek() !== savedText.peek() && planText.peek() !== text)
    setAside.value = { file: planFile.peek(), text: planText.peek() };
  history.value = new History();
  planFile.value = file;
  savedText.value = text;
  setText(text);
}

/** Puts the plan that was set aside back on the bench. */
export function takeBack(): void {
  const plan = setAside.peek();
  if (plan === null) return;
  setAside.value = null;
  openPlan(plan.text, plan.file);
  savedText.value = '';
}

function setText(text: string): void {
  planText.value = text;
  edits.value += 1;
}

function safely<T>(make: () => T): T | null {
  try {
    return make();
  } catch {
    return null;
  }
}
