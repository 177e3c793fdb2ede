import * as z from 'zod/mini';
import { barNames, cornerNames } from '../base/names.js';
import { length, oneOf, plainText, quantity, whole } from '../base/schema-parts.js';
import { jointWays } from '../measure/measure-joint.js';
import { boardReadings } from '../plan/board-readings.js';
import { stages } from './sheet.js';

const offStraight = (description: string, example: string) =>
  z.optional(length(-500, 500, 'from -500 mm to 500 mm', description, example));
const perBar = (description: string) =>
  z.optional(
    z
      .strictObject({
        top: offStraight('Of the top bar', '1 mm'),
        bottom: offStraight('Of the bottom bar', '1 mm'),
        left: offStraight('Of the left bar', '1 mm'),
        right: offStraight('Of the right bar', '1 mm'),
      })
      .check(z.meta({ description })),
  );
const offFlat = (description: string, example: string) =>
  z.optional(length(0, 1000, 'from 0 to 1 m', description, example));

/** A filled-in bench sheet: `sheet: 1`. Every reading may be left out; quantities are texts with units, as in plans. */
export const sheetInputSchema = z
  .strictObject({
    sheet: z.literal(1).check(z.meta({ description: 'Format of the file' })),
    plan: z.optional(plainText(200, 'Name of the plan the frame was built by')),
    when: z.optional(oneOf(stages, 'How far the work had come when the readings were taken')),
    diagonals: z.optional(
      z
        .array(length(50, 40_000, 'from 50 mm to 40 m', 'One diagonal, outer corner to outer corner', '1110 mm'))
        .check(z.meta({ description: 'Both diagonals' })),
    ),
    'corner-lift': offFlat('How far the fourth corner stands off a flat table when three are pressed down', '4 mm'),
    lifted: z.optional(oneOf(cornerNames, 'Which corner stands up, seen from the front, the frame on its back')),
    winding: offFlat(
      'Two straight sticks laid along the left and the right bar: how far their far ends disagree',
      '3 mm',
    ),
    bow: perBar('Middle of each bar out of the plane of its corners'),
    'inward-bow': perBar('Middle of each bar out of straight in the plane of the cloth, inward positive'),
    tap: z.optional(
      quantity(
        'frequency',
        { least: 1, most: 500, words: 'from 1 Hz to 500 Hz' },
        'Lowest note of the tapped cloth',
        '14 Hz',
      ),
    ),
    push: z.optional(
      z
        .strictObject({
          weight: quantity(
            'mass',
            { least: 10, most: 20_000, words: 'from 10 g to 20 kg' },
            'Weight laid on the middle of the cloth',
            '500 g',
          ),
          sag: length(0.1, 500, 'from 0.1 mm to 500 mm', 'How far it sank', '7 mm'),
          pad: z.optional(length(5, 300, 'from 5 mm to 300 mm', 'Side of the square pad under it', '50 mm')),
        })
        .check(z.meta({ description: 'A weight in the middle of the cloth lying level' })),
    ),
    weight: z.optional(
      quantity(
        'mass',
        { least: 10, most: 500_000, words: 'from 10 g to 500 kg' },
        'Weight of the frame as it is now',
        '2.8 kg',
      ),
    ),
    moisture: z.optional(
      quantity(
        'percent',
        { least: 2, most: 60, words: 'from 2 % to 60 %' },
        'Moisture of the boards when they were cut',
        '9 %',
      ),
    ),
    frame: z.optional(whole(1, 500, 'Which of the frames this is, where the plan asks for several')),
    student: z.optional(plainText(200, 'Who built it')),
    boards: z.optional(
      z
        .array(
          z.strictObject({
            for: oneOf(barNames, 'The bar the board became'),
            ply: z.optional(whole(1, 4, 'Which ply of that bar')),
            mark: z.optional(plainText(40, 'The mark the board bears in the pile')),
            ...boardReadings(),
          }),
        )
        .check(z.maxLength(16), z.meta({ description: 'The boards it is made of' })),
    ),
    'test-joints': z.optional(
      z
        .array(
          z.strictObject({
            way: oneOf(jointWays, 'How it was loaded: in the plane of the corner, or at right angles to it'),
            weight: quantity(
              'mass',
              { least: 10, most: 100_000, words: 'from 10 g to 100 kg' },
              'Weight hung on the free leg',
              '2 kg',
            ),
            arm: length(20, 3000, 'from 20 mm to 3 m', 'From the inside of the clamped leg to the weight', '300 mm'),
            moves: length(0.05, 300, 'from 0.05 mm to 300 mm', 'How far the free leg moved at the weight', '2 mm'),
          }),
        )
        .check(
          z.maxLength(24),
          z.meta({ description: 'Corners glued the same way beside the frame and loaded at the bench' }),
        ),
    ),
  })
  .check(z.meta({ title: 'Bench sheet', description: 'What was measured of one frame while it was built.' }));

/** A sheet as it stands in the file, its shape checked, before quantities are read. */
export type SheetInput = z.infer<typeof sheetInputSchema>;
