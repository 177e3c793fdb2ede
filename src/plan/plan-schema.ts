import * as z from 'zod/mini';
import { barNames } from '../base/names.js';
import { once } from '../base/once.js';
import { boardReadings } from './board-readings.js';
import {
  described,
  eitherQuantity,
  length,
  number,
  oneOf,
  plainText,
  quantity,
  range,
  shelfKey,
  whole,
} from '../base/schema-parts.js';

/**
 * A part that is made when the first plan has it: it has no default, so whether it may be left out need not be asked of
 * it.
 */
function whenFound<T extends z.core.$ZodType>(make: () => T) {
  const part = z.lazy(once(make));
  part._zod.optin = undefined;
  return part;
}

/** What a plan may leave out. */
const later = <T extends z.core.$ZodType>(make: () => T) => z.optional(whenFound(make));

/** A block of keys that a plan may leave out. */
const block = <T extends z.core.$ZodLooseShape>(shape: () => T, description: string) =>
  later(() => described(z.strictObject(shape()), { description }));

const pullLimits = { least: 1, most: 5000, words: 'from 1 N/m to 5000 N/m' };
const lay = oneOf(['flat', 'edge'], 'flat: wide side against the cloth; edge: wide side off the wall');
const stock = shelfKey('Key of the lumber on the shelf');
const giveIn = (words: string) =>
  number(0, 1000, `How much the joint gives ${words}, in extra bar-widths of bar; 0 = rigid`);
const give = whenFound(() =>
  z.union([
    described(giveIn('in every way'), {
      description: 'How much the joint gives, in extra bar-widths of bar; 0 = rigid; replaces the default of the joint',
    }),
    z.strictObject({
      plane: giveIn('in the plane of the cloth'),
      out: giveIn('out of that plane'),
      twist: giveIn('about the length of the bar'),
    }),
  ]),
);

/** A pull as one number, as one by direction, or as two: of the finished painting and while stretching. */
function pulls() {
  const one = quantity('pull', pullLimits, 'Pull of the cloth per length of edge', '200 N/m');
  const pull = z.union([
    one,
    z.strictObject({
      x: z.optional(quantity('pull', pullLimits, 'Pull along the width, on the left and right bars', '250 N/m')),
      y: z.optional(quantity('pull', pullLimits, 'Pull along the height, on the top and bottom bars', '120 N/m')),
    }),
  ]);
  const block = described(
    z.strictObject({
      working: z.optional(pull.check(z.meta({ description: 'Pull of the finished painting; decides the shape' }))),
      peak: z.optional(pull.check(z.meta({ description: 'Pull while stretching; decides strength and twist' }))),
      x: z.optional(one),
      y: z.optional(one),
    }),
    { description: 'Either working and peak, or x and y of the working pull' },
  );
  return z.union([one, block]);
}

const most_crossbars = 12;
const crossbarNames = Array.from({ length: most_crossbars }, (_, i) => `crossbar-${i + 1}`);

/**
 * One plan as a person writes it: `plan: 1`. Every quantity is a text with its unit; what may be left out is optional.
 */
export const planInputSchema = described(
  z.strictObject({
    plan: described(z.literal(1), { description: 'Format of the file' }),
    name: plainText(200, 'What the frame is called'),
    student: z.optional(plainText(200, 'Who builds it, in a class')),
    maker: z.optional(plainText(200, 'Who builds it')),
    count: z.optional(whole(1, 500, 'How many of this frame')),
    face: described(
      z.strictObject({
        width: length(50, 20_000, 'from 50 mm to 20 m', 'Outside width', '900 mm'),
        height: length(50, 20_000, 'from 50 mm to 20 m', 'Outside height', '35-3/8 in'),
      }),
      { description: 'Outside size; its unit system is that of the report' },
    ),
    bars: described(
      z.strictObject({
        stock,
        lay,
        lip: z.optional(length(0, 50, 'from 0 to 50 mm', 'Raised edge that keeps the cloth off the bar', '0 mm')),
        plies: z.optional(whole(1, 4, 'Boards that make up one bar')),
        stack: z.optional(
          oneOf(
            ['side-by-side', 'front-to-back'],
            'How the plies lie: side by side as seen from the front, or one behind the other',
          ),
        ),
        bond: z.optional(oneOf(['none', 'screws', 'glue', 'glue+screws'], 'What holds the plies together')),
        pairing: z.optional(
          oneOf(['opposed', 'unsorted', 'matched'], 'Whether the bows of the plies are set against each other'),
        ),
      }),
      { description: 'The four side bars' },
    ),
    crossbars: later(() =>
      z
        .array(
          z.strictObject({
            runs: oneOf(['upright', 'level'], 'Which way the crossbar runs'),
            at: z.optional(
              z.union([
                number(0, 1, 'Share of the way across'),
                eitherQuantity(
                  [
                    { dimension: 'fraction', limits: { least: 0, most: 1, words: 'between 0 and 1' } },
                    { dimension: 'length', limits: { least: 0, most: 20_000, words: 'within the face' } },
                  ],
                  'Share of the way across, or distance from the left or bottom edge',
                  ['1/2', '450 mm'],
                ),
              ]),
            ),
            stock: z.optional(stock),
            lay: z.optional(lay),
            plies: z.optional(whole(1, 4, 'Boards that make up the crossbar')),
            setback: z.optional(
              length(0, 300, 'from 0 to 300 mm', 'How far its front stays behind the front of the bars', '5 mm'),
            ),
            give: z.optional(give),
          }),
        )
        .check(z.maxLength(most_crossbars), z.meta({ description: 'Crossbars, in any order' })),
    ),
    corners: block(
      () => ({
        cut: z.optional(
          oneOf(
            ['mitre', 'butt', 'half-lap', 'keyed'],
            'How the corner is cut; keyed: dry, tongue in slot, opened with keys',
          ),
        ),
        glue: z.optional(shelfKey('Key of the glue on the shelf, or none')),
        nails: z.optional(
          z.union([
            z.literal('none'),
            z.strictObject({
              use: z.optional(shelfKey('Key of the nail on the shelf')),
              each: z.optional(whole(1, 12, 'Nails in each corner')),
            }),
          ]),
        ),
        brace: z.optional(
          z.union([
            z.literal('none'),
            z.strictObject({
              kind: z.optional(oneOf(['timber', 'ply-gusset', 'steel-angle'], 'What stiffens the corner')),
              leg: z.optional(
                length(20, 5000, 'from 20 mm to 5 m', 'Distance from the corner along the bars', '250 mm'),
              ),
              stock: z.optional(stock),
              lay: z.optional(lay),
              give: z.optional(give),
            }),
          ]),
        ),
        give: z.optional(give),
      }),
      'The four corners',
    ),
    'ply-screws': later(() =>
      z.union([
        z.literal('none'),
        z.strictObject({
          use: z.optional(shelfKey('Key of the screw on the shelf')),
          every: z.optional(length(10, 2000, 'from 10 mm to 2 m', 'Spacing along the bar', '200 mm')),
          pilot: z.optional(length(0.3, 20, 'from 0.3 mm to 20 mm', 'Pilot hole; left out, it is chosen', '2.5 mm')),
        }),
      ]),
    ),
    cloth: block(
      () => ({
        use: z.optional(shelfKey('Key of the cloth on the shelf')),
        pull: z.optional(pulls()),
        fixing: block(
          () => ({
            to: z.optional(oneOf(['back', 'edge'], 'Where the cloth is fixed')),
            every: z.optional(length(5, 500, 'from 5 mm to 500 mm', 'Spacing of staples or tacks', '50 mm')),
            turn: z.optional(length(0, 500, 'from 0 to 500 mm', 'Cloth beyond the fixing line', '50 mm')),
          }),
          'How the cloth is held',
        ),
        roll: z.optional(length(100, 20_000, 'from 100 mm to 20 m', 'Width of the roll', '1500 mm')),
      }),
      'The cloth',
    ),
    ground: block(() => ({ coats: z.optional(whole(0, 20, 'Coats of ground')) }), 'The ground'),
    lumber: block(
      () => ({
        chosen: z.optional(
          oneOf(
            ['unsorted', 'plain', 'picked'],
            'How the boards were chosen: not at all, at a glance, or sighted and checked for twist',
          ),
        ),
        moisture: z.optional(
          quantity(
            'percent',
            { least: 2, most: 60, words: 'from 2 % to 60 %' },
            'Moisture of the wood when it is cut',
            '12 %',
          ),
        ),
        knots: z.optional(oneOf(['none', 'few', 'many'], 'How knotty the boards are')),
        'rough-faces': z.optional(oneOf(['inward', 'outward'], 'Which way rough faces of glued plies look')),
      }),
      'How the lumber was chosen',
    ),
    boards: later(() =>
      z
        .array(
          z.strictObject({
            for: oneOf([...barNames, ...crossbarNames], 'The bar or crossbar this board is for'),
            ply: z.optional(whole(1, 4, 'Which ply of that bar')),
            board: z.optional(shelfKey('Mark of the board of the pile that it is cut from; `place --write` says it')),
            from: z.optional(
              length(
                0,
                20_000,
                'from 0 to 20 m',
                'Where on that board the piece begins, from the marked end; left out, at the end',
                '40 mm',
              ),
            ),
            ...boardReadings(),
          }),
        )
        .check(z.maxLength(64), z.meta({ description: 'Measured boards, used instead of the spread' })),
    ),
    room: block(
      () => ({
        humidity: z.optional(
          range(
            'percent',
            { least: 5, most: 95, words: 'from 5 % to 95 %' },
            'Lowest and highest relative humidity of the year',
            '35..60 %',
          ),
        ),
        temperature: z.optional(
          quantity('temperature', { least: -10, most: 50, words: 'from -10 C to 50 C' }, 'Usual temperature', '20 C'),
        ),
      }),
      'Where the painting will hang',
    ),
    hang: block(
      () => ({
        by: z.optional(
          oneOf(
            ['wire', 'two-hooks', 'd-rings', 'cleat', 'none'],
            'What it hangs by: a wire, two hooks at ring screws, strap hangers on the backs, or bevelled strips under the top bar',
          ),
        ),
        drop: z.optional(length(0, 10_000, 'from 0 to 10 m', 'From the top of the frame down to the rings', '180 mm')),
        from: z.optional(oneOf(['inside', 'back'], 'Which face of the bar the rings are screwed into')),
        hooks: z.optional(whole(1, 4, 'Hooks in the wall')),
        slack: z.optional(
          length(
            0,
            2000,
            'from 0 to 2 m',
            'How far a finger draws the middle of the wire up from the straight line between the rings',
            '60 mm',
          ),
        ),
      }),
      'How it hangs',
    ),
    spend: block(
      () => ({ limit: z.optional(number(0, 1_000_000, 'Most the materials may cost, in the currency of the shelf')) }),
      'What it may cost',
    ),
    door: later(() =>
      described(
        z.strictObject({
          width: length(100, 20_000, 'from 100 mm to 20 m', 'Clear width', '760 mm'),
          height: length(100, 20_000, 'from 100 mm to 20 m', 'Clear height', '1980 mm'),
        }),
        { description: 'The smallest door the finished frame must pass' },
      ),
    ),
  }),
  {
    title: 'Plan of a painting frame',
    description: 'One frame, or several alike: size, bars, corners, cloth, room and hanging.',
  },
);

/** A plan as it stands in the file, after its shape was checked and before quantities are read. */
export type PlanInput = z.infer<typeof planInputSchema>;
