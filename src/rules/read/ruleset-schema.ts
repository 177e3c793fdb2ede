import * as z from 'zod/mini';
import { once } from '../../base/once.js';
import { plainText } from '../../base/schema-parts.js';
import { elements } from '../../facts/fact.js';

const described = (description: string) => z.meta({ description });

const parts = once(() => {
  /**
   * A number with the unit of its fact: `3 mm`, `1/400`, `10 %`, 1.5. What fits which fact is checked when the fact is
   * known.
   */
  const amount = z
    .union([z.number(), z.string()])
    .check(described('A number, with the unit of its fact where it has one: 3 mm, 1/400, 10 %, 1.5'));

  const threshold = z
    .union([z.number(), z.string(), z.strictObject({ limit: z.string().check(described('Name of a limit')) })])
    .check(described('A number with the unit of the fact, a word, or a limit by name'));

  const line = z
    .strictObject({
      fact: z.string().check(described('Path of a fact; `sightdown rules facts` lists them')),
      'at-most': z.optional(threshold),
      'at-least': z.optional(threshold),
      above: z.optional(threshold),
      below: z.optional(threshold),
      is: z.optional(threshold),
      'is-not': z.optional(threshold),
    })
    .check(described('One comparison'));

  const condition: z.ZodMiniType<ConditionInput, ConditionInput> = z.lazy(() => conditionParts);
  const several = (meaning: string) => z.array(condition).check(z.meta({ description: meaning, minItems: 1 }));

  const conditionParts = z.union([
    line,
    z.strictObject({ all: several('Every one of these must hold: comparisons, or groups of them') }),
    z.strictObject({ any: several('At least one of these must hold: comparisons, or groups of them') }),
  ]);

  const exampleValues = z
    .union([z.number(), z.string(), z.record(z.string(), z.union([z.number(), z.string()]))])
    .check(described('Value of the fact that the requirement starts with, or several facts by path'));

  const rule = z.strictObject({
    id: z.string().check(described('Readable name, such as bars/inward-bow')),
    title: z.optional(
      plainText(
        80,
        'What the rule looks at, as a line of a report begins: `Spacing of the staples`; left out, its id serves',
      ),
    ),
    each: z.enum(elements).check(described('What the rule is asked of, one by one')),
    applies: z.optional(
      condition.check(described('When the rule is asked at all; otherwise it is silent and says why')),
    ),
    require: condition.check(described('What must hold')),
    otherwise: z
      .union([
        z.enum(['caution', 'stop', 'by-limit']),
        z.strictObject({ stop: threshold, caution: z.optional(threshold) }),
      ])
      .check(described('What it means when it does not hold')),
    say: plainText(
      400,
      'A sentence, with {about} {actual} {limit} {used} {limits.NAME} or any fact path; true whether the requirement holds or not, unless say-clear is given',
    ),
    'say-clear': z.optional(plainText(400, 'Said instead when the requirement holds')),
    'say-stop': z.optional(plainText(400, 'Said instead when it is a stop')),
    'say-below-zero': z.optional(
      plainText(
        400,
        'Said instead when the value is below nought and the requirement does not hold; {actual} is then its size',
      ),
    ),
    do: z
      .array(
        z.union([
          plainText(200, 'What to do next, most useful first'),
          z.strictObject({
            say: plainText(200, 'What to do next'),
            unless: condition.check(described('When the plan has it already: the advice is then left away')),
          }),
        ]),
      )
      .check(z.meta({ minItems: 1 })),
    cautions: z.optional(z.array(z.string()).check(described('Ids of shop-safety cautions'))),
    source: z.string().check(described('Key of rules/sources.yaml, or practice, proposal, measured')),
    examples: z.optional(
      z
        .strictObject({
          clear: exampleValues,
          edge: z.optional(exampleValues),
          fails: exampleValues,
          with: z.optional(
            z
              .record(z.string(), z.union([z.number(), z.string()]))
              .check(described('Other facts of the example, by path')),
          ),
        })
        .check(described('Values that show what the rule does; every one is tried')),
    ),
  });

  const switchedOff = z
    .strictObject({
      id: z.string().check(described('Id of a rule of a ruleset this one builds on')),
      off: plainText(200, 'Why the rule is switched off; the report prints it'),
    })
    .check(described('A rule switched off'));

  const source = z.string().check(described('Key of rules/sources.yaml, or practice, proposal, measured'));
  const of = z.optional(z.string().check(described('Path of a fact that the amounts are multiplied by')));

  const limit = z.union([
    z.strictObject({
      value: amount,
      inches: z.optional(amount.check(described('What stands in its place for plans in inches: 2 in'))),
      of,
      source,
    }),
    z.strictObject({
      stop: amount,
      caution: amount,
      inches: z.optional(
        z
          .strictObject({ stop: amount, caution: amount })
          .check(described('What stands in their place for plans in inches')),
      ),
      of,
      source,
    }),
  ]);

  const ruleset = z.strictObject({
    ruleset: z.literal(1).check(described('Format of the file')),
    name: plainText(100, 'What the ruleset is called in reports'),
    version: z.optional(
      z.union([z.number(), plainText(40, 'Edition of the ruleset, as you count them; reports print it')]),
    ),
    date: z.optional(z.string().check(described('Day of this edition, such as 2026-09-01; reports print it'))),
    points: z.optional(
      z
        .record(z.string(), z.number().check(z.minimum(0), z.maximum(1000)))
        .check(
          described(
            'Points that a plan earns by rules that are clear, by id of the rule; half of them where it is a caution',
          ),
        ),
    ),
    'builds-on': z.optional(
      z.array(z.string()).check(described('Other rulesets; later ones win, and this one wins over all')),
    ),
    limits: z.optional(
      z.record(z.string(), limit).check(described('Limits by name; a limit of the same name replaces the one below')),
    ),
    rules: z.optional(
      z.array(z.union([rule, switchedOff])).check(described('Rules; a rule of the same id replaces the one below')),
    ),
  });
  return { ruleset, rule, switchedOff, limit, exampleValues };
});
type Parts = ReturnType<typeof parts>;

/**
 * One ruleset as a person writes it: `ruleset: 1`. Made when it is first asked for: the shipped rulesets are read before.
 */
export const rulesetInputSchema = (): Parts['ruleset'] => parts().ruleset;

/** What a fact is held against. */
export type ThresholdInput = number | string | { limit: string };

/** A fact and what it is held against, one comparison or several. */
export type LineInput = { fact: string } & {
  [comparison in 'at-most' | 'at-least' | 'above' | 'below' | 'is' | 'is-not']?: ThresholdInput | undefined;
};

/** One comparison, or a group of comparisons and of further groups. */
export type ConditionInput = LineInput | { all: ConditionInput[] } | { any: ConditionInput[] };

/** A ruleset file's shape, after the schema has passed it. */
export type RulesetInput = z.infer<Parts['ruleset']>;
export type RuleInput = z.infer<Parts['rule']>;
export type SwitchedOffInput = z.infer<Parts['switchedOff']>;
export type LimitInput = z.infer<Parts['limit']>;
export type ExampleInput = z.infer<Parts['exampleValues']>;
