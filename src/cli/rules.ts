import type { Command } from 'commander';
import type { CompareOptions } from './option-types.js';
import { formatOption, wholeNumber } from './options.js';
import { under } from './help-text.js';

/** Adds `sightdown rules check|show|compare|facts`. */
export function addRules(program: Command): void {
  const rules = program
    .command('rules')
    .description('Check, read and compare rulesets; list the facts that rules may ask for.')
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown rules compare baseline my-rules.yaml plans/*.yaml\n\nEach has its own help: sightdown rules compare --help',
      ),
    );

  rules
    .command('check')
    .description(
      'Find everything wrong with a ruleset: places, units, examples that do not hold, rules that can never speak, limits nothing uses.',
    )
    .argument('<ruleset>', 'a file, or the name of a ruleset that ships with the tool')
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown rules check my-rules.yaml\n\nExit codes: 0 without errors (warnings are shown), 1 with errors.',
      ),
    )
    .action(async (file: string) => {
      process.exitCode = await (await import('./rules-run.js')).runCheck(file);
    });

  rules
    .command('show')
    .description('Print a rule as a page in words; without an id, the list of all rules.')
    .argument('[id]', 'id of a rule, such as bars/inward-bow')
    .option('--rules <file>', 'the ruleset (default: baseline)')
    .addHelpText(
      'after',
      under('\nExamples:\n  sightdown rules show\n  sightdown rules show bars/inward-bow --rules class-first-year'),
    )
    .action(async (id: string | undefined, options: { readonly rules?: string }) => {
      process.exitCode = await (await import('./rules-run.js')).runShow(id, options.rules);
    });

  rules
    .command('compare')
    .description(
      'List which verdicts change when plans are judged by another ruleset, and why: the safe way to edit a rule.',
    )
    .argument('<before>', 'ruleset as it was')
    .argument('<after>', 'ruleset as it would be')
    .argument('<plan...>', 'plan files (YAML), or folders of them')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .option('--seed <n>', 'seed of what is sampled', wholeNumber(0, 2 ** 31 - 1), 1)
    .option('--samples <n>', 'be as sure as from counting so many imagined frames', wholeNumber(100, 1_000_000), 20_000)
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown rules compare class-first-year my-class.yaml plans/*.yaml\n\nExit codes: 0 compared, whether or not anything changes; 1 some plan could not be read (the others are compared), or another input error.',
      ),
    )
    .action(async (before: string, after: string, plans: string[], options: CompareOptions) => {
      process.exitCode = await (await import('./rules-run.js')).runCompare(before, after, plans, options);
    });

  rules
    .command('facts')
    .description('List every fact a rule may ask for, with its unit and meaning.')
    .argument('[word]', 'only facts with this word in their path or meaning')
    .addOption(formatOption(['text', 'json'], 'text for reading, json for other programs'))
    .addHelpText(
      'after',
      under('\nExample:\n  sightdown rules facts twist\n\nExit codes: 0 some are listed, 2 no fact has that word.'),
    )
    .action(async (word: string | undefined, { format }: { readonly format: 'text' | 'json' }) => {
      process.exitCode = (await import('./rules-run.js')).runFacts(word, format);
    });
}
