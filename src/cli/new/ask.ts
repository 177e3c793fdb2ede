import { cancel, intro, isCancel, select, text } from '@clack/prompts';
import { existsSync } from 'node:fs';
import { formatSize } from '../../base/units-format.js';
import { readQuantity, type Dimension } from '../../base/units.js';
import type { Shelf } from '../../shelf/shelf.js';
import type { NewOptions } from '../new.js';
import { fileNameOf, type NewPlan } from './plan-text.js';
import type { Wanted } from './run.js';

/** The user left the conversation. */
class Left extends Error {}

function answered<T>(answer: T | symbol): T {
  if (isCancel(answer)) throw new Left();
  return answer as T;
}

/** A quantity within limits, asked again until it is one. */
async function askQuantity(message: string, dimension: Dimension, placeholder: string, least: number, most: number, words: string): Promise<string> {
  const validate = (given: string | undefined): string | undefined => {
    const reading = readQuantity(given ?? '', dimension);
    if (!reading.ok) return reading.fault === 'no-unit' ? `Write the unit after the number, such as ${placeholder}.` : `Write a number with its unit, such as ${placeholder}.`;
    return reading.value >= least && reading.value <= most ? undefined : `It can be ${words}.`;
  };
  return answered(await text({ message, placeholder, validate })).trim();
}

async function choose<T extends string>(message: string, options: readonly { readonly value: T; readonly label: string; readonly hint?: string }[], initial: T): Promise<T> {
  // The library's option type does not distribute over a type parameter, so it is told plain texts.
  return answered<string>(await select<string>({ message, options: options.map((option) => ({ ...option })), initialValue: initial })) as T;
}

/** Asks for everything that no flag has given. Null when the user leaves: nothing is written then. */
export async function ask(options: NewOptions, shelf: Shelf): Promise<Wanted | null> {
  intro('A new plan. Ctrl+C leaves without writing anything.');
  try {
    const name = options.name ?? answered(await text({ message: 'What is the frame called?', placeholder: 'Reading-nook panel', validate: (given) => ((given ?? '').trim() === '' ? 'Give it a name; it heads the report.' : undefined) })).trim();
    const width = options.width ?? (await askQuantity('How wide is it, outside?', 'length', '900 mm or 35-3/8 in', 50, 20_000, 'from 50 mm to 20 m'));
    const height = options.height ?? (await askQuantity('How high?', 'length', '650 mm or 25-1/2 in', 50, 20_000, 'from 50 mm to 20 m'));
    const units = readQuantity(width, 'length');
    const system = units.ok && units.system === 'inch' ? 'inch' : 'metric';
    const kinds = Object.values(shelf.lumber).map(({ key, nominal, thickness_mm, width_mm }) => ({ value: key, label: `${key}: ${formatSize(thickness_mm, width_mm, system)}${nominal === null ? '' : `, sold as ${nominal}`}` }));
    const stock = options.stock ?? (await choose('Which lumber for the bars?', kinds, kinds[0]?.value ?? ''));
    const lay = options.lay ?? (await choose<NewPlan['lay']>('How do the bars lie?', [{ value: 'flat', label: 'flat', hint: 'wide side against the cloth' }, { value: 'edge', label: 'on edge', hint: 'wide side off the wall' }], 'flat'));
    const plies = options.plies ?? Number(await choose('How many boards make up one bar?', [{ value: '1', label: 'one' }, { value: '2', label: 'two, glued and screwed side by side' }, { value: '3', label: 'three' }], '1'));
    const crossbar = options.crossbar ?? (await choose<NewPlan['crossbar']>('A crossbar across the middle?', [{ value: 'none', label: 'no' }, { value: 'upright', label: 'upright' }, { value: 'level', label: 'level' }], 'none'));
    const chosen = options.chosen ?? (await choose<NewPlan['chosen']>('How will you choose the boards?', [{ value: 'unsorted', label: 'as they come' }, { value: 'plain', label: 'a glance along each' }, { value: 'picked', label: 'sighted, and checked with winding sticks' }], 'plain'));
    const moisture = options.moisture ?? (await choose('How dry are they?', [{ value: '9 %', label: 'long in a heated room', hint: 'about 9 %' }, { value: '12 %', label: 'from a dry shop', hint: 'about 12 %' }, { value: '18 %', label: 'from a yard or an unheated store', hint: 'about 18 %' }], '12 %'));
    const hang = options.hang ?? (await choose<NewPlan['hang']>('What does it hang by?', [{ value: 'wire', label: 'a wire' }, { value: 'two-hooks', label: 'two hooks' }, { value: 'none', label: 'it does not hang' }], 'wire'));
    const file = options.out ?? (await askFile(fileNameOf(name)));
    return { plan: { name, width, height, stock, lay, plies, crossbar, chosen, moisture, hang }, file };
  } catch (error) {
    if (!(error instanceof Left)) throw error;
    cancel('Nothing was written.');
    return null;
  }
}

async function askFile(usual: string): Promise<string> {
  const free = existsSync(usual) ? '' : usual;
  const validate = (given: string | undefined): string | undefined => {
    const file = (given ?? '').trim();
    if (file === '') return 'Give the name of a file.';
    return existsSync(file) ? `${file} is there already and stays as it is. Give another name.` : undefined;
  };
  return answered(await text({ message: 'Which file does it go to?', initialValue: free, placeholder: 'my-plan.yaml', validate })).trim();
}
