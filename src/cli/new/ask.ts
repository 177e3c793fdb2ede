import { cancel, intro, text } from '@clack/prompts';
import type { UnitSystem } from '../../base/names.js';
import { formatSize } from '../../base/units-format.js';
import { readQuantity } from '../../base/units.js';
import type { Shelf } from '../../shelf/shelf.js';
import type { NewOptions } from '../option-types.js';
import type { NewPlan, Wanted } from './plan-text.js';
import { answered, askFile, askQuantity, choose, Left } from './questions.js';
import { fileNameOf } from './yaml-words.js';

const faceLength = { dimension: 'length', least: 50, most: 20_000, words: 'from 50 mm to 20 m' } as const;

/** The lumber of a shelf to choose from. */
export const kindsOf = (
  shelf: Shelf,
  system: UnitSystem,
): readonly { readonly value: string; readonly label: string }[] =>
  Object.values(shelf.lumber).map(({ key, nominal, thickness_mm, width_mm }) => ({
    value: key,
    label: `${key}: ${formatSize(thickness_mm, width_mm, system)}${nominal === null ? '' : `, sold as ${nominal}`}`,
  }));

/** Asks for everything that no flag has given. Null when the user leaves: nothing is written then. */
export async function ask(options: NewOptions, shelf: Shelf): Promise<Wanted | null> {
  intro('A new plan. Ctrl+C leaves without writing anything.');
  try {
    const name =
      options.name ??
      answered(
        await text({
          message: 'What is the frame called?',
          placeholder: 'Reading-nook panel',
          validate: (given) => ((given ?? '').trim() === '' ? 'Give it a name; it heads the report.' : undefined),
        }),
      ).trim();
    const width =
      options.width ??
      (await askQuantity({ message: 'How wide is it, outside?', placeholder: '900 mm or 35-3/8 in', ...faceLength }));
    const height =
      options.height ??
      (await askQuantity({ message: 'How high?', placeholder: '650 mm or 25-1/2 in', ...faceLength }));
    const units = readQuantity(width, 'length');
    const system = units.ok && units.system === 'inch' ? 'inch' : 'metric';
    const kinds = kindsOf(shelf, system);
    const stock = options.stock ?? (await choose('Which lumber for the bars?', kinds, kinds[0]?.value ?? ''));
    const lay =
      options.lay ??
      (await choose<NewPlan['lay']>(
        'How do the bars lie?',
        [
          { value: 'flat', label: 'flat', hint: 'wide side against the cloth' },
          { value: 'edge', label: 'on edge', hint: 'wide side off the wall' },
        ],
        'flat',
      ));
    const plies =
      options.plies ??
      Number(
        await choose(
          'How many boards make up one bar?',
          [
            { value: '1', label: 'one' },
            { value: '2', label: 'two, glued and screwed side by side' },
            { value: '3', label: 'three' },
          ],
          '1',
        ),
      );
    const crossbar =
      options.crossbar ??
      (await choose<NewPlan['crossbar']>(
        'A crossbar across the middle?',
        [
          { value: 'none', label: 'no' },
          { value: 'upright', label: 'upright' },
          { value: 'level', label: 'level' },
        ],
        'none',
      ));
    const chosen =
      options.chosen ??
      (await choose<NewPlan['chosen']>(
        'How will you choose the boards?',
        [
          { value: 'unsorted', label: 'as they come' },
          { value: 'plain', label: 'a glance along each' },
          { value: 'picked', label: 'sighted, and checked with winding sticks' },
        ],
        'plain',
      ));
    const moisture =
      options.moisture ??
      (await choose(
        'How dry are they?',
        [
          { value: '9 %', label: 'long in a heated room', hint: 'about 9 %' },
          { value: '12 %', label: 'from a dry shop', hint: 'about 12 %' },
          { value: '18 %', label: 'from a yard or an unheated store', hint: 'about 18 %' },
        ],
        '12 %',
      ));
    const hang =
      options.hang ??
      (await choose<NewPlan['hang']>(
        'What does it hang by?',
        [
          { value: 'wire', label: 'a wire' },
          { value: 'two-hooks', label: 'two hooks' },
          { value: 'none', label: 'it does not hang' },
        ],
        'wire',
      ));
    const file = options.out ?? (await askFile(fileNameOf(name), 'my-plan.yaml'));
    return { plan: { name, width, height, stock, lay, plies, crossbar, chosen, moisture, hang }, file };
  } catch (error) {
    if (!(error instanceof Left)) throw error;
    cancel('Nothing was written.');
    return null;
  }
}
