import * as z from 'zod/mini';
import { dayNumber, weekdays } from '../base/days.js';
import { length, number, oneOf, plainText, quantity, whole, type SchemaFault } from '../base/schema-parts.js';

/** How pieces are cut. */
export const sawKinds = ['mitre-box', 'power', 'hand', 'none'] as const;
export type SawKind = (typeof sawKinds)[number];

/** A text that a reader must understand, with the problem where it does not. */
const checked = (
  good: (text: string) => boolean,
  problem: string,
  allowed: string,
  meta: { readonly description: string; readonly pattern: string; readonly examples: readonly string[] },
) =>
  z.string().check(
    z.check<string>((check) => {
      if (!good(check.value))
        (check.issues as object[]).push({
          code: 'custom',
          input: check.value,
          params: { problem, allowed } satisfies SchemaFault,
        });
    }),
    z.meta({ ...meta, examples: [...meta.examples] }),
  );

const day = (description: string) =>
  checked((text) => dayNumber(text) !== null && text < '3000', 'not-a-day', 'a day of the calendar: year, month, day', {
    description,
    pattern: '^\\d{4}-\\d\\d-\\d\\d$',
    examples: ['2027-01-12'],
  });
const clock = z.optional(
  checked((text) => /^([01]?\d|2[0-3]):[0-5]\d$/u.test(text), 'not-a-time', 'hours and minutes', {
    description: 'When it begins; left out, the same hour every time',
    pattern: '^([01]?\\d|2[0-3]):[0-5]\\d$',
    examples: ['18:30'],
  }),
);
const lasts = quantity(
  'time',
  { least: 0.25, most: 16, words: 'from 15 min to 16 h' },
  'How long a session lasts',
  '90 min',
);
const people = z.optional(whole(1, 500, 'How many work at a time; left out, one for each frame'));
const price = number(0, 1_000_000, 'Price, in the currency of the shelf');
const side = (what: string) => length(50, 20_000, 'from 50 mm to 20 m', what, '500 mm');

/** The workshop: `shop: 1`. Everything but the sessions may be left out; what is left out is not counted. */
export const shopInputSchema = z
  .strictObject({
    shop: z.literal(1).check(z.meta({ description: 'Format of the file' })),
    name: z.optional(plainText(200, 'What the workshop is called')),
    sessions: z.optional(
      z
        .union([
          z.strictObject({
            on: z
              .array(oneOf(weekdays, 'A day of the week'))
              .check(z.minLength(1), z.maxLength(7), z.meta({ description: 'The days of the week' })),
            from: day('The first day'),
            'not-on': z.optional(
              z.array(day('A day without a session')).check(z.maxLength(100), z.meta({ description: 'Holidays' })),
            ),
            at: clock,
            length: lasts,
            people,
          }),
          z
            .array(z.strictObject({ date: day('The day'), at: clock, length: lasts, people }))
            .check(z.minLength(1), z.maxLength(200)),
        ])
        .check(z.meta({ description: 'When people work: days of the week, or a list of dates' })),
    ),
    clamps: z.optional(
      z
        .strictObject({
          corner: z.optional(whole(0, 10_000, 'Corner clamps: one holds one corner')),
          bar: z.optional(whole(0, 10_000, 'Clamps that press the plies of a bar together')),
        })
        .check(z.meta({ description: 'Clamps of the workshop; what is left out is not counted' })),
    ),
    saws: z.optional(
      z
        .array(
          z.strictObject({
            kind: oneOf(sawKinds, 'How it cuts; none where the shop cuts the pieces'),
            count: z.optional(whole(1, 500, 'How many')),
            most: z.optional(length(5, 500, 'from 5 mm to 500 mm', 'How high a piece may stand in it', '90 mm')),
          }),
        )
        .check(z.minLength(1), z.maxLength(20), z.meta({ description: 'Saws; left out, they are not counted' })),
    ),
    'flat-places': z.optional(whole(0, 500, 'Flat places on which a frame is glued; 0 where no table is flat')),
    'moisture-meter': z.optional(
      z.boolean().check(z.meta({ description: 'False where nothing reads the moisture of wood' })),
    ),
    tools: z.optional(
      z
        .array(
          z.strictObject({
            name: plainText(100, 'What it is'),
            price,
            count: z.optional(whole(1, 1000, 'How many are bought')),
          }),
        )
        .check(
          z.maxLength(100),
          z.meta({ description: 'Tools that are bought for the frames; their price is shared out' }),
        ),
    ),
    'compare-with': z.optional(
      z
        .strictObject({ price, for: z.strictObject({ width: side('Its width'), height: side('Its height') }) })
        .check(z.meta({ description: 'What a bought frame of this size costs here' })),
    ),
  })
  .check(
    z.meta({ title: 'Workshop', description: 'When people work, how many they are, and what they have to work with.' }),
  );

/** A workshop as it stands in the file, its shape checked, before quantities are read. */
export type ShopInput = z.infer<typeof shopInputSchema>;
