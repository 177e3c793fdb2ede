import { measureJoint, type JointWay } from '../../measure/measure-joint.js';
import { digits } from '../../measure/reading.js';
import { spreadFromReadings } from '../../measure/spread.js';
import { solidSection } from '../../model/section.js';
import { testJointPicture } from '../../report/drawings/test-joint.js';
import type { JointOptions } from '../option-types.js';
import { allOptions, needed, neededQuantity, optionalValue, readingsOption } from '../quantities.js';
import { writeFolder } from '../write-files.js';
import { pasteText, readingText, spreadText } from './report.js';
import { shelfOption, sizeIfNamed, sizeOf } from './shelf-entry.js';

const words = { plane: 'In the plane of the corner', out: 'At right angles to its plane' } as const;

/**
 * `measure joint`: how much a glued corner gives, from how far its free leg moves under a weight; lines for the bench
 * sheet, the plan and the shelf. Throws BadOption, RangeError.
 */
export function joint(options: JointOptions): string {
  const { shelf, stock, weight, arm, moves, error_mm } = allOptions({
    shelf: () => shelfOption(options.shelf),
    stock: () => needed('stock', options.stock, 'strip-19x38'),
    weight: () => neededQuantity('weight', options.weight, 'mass', '2 kg'),
    arm: () => neededQuantity('arm', options.arm, 'length', '300 mm'),
    moves: () => readingsOption('movement', options.movement, 'length', '2 mm'),
    error_mm: () => optionalValue('error', options.error, 'length', '0.25 mm'),
    size: () => sizeIfNamed(options),
  });
  const { thickness_mm, width_mm } = sizeOf(shelf, stock, options.size);
  const lumber = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
  const E_MPa = lumber?.E_MPa ?? shelf.lumber_defaults.E_MPa;
  const G_MPa = lumber?.G_MPa ?? E_MPa / shelf.lumber_defaults.E_over_G;
  const [w_mm, d_mm] = options.lies === 'flat' ? [width_mm, thickness_mm] : [thickness_mm, width_mm];
  const way: JointWay = options.way;
  const bar = solidSection(w_mm, d_mm, E_MPa, G_MPa);
  const readings = moves.map(({ value }) =>
    measureJoint(
      {
        way,
        weight_g: weight.value,
        arm_mm: arm.value,
        moves_mm: value,
        ...(error_mm === undefined ? {} : { errors: { moves_mm: error_mm } }),
      },
      bar,
    ),
  );
  const inch = weight.inch || arm.inch || moves.some((one) => one.inch);
  const together = spreadFromReadings(
    readings.map(({ value }) => value),
    'bar-widths',
  );
  const many = readings.length > 1;
  if (options.out !== undefined)
    writeFolder(options.out, [{ name: 'test-joint.svg', text: testJointPicture(way).svg }], {
      overwrite: options.overwrite,
    });
  const give = digits(together.mean, 2);
  const sheet = moves.map(
    ({ value }) =>
      `  - { way: ${way}, weight: ${digits(weight.value / 1000)} kg, arm: ${digits(arm.value)} mm, moves: ${digits(value)} mm }`,
  );
  return [
    `${words[way]}, bars ${digits(w_mm)} mm wide in the plane and ${digits(d_mm)} mm deep.\n`,
    options.out === undefined
      ? 'A picture of how to set it up: add --out FOLDER.\n\n'
      : `How to set it up: ${options.out}/test-joint.svg\n\n`,
    ...readings.map((reading, i) => readingText(reading, inch, many ? `Corner ${i + 1}` : '')),
    many
      ? spreadText(
          { ...together, note: 'Joints differ from one to the next; a frame has four of them.' },
          'bar-widths',
          inch,
          'Give',
        )
      : '',
    pasteText(
      'For the bench sheet of the frame they were glued beside, so that learn counts them:',
      `test-joints:\n${sheet.join('\n')}`,
    ),
    pasteText(
      'For a plan, in place of the shelf’s number:',
      way === 'plane'
        ? `corners: { give: { plane: ${give}, out: 4, twist: 4 } }   # out and twist: load the corner the other way as well`
        : `corners: { give: { plane: 4, out: ${give}, twist: ${give} } }   # plane: load the corner the other way as well`,
    ),
  ].join('');
}
