import { Option, type Command } from 'commander';
import type { NewOptions } from './option-types.js';
import { wholeNumber } from './options.js';
import { under } from './help-text.js';

const ofPlans = ['width', 'height', 'lay', 'plies', 'crossbar', 'chosen', 'moisture', 'hang'];

const help = `
Examples:
  sightdown new
  sightdown new --name "Reading nook" --width "900 mm" --height "650 mm" --stock strip-19x38 --lay edge --plies 2 --out nook.yaml
  sightdown new --pile
  sightdown new --pile --name "Shed, back wall" --stock strip-19x38 --mark A B --length "2400 mm" --sticks "400 mm" --over "2 m" --rise "3 mm" "1 mm" --high right left

Without flags it asks, on a terminal; with --name, --width, --height and --stock it asks nothing. A file that exists is never overwritten.
A plan is a short text file: you may as well write it by hand.

With --pile it writes the boards in hand, for place, cut and audit: it asks board by board, or takes flags, one value for each
--mark in the same order (unread where you did not read it). Twist is told as you see it: lay a straight stick across each end,
sight over the near one, and say on which side the far one stands higher. Which hand that is, it works out. With flags, bow and
crook are the hollow of the face with the letter and of the marked edge: letter towards you, stroke on your left, the upper one.

Exit codes: 0 written, 1 nothing written.`;

/** Adds `sightdown new`. */
export function addNew(program: Command): void {
  program
    .command('new')
    .description('Write a commented plan, or with --pile the boards in hand, from a short conversation or from flags.')
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
    .addOption(new Option('--pile', 'write the boards in hand instead of a plan').conflicts(ofPlans))
    .option('--mark <letter...>', 'pile: what is chalked on each board that was read')
    .option('--length <length...>', 'pile: how long the boards are, one for all or one for each')
    .option('--rise <length...>', 'pile: by how much the two sticks disagree at one end')
    .addOption(
      new Option(
        '--high <side...>',
        'pile: on which side the far stick stands higher, as you sight over the near one',
      ).choices(['left', 'right', 'level', 'unread']),
    )
    .option('--sticks <length>', 'pile: how long the sticks are')
    .option('--over <length>', 'pile: how far it is from one stick to the other (default: the board’s length)')
    .option('--bow <depth...>', 'pile: hollow of the face with the letter, from end to end')
    .option('--crook <depth...>', 'pile: hollow of the marked edge, from end to end')
    .option('--unread <n>', 'pile: so many more boards that nobody read', wholeNumber(1, 500))
    .addHelpText('after', under(help))
    .action(async (options: NewOptions) => {
      process.exitCode =
        options.pile === true
          ? await (await import('./new/run-pile.js')).runNewPile(options)
          : await (await import('./new/run.js')).runNew(options);
    });
}
