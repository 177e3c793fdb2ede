import { Option, type Command } from 'commander';
import { aims } from '../suggest/aims.js';
import type { SuggestOptions } from './option-types.js';
import { formatOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

const help = `
Examples:
  sightdown suggest my-plan.yaml
  sightdown suggest my-plan.yaml --clear --write better-plan.yaml --pick least-change

Every plan it names has passed the full audit. --verbose tells what was looked through, so that "cheapest" is a claim you can check.

Exit codes: 0 found, 1 input error (or the file to write is there already), 2 nothing found in the space.`;

/** Adds `sightdown suggest PLAN`. */
export function addSuggest(program: Command): void {
  program
    .command('suggest')
    .description('Search for the cheapest, the lightest and the smallest change that clears a plan of its stops.')
    .argument('<plan>', 'plan file (YAML)')
    .option('--rules <file>', 'ruleset to judge by (default: the baseline)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--clear', 'clear of cautions and unknowns too, not only of stops', false)
    .option('--verbose', 'tell what was looked through as well', false)
    .option('--write <file>', 'save the changed plan as a new file, your comments kept; shows what changes first')
    .addOption(new Option('--pick <which>', 'which of the plans to write').choices([...aims]).default('cheapest'))
    .addOption(formatOption(['text', 'json'], 'a table for people, or one document'))
    .option('--seed <n>', 'seed of what is sampled', wholeNumber(0, 2 ** 31 - 1), 1)
    .option('--samples <n>', 'be as sure as from counting so many imagined frames', wholeNumber(100, 1_000_000), 20_000)
    .addHelpText('after', under(help))
    .action(async (plan: string, options: SuggestOptions) => {
      process.exitCode = await (await import('./suggest-run.js')).runSuggest(plan, options);
    });
}
