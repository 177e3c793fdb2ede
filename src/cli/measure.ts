import { Option, type Command } from 'commander';
import type { JointOptions, PushOptions, SagOptions, SpreadOptions, TapOptions, TwistOptions } from './option-types.js';
import { overwriteOption } from './options.js';
import { under } from './help-text.js';

const chosenOption = (): Option =>
  new Option('--chosen <way>', 'how the boards were chosen').choices(['unsorted', 'plain', 'picked']).default('plain');

const units =
  '\nEvery reading carries its unit, in quotes: "3 mm", "1/8 in", "500 g". Several readings may follow one option.';

/** Adds `sightdown measure sag|twist|spread|tap|push|joint`. */
export function addMeasure(program: Command): void {
  const measure = program
    .command('measure')
    .description('Turn readings at the bench into numbers for a plan or your shelf.')
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown measure twist --rise "3 mm" --width "400 mm" --length "2000 mm"\n\nEach kind of reading has its own help: sightdown measure twist --help',
      ),
    );

  measure
    .command('sag')
    .description('A board on two blocks sinks under a weight: how stiff is it (E for the shelf)?')
    .option('--stock <key>', 'the key the board has on the shelf, or will have')
    .option('--size <size>', 'its actual size, such as "19 x 38 mm" (default: the shelf’s)')
    .addOption(new Option('--lies <way>', 'how it lies on the blocks').choices(['flat', 'edge']).default('flat'))
    .option('--span <length>', 'from block to block')
    .option('--weight <mass>', 'the weight in the middle')
    .option('--sag <length...>', 'how much it sinks under the weight; one reading for each board')
    .option('--error <length>', 'how wrong a sag may be read (default: 0.25 mm)')
    .option('--date <day>', 'when it was measured, such as 2024-05-02; goes into the shelf entry')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        `${units}\n\nExample:\n  sightdown measure sag --stock strip-19x38 --span "1500 mm" --weight "5 kg" --sag "17 mm" "15.5 mm" --date 2024-05-02`,
      ),
    )
    .action(async (options: SagOptions) => run((kinds) => kinds.sag(options)));

  measure
    .command('twist')
    .description('Winding sticks, or a corner that stands off a flat table: how much does a board turn?')
    .option(
      '--rise <length...>',
      'how much one end of the stick, or one corner, stands off; one reading for each board, negative for the other hand',
    )
    .option('--width <length>', 'length of the stick, or width of the board')
    .option('--length <length>', 'from stick to stick, or length of the board')
    .addOption(
      new Option('--hand <hand>', 'which way it turns; right like a wood screw')
        .choices(['right', 'left'])
        .default('right'),
    )
    .option('--for <bar...>', 'the bar each board is for: top, bottom, left, right')
    .option('--ply <n>', 'which ply of that bar', '1')
    .option('--stock <key>', 'with several boards: the key of their kind on the shelf')
    .option('--size <size>', 'the actual size of that kind, if the shelf does not have it')
    .addOption(chosenOption())
    .option('--error <length>', 'how wrong a rise may be read (default: 0.5 mm)')
    .option('--date <day>', 'when it was measured; goes into the shelf entry')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        `${units}\n\nExamples:\n  sightdown measure twist --rise "3 mm" --width "400 mm" --length "2000 mm" --for left\n  sightdown measure twist --rise "1/8 in" "-1/16 in" "3/16 in" --width "16 in" --length "6 ft" --stock strip-19x38 --date 2024-05-02`,
      ),
    )
    .action(async (options: TwistOptions) => run((kinds) => kinds.twist(options)));

  measure
    .command('spread')
    .description('Several boards of one kind: mean and spread of their twist, bow and crook for the shelf.')
    .option('--stock <key>', 'the key of their kind on the shelf, or the one it will have')
    .option('--size <size>', 'the actual size of that kind, if the shelf does not have it')
    .addOption(chosenOption())
    .option('--twist <rate...>', 'twist of each board, right-handed positive, such as "0.4 deg/m"')
    .option(
      '--bow <length...>',
      'rise of the wide face of each board over the length given with --over, or its curvature ("0.002 /m")',
    )
    .option('--crook <length...>', 'rise of the narrow edge of each board, likewise')
    .option('--over <length>', 'length the rises were read over')
    .option('--date <day>', 'when it was measured; goes into the shelf entry')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown measure spread --stock strip-19x38 --twist "0.4 deg/m" "1.1 deg/m" "-0.2 deg/m" --bow "3 mm" "5 mm" "1 mm" --over "2400 mm" --date 2024-05-02',
      ),
    )
    .action(async (options: SpreadOptions) => run((kinds) => kinds.spread(options)));

  measure
    .command('tap')
    .description('The lowest note of the tapped cloth: how hard is it pulled?')
    .option('--note <frequency...>', 'the lowest note, such as "14 Hz"; several readings are averaged')
    .option('--width <length>', 'free width of the cloth')
    .option('--height <length>', 'free height of the cloth')
    .option('--mass <mass>', 'cloth with its ground, such as "480 g/m2"')
    .option('--plan <file>', 'take width, height and mass from this plan instead')
    .option('--bare', 'with --plan: the cloth has no ground yet', false)
    .option('--error <frequency>', 'how wrong a note may be read (default: 0.25 Hz)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        '\nExamples:\n  sightdown measure tap --width "860 mm" --height "610 mm" --mass "480 g/m2" --note "16 Hz" "16.5 Hz"\n  sightdown measure tap --plan my-plan.yaml --bare --note "18 Hz"',
      ),
    )
    .action(async (options: TapOptions) => run((kinds) => kinds.tap(options)));

  measure
    .command('push')
    .description('A weight on a pad in the middle of the level cloth sinks in: how hard is the cloth pulled?')
    .option('--sag <length...>', 'how much it sinks; several readings are averaged')
    .option('--weight <mass>', 'the weight, such as "500 g"')
    .option('--pad <length>', 'side of the square pad under it (default: 50 mm)')
    .option('--width <length>', 'free width of the cloth')
    .option('--height <length>', 'free height of the cloth')
    .option('--plan <file>', 'take width, height and stiffness of the cloth from this plan instead')
    .option('--stiffness <pull>', 'stiffness of the cloth, such as "50 kN/m", if known')
    .option('--error <length>', 'how wrong a sag may be read (default: 0.5 mm)')
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        '\nExample:\n  sightdown measure push --width "824 mm" --height "574 mm" --weight "500 g" --pad "50 mm" --sag "7 mm"',
      ),
    )
    .action(async (options: PushOptions) => run((kinds) => kinds.push(options)));

  measure
    .command('joint')
    .description('A glued corner with one leg clamped and a weight on the other: how much does the joint give?')
    .option('--stock <key>', 'the key its boards have on the shelf')
    .option('--size <size>', 'their actual size, if the shelf does not have it')
    .addOption(new Option('--lies <way>', 'how the boards lie in the frame').choices(['flat', 'edge']).default('flat'))
    .addOption(
      new Option('--way <way>', 'loaded in the plane of the corner, or out of it')
        .choices(['plane', 'out'])
        .default('plane'),
    )
    .option('--weight <mass>', 'the weight hung on the free leg')
    .option('--arm <length>', 'from the inside of the clamped leg to the weight')
    .option('--movement <length...>', 'how far the free leg moves at the weight; one reading for each corner')
    .option('--error <length>', 'how wrong a movement may be read (default: 0.25 mm)')
    .option('--out <folder>', 'writes the picture of how to set it up there')
    .addOption(overwriteOption())
    .option('--shelf <file>', 'your own shelf, laid over the default one')
    .addHelpText(
      'after',
      under(
        `${units}\n\nGlue the corner as you glue the frame, and wait as long. Clamp one leg to the table right up to the joint, wear eye protection, keep feet from under the weight.\n\nExample:\n  sightdown measure joint --stock strip-19x38 --weight "3 kg" --arm "300 mm" --movement "1.5 mm" "1.9 mm"`,
      ),
    )
    .action(async (options: JointOptions) => run((kinds) => kinds.joint(options)));
}

type Kinds = typeof import('./measure/kinds.js');

async function run(kind: (kinds: Kinds) => string): Promise<void> {
  const { reported } = await import('./measure/report.js');
  const kinds = await import('./measure/kinds.js');
  process.exitCode = reported(() => kind(kinds));
}
