import * as z from 'zod/mini';
import { length, oneOf, plainText, quantity, range, shelfKey, whole } from '../base/schema-parts.js';
import { boardReadings } from '../plan/board-readings.js';

const { bow, crook } = boardReadings();
const over = z.optional(
  length(100, 20_000, 'from 100 mm to 20 m', 'Length the reading was taken over; left out, the whole board', '2000 mm'),
);

const sticks = z
  .strictObject({
    rise: length(
      -500,
      500,
      'from -500 mm to 500 mm',
      'How much the two winding sticks disagree, or a corner stands off a flat table',
      '3 mm',
    ),
    width: length(10, 5000, 'from 10 mm to 5 m', 'Length of the sticks, or width of the board on the table', '400 mm'),
    over,
    for: z.optional(
      oneOf(
        ['right', 'left'],
        'Which hand the twist has: right like a wood screw, where the far stick’s left end stands high',
      ),
    ),
  })
  .check(z.meta({ description: 'Twist as winding sticks show it' }));

/** The boards in hand: `pile: 1`. Quantities are texts with units, as in plans; every reading may be left out. */
export const pileInputSchema = z
  .strictObject({
    pile: z.literal(1).check(z.meta({ description: 'Format of the file' })),
    name: z.optional(plainText(200, 'Where the boards are')),
    boards: z
      .array(
        z.strictObject({
          mark: z.optional(shelfKey('What is chalked on the board, best a letter')),
          stock: shelfKey('Key of the lumber on the shelf'),
          length: length(20, 20_000, 'from 20 mm to 20 m', 'Sound length as it lies there', '2400 mm'),
          cut: z.optional(
            oneOf(
              ['square', 'mitre', 'mitre-on-edge'],
              'Says that this piece is cut already, and how both its ends are: square, or at 45° across the wide face (mitre) or the narrow one (mitre-on-edge); its length is then the long side, on the marked edge or the marked face. It is used as it is where it fits, and never sawn again',
            ),
          ),
          count: z.optional(whole(1, 500, 'How many like this, unread')),
          twist: z.optional(
            z.union([
              quantity(
                'twist',
                { least: -0.7, most: 0.7, words: 'from -40 deg/m to 40 deg/m' },
                'Twist, right-handed positive',
                '0.4 deg/m',
              ),
              sticks,
            ]),
          ),
          bow,
          over,
          hollow: z.optional(
            oneOf(['marked-face', 'other-face'], 'Which wide face is the hollow one; left out, the marked face'),
          ),
          crook,
          'hollow-edge': z.optional(
            oneOf(
              ['marked-edge', 'other-edge'],
              'Which edge is the hollow one; left out, the marked edge. With the marked face towards you and the marked end on your left, the marked edge is the upper one',
            ),
          ),
          knots: z.optional(
            z
              .array(
                range(
                  'length',
                  { least: 0, most: 20_000, words: 'within the board' },
                  'A bad place to cut round, from the marked end',
                  '310..340 mm',
                ),
              )
              .check(z.maxLength(60), z.meta({ description: 'Bad places' })),
          ),
        }),
      )
      .check(
        z.minLength(1),
        z.maxLength(500),
        z.meta({ description: 'One entry for each board, or for several alike that nobody read' }),
      ),
  })
  .check(
    z.meta({
      title: 'Boards in hand',
      description: 'Boards that are there already, new, left over or from an old frame, with what was read of each.',
    }),
  );

/** A pile as it stands in the file, its shape checked, before quantities are read. */
export type PileInput = z.infer<typeof pileInputSchema>;
