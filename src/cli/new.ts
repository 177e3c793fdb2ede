import { Option, type Command } from 'commander';
import { wholeNumber } from './options.js';

/** Flags of `new`; what is missing is asked for on a terminal. */
export interface NewOptions {
  readonly name?: string;
  readonly width?: string;
  readonly height?: string;
  readonly stock?: string;
  readonly lay?: 'flat' | 'edge';
  readonly plies?: number;
  readonly crossbar?: 'none' | 'upright' | 'level';
  readonly chosen?: 'unsorted' | 'plain' | 'picked';
  readonly moisture?: string;
  readonly hang?: 'wire' | 'two-hooks' | 'none';
  readonly out?: string;
  readonly shelf?: string;
}

const help = `
Examples:
  sightdown new
  sightdown new --name "Reading nook" --width "900 mm" --height "650 mm" --stock strip-19x38 --lay edge --plies 2 --out nook.yaml

Without flags it asks, on a terminal; with --name, --width, --height and --stock it asks nothing. A file that exists is never overwritten.
A plan is a short text file: you may as well write it by hand.

Exit codes: 0 written, 1 nothing written.`;

/** Adds `sightdown new`. */
export function addNew(program: Command): void {
  program
    .command('new')
    .description('Write a commented plan, from a short conversation or from flags.')
    .option('--name <text>', 'what the frame is called')
    .option('--width <length>', 'outside width, such as "900 mm" or "35-3/8 in"')
    .option('--height <length>', 'outside height')
    .option('--stock <key>', 'lumber of the bars, a key on the shelf')
    .addOption(new Option('--lay <way>', 'how the bars lie').choices(['flat', 'edge']))
    .option('--plies <n>', 'boards that make up one bar', wholeNumber(1, 4))
    .addOption(new Option('--crossbar <way>', 'a crossbar across the middle').choices(['none', 'upright', 'level']))
    .addOption(new Option('--chosen <way>', 'how the boards are chosen').choices(['unsorted', 'plain', 'picked']))
    .option('--moisture <percent>', 'moisture of the boards, such as "12 %"')
    .addOption(new Option('--hang <by>', 'what it hangs by').choices(['wire', 'two-hooks', 'none']))
    .option('--out <file>', 'file to write (default: the name, with .yaml)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText('after', help)
    .action(async (options: NewOptions) => {
      process.exitCode = await (await import('./new/run.js')).runNew(options);
    });
}
