import { InvalidArgumentError, Option } from 'commander';

/** A whole number from `least` to `most`, or commander's own complaint. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < least || value > most)
      throw new InvalidArgumentError(`It takes a whole number from ${least} to ${most}.`);
    return value;
  };
}

/** `--overwrite`: for the rare case that a page shall replace a file that the tool did not write. */
export function overwriteOption(): Option {
  return new Option('--overwrite', 'also replace files there that sightdown did not write').default(false);
}

/** `--format`, one of a few words, the first being the default. */
export function formatOption(words: readonly [string, ...string[]], description: string): Option {
  return new Option('--format <format>', description).choices([...words]).default(words[0]);
}

/** `--jobs`: how many share long work. What comes out is the same, whatever the number. */
export function jobsOption(): Option {
  return new Option(
    '--jobs <n>',
    'how many share the work; what is written is the same (default: all cores but one, where there is enough to do)',
  ).argParser(wholeNumber(1, 64));
}
