import { answer } from '../state/answers.js';
import { setAt, valueAt, type Path } from '../state/plan.js';
import type { YamlValue } from '../../index.js';
import type { Control } from './table.js';
import type { Leaf } from './schema.js';

/** `crossbars.0.at` as steps. */
export const stepsOf = (path: string): Path =>
  path.split('.').map((step) => (/^\d+$/u.test(step) ? Number(step) : step));

/** What the plan says for a control; undefined where it says nothing. */
export function saidFor({ leaf, bare }: Pick<Control, 'leaf' | 'bare'>): string | undefined {
  const { path, type, offAt } = leaf;
  if (offAt !== null && valueAt(stepsOf(offAt)) === 'none') return path === `${offAt}.kind` ? 'none' : undefined;
  const value = valueAt(stepsOf(path));
  if (type === 'whether') return value === 'none' ? 'none' : value === undefined ? undefined : 'set';
  if (value === undefined && bare) {
    const above = valueAt(stepsOf(path).slice(0, -1));
    if (typeof above === 'string' || typeof above === 'number') return String(above);
  }
  return typeof value === 'object' || value === undefined ? undefined : String(value);
}

/** What is assumed where the plan says nothing, in words; null when nothing is. */
export function assumedFor(path: string): string | null {
  return answer.value?.assumed.find((one) => one.path === path)?.value ?? null;
}

const numbers: Readonly<Record<string, string>> = { one: '1', two: '2', three: '3', four: '4' };

/** Which of the choices the words of an assumption mean; null when none. */
export function assumedChoice(words: string | null, choices: readonly string[]): string | null {
  if (words === null) return null;
  if (choices.includes(words)) return words;
  const spoken = words
    .toLowerCase()
    .split(/[^a-z0-9+-]+/u)
    .map((word) => numbers[word] ?? word);
  return choices.find((choice) => spoken.includes(choice)) ?? null;
}

/** What is chosen for a control, said or assumed. */
export function chosenFor(control: Control, choices: readonly string[]): string | null {
  return saidFor(control) ?? assumedChoice(assumedFor(control.leaf.path), choices) ?? control.absent;
}

/** Whether a control has anything to ask in this plan. */
export function isAsked({ when }: Control): boolean {
  if (when === null) return true;
  const said = valueAt(stepsOf(when.path));
  const word = said === undefined ? (assumedFor(when.path) ?? 'none') : String(said);
  return !when.not.includes(word) && !(when.path.endsWith('.kind') && said === undefined);
}

/** Writes what was typed or chosen; an empty text takes it out of the plan. */
export function say({ leaf, bare, absent }: Pick<Control, 'leaf' | 'bare' | 'absent'>, text: string): void {
  const { path, type, offAt } = leaf;
  const steps = stepsOf(path);
  if (offAt !== null && path === `${offAt}.kind` && text === 'none')
    return setAt(stepsOf(offAt), absent === 'none' ? undefined : 'none');
  if (type === 'whether') return setAt(steps, text === 'none' ? 'none' : undefined);
  const above = bare ? valueAt(steps.slice(0, -1)) : undefined;
  if (typeof above === 'string' || typeof above === 'number')
    return setAt(steps.slice(0, -1), text === '' ? undefined : text, path);
  setAt(steps, asValue(leaf, text), path);
}

/** A typed text as the file writes it: a number where one may stand. */
export function asValue({ type, numberToo }: Leaf, typed: string): YamlValue {
  const text = typed.trim();
  if (text === '') return undefined;
  const number = /^-?\d+(?:\.\d+)?$/u.test(text) ? Number(text) : null;
  return number !== null && (type === 'whole' || type === 'number' || numberToo) ? number : text;
}

/** Whether a typed text is worth reading yet: it looks like what is asked for. */
export const looksRight = ({ pattern, type, numberToo }: Leaf, text: string): boolean =>
  type === 'whole'
    ? /^\d+$/u.test(text.trim())
    : type === 'number'
      ? /^-?\d+(?:\.\d+)?$/u.test(text.trim())
      : (numberToo && /^\d*\.?\d+$/u.test(text.trim())) || (pattern?.test(text) ?? text.trim() !== '');
