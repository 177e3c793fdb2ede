import * as z from 'zod/mini';
import { once } from '../base/once.js';
import { length, number, oneOf, plainText, quantity, shelfKey, size, whole } from '../base/schema-parts.js';
import type { Dimension } from '../base/unit-table.js';

const positive = (
  dimension: Dimension,
  least: number,
  most: number,
  unit: string,
  description: string,
  example: string,
) => quantity(dimension, { least, most, words: `from ${least} ${unit} to ${most} ${unit}` }, description, example);
const percent = (most: number, description: string) => positive('percent', 0, most, '%', description, '2 %');
const hours = (description: string, example = '24 h') => positive('time', 0, 2000, 'h', description, example);
const price = (description = 'Price of one, in the currency of the shelf') => number(0, 1_000_000, description);
/** Joints whose give a shelf may say. */
export const gives = [
  'mitre-glued-nailed',
  'mitre-glued',
  'mitre-nailed',
  'nothing',
  'half-lap-glued',
  'butt-glued',
  'keyed',
  'braced-glued',
  'braced-dry',
  'crossbar-glued',
  'crossbar-dry',
] as const;

/**
 * A shelf as a person writes it: `shelf: 1`. Everything else may be left out in a shelf laid over another. Made when it
 * is first asked for: the shipped shelf is read before.
 */
export const shelfInputSchema = once(() => {
  const sourceKey = shelfKey('Key in rules/sources.yaml, or practice, proposal, measured');
  /** What every entry may say about where its numbers come from. */
  const origin = {
    source: z.optional(sourceKey),
    sources: z.optional(
      z
        .record(z.string(), sourceKey)
        .check(z.meta({ description: 'Sources of single numbers, where they differ from `source`' })),
    ),
  };
  const block = <T extends z.core.$ZodLooseShape>(shape: T, description: string) =>
    z.optional(z.strictObject({ ...shape, ...origin }).check(z.meta({ description })));
  const entries = <T extends z.core.$ZodLooseShape>(shape: T, description: string) =>
    z.optional(
      z.record(shelfKey('Name of the entry'), z.strictObject({ ...shape, ...origin })).check(z.meta({ description })),
    );

  const normal = (dimension: 'twist' | 'curvature', most: number, words: string, example: string) =>
    z.strictObject({
      mean: quantity(dimension, { least: -most, most, words }, 'Mean', example),
      sd: quantity(dimension, { least: 0, most, words: `${words}, not negative` }, 'Standard deviation', example),
    });
  const twist = normal('twist', 0.7, 'up to 40 deg/m', '0.7 deg/m');
  const curve = normal('curvature', 0.2, 'up to 0.2 /m', '0.005 /m');
  const warp = z.strictObject({ twist: z.optional(twist), bow: z.optional(curve), crook: z.optional(curve) });
  const spread = { unsorted: z.optional(warp), plain: z.optional(warp), picked: z.optional(warp) };

  const stiffness = {
    E: z.optional(positive('stress', 100, 50_000, 'MPa', 'Stiffness along the grain, mean', '9000 MPa')),
    G: z.optional(positive('stress', 10, 5000, 'MPa', 'Shear stiffness, mean', '560 MPa')),
    'E-over-G': z.optional(number(2, 60, 'Stiffness over shear stiffness, instead of G')),
    density: z.optional(positive('density', 50, 1500, 'kg/m3', 'Density as used', '420 kg/m3')),
    species: z.optional(shelfKey('Key of the species')),
  };

  /** How a shop sells something: so many pieces, or so much of it, at a price. */
  const packs = <T extends z.core.$ZodType>(holds: T) =>
    z.optional(
      z
        .array(
          z.strictObject({
            holds,
            price: price('Price of the pack'),
            called: z.optional(plainText(20, 'What the pack is called: box, bottle, packet')),
          }),
        )
        .check(z.minLength(1), z.maxLength(6), z.meta({ description: 'The packs it is sold in' })),
    );
  const piecesHeld = whole(1, 100_000, 'Pieces in the pack');
  const volumeHeld = positive('volume', 1, 100_000, 'ml', 'What the pack holds', '250 ml');
  const roll = (description = 'Width of the roll') =>
    length(100, 20_000, 'from 100 mm to 20 m', description, '1500 mm');
  const soldBy = length(1, 20_000, 'from 1 mm to 20 m', 'Cut off the roll in whole steps of this', '500 mm');
  const legLength = length(2, 1000, 'from 2 mm to 1 m', 'Leg of a staple, or of an angle from its corner', '10 mm');
  const thickness = length(0.3, 100, 'from 0.3 mm to 100 mm', 'Thickness', '9 mm');
  const sheet = size(50, 5000, 'Size of a sheet');
  const stripLength = length(100, 20_000, 'from 100 mm to 20 m', 'Length of a strip', '2400 mm');
  const twins = <T extends z.core.$ZodLooseShape>(shape: T) =>
    z.optional(z.strictObject(shape).check(z.meta({ description: 'What an inch shop sells in its place' })));

  const widths = number(0, 1000, 'Extra bar-widths of bar that would yield as much');
  const give = z.optional(
    z.union([
      widths,
      z.strictObject({ plane: widths, out: widths, twist: widths }).check(
        z.meta({
          description: 'The same by direction: in the plane of the cloth, out of it, about the length of the bar',
        }),
      ),
    ]),
  );

  return z
    .strictObject({
      shelf: z.literal(1).check(z.meta({ description: 'Format of the file' })),
      name: z.optional(plainText(200, 'What the shelf is called')),
      prices: block(
        {
          currency: z.optional(plainText(12, 'Currency of all prices')),
          demo: z.optional(z.boolean().check(z.meta({ description: 'True when the prices are invented' }))),
        },
        'What holds for all prices',
      ),
      'lumber-defaults': block(stiffness, 'What a lumber entry falls back to'),
      spread: block(spread, 'How natural boards vary, by how they were chosen'),
      species: entries(
        {
          name: plainText(100, 'Name for people'),
          gravity: number(0.1, 1.3, 'Oven-dry specific gravity, for fasteners'),
          radial: percent(2, 'Change of size across the rings for each 1 % of moisture'),
          tangential: percent(2, 'Change of size along the rings for each 1 % of moisture'),
        },
        'Species of wood',
      ),
      lumber: entries(
        {
          nominal: z.optional(plainText(40, 'What the shop calls the size')),
          size: size(5, 300, 'Actual cross-section'),
          inches: z.optional(size(5, 300, 'The same cross-section as an inch shop gives it')),
          ...stiffness,
          lengths: z.optional(
            z
              .array(
                z.strictObject({
                  length: length(100, 20_000, 'from 100 mm to 20 m', 'Length of the board', '2400 mm'),
                  inches: z.optional(
                    length(100, 20_000, 'from 100 mm to 20 m', 'Length an inch shop sells in its place', '8 ft'),
                  ),
                  price: price('Price of one board'),
                  available: z.optional(whole(0, 100_000, 'How many there are; left out, as many as wanted')),
                }),
              )
              .check(z.minLength(1), z.maxLength(40)),
          ),
          spread: z.optional(z.strictObject(spread)),
        },
        'Lumber; only its size is required',
      ),
      nails: entries(
        {
          name: plainText(100, 'Name for people'),
          diameter: length(0.3, 20, 'from 0.3 mm to 20 mm', 'Diameter of the wire', '1.2 mm'),
          length: length(5, 400, 'from 5 mm to 400 mm', 'Length', '25 mm'),
          yield: z.optional(positive('stress', 100, 3000, 'MPa', 'Bending yield of the wire', '690 MPa')),
          price: price(),
          packs: packs(piecesHeld),
        },
        'Nails and brads',
      ),
      screws: entries(
        {
          name: plainText(100, 'Name for people'),
          shank: length(0.5, 20, 'from 0.5 mm to 20 mm', 'Diameter of the smooth part', '3.5 mm'),
          root: length(0.3, 20, 'from 0.3 mm to 20 mm', 'Diameter at the bottom of the thread', '2.9 mm'),
          head: length(0.5, 50, 'from 0.5 mm to 50 mm', 'Diameter of the head', '7 mm'),
          length: length(5, 400, 'from 5 mm to 400 mm', 'Length', '32 mm'),
          thread: z.optional(
            length(
              2,
              400,
              'from 2 mm to 400 mm',
              'Threaded length from the tip; left out, two thirds of the length',
              '21 mm',
            ),
          ),
          yield: z.optional(positive('stress', 100, 3000, 'MPa', 'Bending yield', '620 MPa')),
          price: price(),
          packs: packs(piecesHeld),
        },
        'Wood screws',
      ),
      drills: block(
        {
          inch: z.optional(
            z.array(length(0.3, 30, 'from 0.3 mm to 30 mm', 'Diameter', '5/64 in')).check(z.maxLength(100)),
          ),
          metric: z.optional(
            z.array(length(0.3, 30, 'from 0.3 mm to 30 mm', 'Diameter', '2 mm')).check(z.maxLength(100)),
          ),
        },
        'Drills on hand',
      ),
      glues: entries(
        {
          name: plainText(100, 'Name for people'),
          spread: positive('mass-per-area', 1, 2000, 'g/m2', 'Glue on a glue line', '200 g/m2'),
          density: positive('density', 300, 3000, 'kg/m3', 'Density', '1.1 g/ml'),
          open: hours('Time until the parts must be together', '5 min'),
          clamp: hours('Time in clamps', '60 min'),
          handle: hours('Time until it may be moved with care', '3 h'),
          cure: hours('Time to full strength'),
          coldest: positive('temperature', -20, 40, 'C', 'Coldest use', '10 C'),
          'price-per-100ml': price('Price of 100 ml'),
          packs: packs(volumeHeld),
        },
        'Glues',
      ),
      cloths: entries(
        {
          name: plainText(100, 'Name for people'),
          mass: positive('mass-per-area', 10, 3000, 'g/m2', 'Mass', '340 g/m2'),
          roll: length(100, 20_000, 'from 100 mm to 20 m', 'Width of the roll', '1500 mm'),
          'price-per-m': price('Price of a metre of roll'),
          stiffness: positive(
            'pull',
            100,
            10_000_000,
            'N/m',
            'Pull for a given stretch, per metre of width',
            '50 kN/m',
          ),
          shrinkage: percent(30, 'Shrinkage on first wetting'),
          pull: z.optional(
            positive('pull', 1, 5000, 'N/m', 'Working pull reached with it, for plans that name none', '200 N/m'),
          ),
          'sold-by': z.optional(soldBy),
          inches: twins({ roll: z.optional(roll()), 'sold-by': z.optional(soldBy) }),
        },
        'Cloths',
      ),
      grounds: entries(
        {
          name: plainText(100, 'Name for people'),
          'coat-mass': positive('mass-per-area', 0, 5000, 'g/m2', 'Dry mass of one coat', '110 g/m2'),
          'coat-volume': positive('volume-per-area', 0, 5000, 'ml/m2', 'Wet volume of one coat', '150 ml/m2'),
          'price-per-100ml': price('Price of 100 ml'),
          crack: percent(50, 'Stretch at which it cracks'),
          dry: hours('Time before the next coat', '4 h'),
          packs: packs(volumeHeld),
        },
        'Grounds',
      ),
      joints: block(
        {
          give: z.optional(
            z.strictObject(
              Object.fromEntries(gives.map((name) => [name, give])) as Record<(typeof gives)[number], typeof give>,
            ),
          ),
          bond: z.optional(
            z.strictObject({
              mitre: z.optional(positive('stress', 0, 50, 'MPa', 'Strength of the glued faces', '2 MPa')),
              butt: z.optional(positive('stress', 0, 50, 'MPa', 'Strength of the glued faces', '2 MPa')),
              'half-lap': z.optional(positive('stress', 0, 50, 'MPa', 'Strength of the glued faces', '2.5 MPa')),
            }),
          ),
        },
        'How corner and crossing joints give, and how strong their glue is',
      ),
      hardware: entries(
        {
          name: plainText(100, 'Name for people'),
          kind: oneOf(
            ['hook', 'wire', 'ring', 'strap', 'cleat'],
            'What it is; strap: a ring on a strap screwed to the back; cleat: a pair of bevelled strips, its threads those of one of its screws',
          ),
          rating: positive('force', 1, 1_000_000, 'N', 'Load it is sold for; breaking load of a wire', '200 N'),
          'thread-diameter': z.optional(length(0, 30, 'from 0 to 30 mm', 'Diameter of its thread', '3 mm')),
          'thread-length': z.optional(length(0, 300, 'from 0 to 300 mm', 'Length of its thread', '16 mm')),
          mass: positive('mass', 0, 100_000, 'g', 'Mass of one, or of a metre of wire', '8 g'),
          price: price('Price of one, or of a metre of wire'),
          packs: packs(piecesHeld),
          'sold-by': z.optional(soldBy),
          inches: twins({ 'sold-by': z.optional(soldBy) }),
        },
        'Hooks, wires and rings',
      ),
      supplies: entries(
        {
          name: plainText(100, 'Name for people'),
          kind: oneOf(['staple', 'angle', 'plywood', 'lip', 'key', 'backing'], 'What it is'),
          leg: z.optional(legLength),
          thickness: z.optional(thickness),
          size: z.optional(sheet),
          length: z.optional(stripLength),
          inches: twins({
            leg: z.optional(legLength),
            thickness: z.optional(thickness),
            size: z.optional(sheet),
            length: z.optional(stripLength),
          }),
          packs: packs(piecesHeld),
        },
        'Staples, steel angles, plywood, strips for the lip, corner keys, backing paper',
      ),
      cutting: block(
        {
          kerf: z.optional(length(0, 20, 'from 0 to 20 mm', 'Width of the saw cut', '3 mm')),
          'end-trim': z.optional(length(0, 500, 'from 0 to 500 mm', 'Cut off each end of a board first', '15 mm')),
          'knot-waste': z.optional(
            z.strictObject({
              none: z.optional(percent(90, 'Share lost')),
              few: z.optional(percent(90, 'Share lost')),
              many: z.optional(percent(90, 'Share lost')),
            }),
          ),
        },
        'Allowances for cutting',
      ),
      learned: z.optional(
        z
          .record(
            plainText(120, 'Place of the number on the shelf'),
            z.strictObject({
              frames: whole(0, 100_000, 'Finished frames that told of it'),
              boards: z.optional(whole(0, 100_000, 'Boards that were read one by one')),
              joints: z.optional(whole(0, 100_000, 'Test corners that were loaded')),
              date: z.optional(plainText(10, 'The day it was learned, such as 2027-03-04')),
              before: z
                .union([
                  z.number(),
                  z.string(),
                  z.strictObject({ mean: plainText(60, 'Mean'), sd: plainText(60, 'Standard deviation') }),
                  z.strictObject({ plane: widths, out: widths, twist: widths }),
                ])
                .check(z.meta({ description: 'What the shelf said before; learning again starts from it' })),
            }),
          )
          .check(z.meta({ description: 'Numbers learned from finished frames, written by the tool' })),
      ),
      proposals: z.optional(
        z.record(
          shelfKey('Name of the number'),
          z.strictObject({
            value: number(-1e9, 1e9, 'The number'),
            inches: z.optional(
              length(
                0,
                1000,
                'from 0 to 1 m',
                'What stands in its place for plans in inches, where it is a length',
                '3/4 in',
              ),
            ),
            unit: z.optional(plainText(20, 'Its unit')),
            source: z.optional(sourceKey),
          }),
        ),
      ),
    })
    .check(
      z.meta({
        title: 'Shelf',
        description: 'Lumber, fasteners, glues, cloths, hardware and the editable numbers behind the sums.',
      }),
    );
});

/** A shelf as it stands in the file, after its shape was checked. */
export type ShelfInput = z.infer<ReturnType<typeof shelfInputSchema>>;
