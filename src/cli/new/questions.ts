import { isCancel, select, text, updateSettings } from '@clack/prompts';
import { existsSync } from 'node:fs';
import { readQuantity } from '../../base/units.js';
import type { Dimension } from '../../base/unit-table.js';

// Ctrl+D leaves as Ctrl+C does: the library would end without a word, its cursor hidden.
updateSettings({ aliases: { '\u0004': 'cancel' } });

/** The user left the conversation. */
export class Left extends Error {}

/** The answer, unless the user left. Throws Left. */
export function answered<T>(answer: T | symbol): T {
  if (isCancel(answer)) throw new Left();
  return answer as T;
}

/** What a quantity may be, and how a question shows that. */
export interface Asked {
  readonly message: string;
  readonly dimension: Dimension;
  readonly placeholder: string;
  readonly least: number;
  readonly most: number;
  /** The limits in words. */
  readonly words: string;
  readonly initial?: string;
  /** Whether no answer is an answer: it then comes back as an empty text. */
  readonly optional?: boolean;
}

/** A quantity within limits, asked again until it is one. Throws Left. */
export async function askQuantity({
  message,
  dimension,
  placeholder,
  least,
  most,
  words,
  initial,
  optional = false,
}: Asked): Promise<string> {
  const validate = (given: string | undefined): string | undefined => {
    if (optional && (given ?? '').trim() === '') return undefined;
    const reading = readQuantity(given ?? '', dimension);
    if (!reading.ok)
      return reading.fault === 'no-unit'
        ? `Write the unit after the number, such as ${placeholder}.`
        : `Write a number with its unit, such as ${placeholder}.`;
    return reading.value >= least && reading.value <= most ? undefined : `It can be ${words}.`;
  };
  return (
    answered(
      await text({ message, placeholder, validate, ...(initial === undefined ? {} : { initialValue: initial }) }),
    ) ?? ''
  ).trim();
}

/** One of a few answers. Throws Left. */
export async function choose<T extends string>(
  message: string,
  options: readonly { readonly value: T; readonly label: string; readonly hint?: string }[],
  initial: T,
): Promise<T> {
  // The library's option type does not distribute over a type parameter, so it is told plain texts.
  return answered<string>(
    await select<string>({ message, options: options.map((option) => ({ ...option })), initialValue: initial }),
  ) as T;
}

/** A file that is not there yet. Throws Left. */
export async function askFile(usual: string, placeholder: string): Promise<string> {
  const free = existsSync(usual) ? '' : usual;
  const validate = (given: string | undefined): string | undefined => {
    const file = (given ?? '').trim();
    if (file === '') return 'Give the name of a file.';
    return existsSync(file) ? `${file} is there already and stays as it is. Give another name.` : undefined;
  };
  return answered(
    await text({ message: 'Which file does it go to?', initialValue: free, placeholder, validate }),
  ).trim();
}
