import { orNearest, quoted, worder, type Wording } from '../../base/wording.js';

/** What a wording may be told. */
export interface Details {
  readonly value?: unknown;
  readonly allowed?: string;
  readonly nearest?: string | undefined;
  readonly name?: string;
}

/** What somebody wrote, between backticks. */
export const tick = (value: unknown): string => `\`${quoted(value)}\``;
/** Advice where somebody wrote a decimal comma. */
const comma = (value: unknown): string | null => {
  const [written] = /\d+,\d+/u.exec(String(value)) ?? [];
  return written === undefined ? null : `Write a point for the decimals: ${written.replace(',', '.')}, not ${written}.`;
};
/** The first thing that a list of what is allowed names. */
const firstWord = (allowed = 'the first'): string =>
  tick(/`([^`]+)`/u.exec(allowed)?.[1] ?? allowed.split(/,| or /u)[0]);

/** Every sentence the reader of rulesets can say beyond the shape of the document, by code. */
export const wordings = {
  'bad-rule-id': (d) => ({
    found: tick(d.value),
    allowed: 'small letters and figures, with dashes and slashes between them, at most 60',
    hint: 'Give the rule a readable id, such as `bars/inward-bow`.',
  }),
  'bad-limit-name': (d) => ({
    found: tick(d.value),
    allowed: 'small letters and figures with dashes between them, at most 60',
    hint: 'Give the limit a readable name, such as `inward-bow`.',
  }),
  'duplicate-rule': (d) => ({
    found: `${tick(d.value)} a second time`,
    allowed: 'each rule once in a file',
    hint: 'Keep one of the two, or give the other an id of its own.',
  }),
  'no-rules': (d) => ({
    found: `no rule at all in ${tick(d.value)}`,
    allowed: 'at least one rule, of its own or built upon',
    hint: 'Add `builds-on: [ baseline.yaml ]`, or a rule: a ruleset that asks nothing would clear everything.',
  }),
  'too-many-rules': (d) => ({
    found: `${String(d.value)} entries`,
    allowed: `at most ${d.allowed}`,
    hint: 'Split the file, or check that it is the right one.',
  }),
  'unknown-fact': (d) => ({
    found: tick(d.value),
    allowed: 'a fact of the catalogue (`sightdown rules facts`)',
    hint: orNearest(d.nearest, 'Run `sightdown rules facts` for the names of all facts, and write one of them.'),
  }),
  'fact-of-another': (d) => ({
    found: `${tick(d.value)}, a fact of each ${d.name}`,
    allowed: `facts of each ${d.allowed}, or of the frame`,
    hint: `Ask each ${d.name} instead, or choose another fact.`,
  }),
  'fact-by-cause': (d) => ({
    found: tick(d.value),
    allowed: 'a fact with one value for each element',
    hint: 'This fact is split by cause and is for reading only; ask for the chance or the spread instead.',
  }),
  'unknown-limit': (d) => ({
    found: `the limit ${tick(d.value)}`,
    allowed: d.allowed ?? 'a limit of this ruleset or of one it builds on',
    hint: orNearest(d.nearest, 'Add it under `limits:`.'),
  }),
  'empty-group': (d) => ({
    found: `an empty \`${d.name}\``,
    allowed: 'at least one line',
    hint: 'A group without lines would hold for everything: add a line, or remove the group.',
  }),
  'deep-group': (d) => ({
    found: `\`${d.name}\` inside ${d.allowed} other groups`,
    allowed: `at most ${d.allowed} groups inside each other`,
    hint: 'Make two rules of it: nobody can read so many groups.',
  }),
  'empty-ruleset': () => ({
    found: 'an empty file',
    allowed: 'a ruleset',
    hint: 'Start from `ruleset: 1`, a `name:` and `builds-on: [ baseline ]`, each on a line of its own.',
  }),
  'empty-list': (d) => ({
    found: `an empty \`${d.name}\``,
    allowed: 'at least one entry',
    hint: 'Say at least one thing a person can do next.',
  }),
  'no-comparison': (d) => ({
    found: `${tick(d.value)} without a comparison`,
    allowed: 'one of at-most, at-least, above, below, is, is-not',
    hint: 'Say what the fact must be.',
  }),
  'several-comparisons': (d) => ({
    found: `${tick(d.value)} with ${d.name}`,
    allowed: 'one comparison in a line',
    hint: 'Make two lines of it, under `all:`.',
  }),
  'unit-misfit': (d) => ({
    found: tick(d.value),
    allowed: `${d.allowed}, for ${d.name}`,
    hint: comma(d.value) ?? 'Write the number with the unit of its fact.',
  }),
  'limit-misfit': (d) => ({
    found: `the limit ${tick(d.value)}`,
    allowed: `${d.allowed}, for ${d.name}`,
    hint: 'Change the limit, or add `of:` with the fact it is a share of.',
  }),
  'of-misfit': (d) => ({
    found: `the limit ${tick(d.value)}, a share of ${d.name}`,
    allowed: d.allowed ?? '',
    hint: 'Choose a fact of the same unit that the rule can see.',
  }),
  'not-an-amount': (d) => ({
    found: tick(d.value),
    allowed: 'a finite number, with the unit of the facts it is for',
    hint: comma(d.value) ?? 'Write it like `3 mm`, `1/400`, `10 %` or 1.5.',
  }),
  'bare-limit': (d) => ({
    found: `${tick(d.value)} alone`,
    allowed: 'a block with the amount and its source',
    hint: `Write \`${d.name}: { value: ${quoted(d.value)}, source: practice }\`.`,
  }),
  'limit-form': (d) => ({
    found: `the limit ${tick(d.value)}`,
    allowed: `${d.allowed}, as the rule ${d.name} uses it`,
    hint: d.nearest ?? '',
  }),
  'word-measured': (d) => ({
    found: `\`${d.name}\` with ${tick(d.value)}`,
    allowed: '`is` or `is-not`, because this fact is a word',
    hint: 'Write `is:` and one of the words that `sightdown rules facts` lists for it.',
  }),
  'number-named': (d) => ({
    found: `\`${d.name}\` with ${tick(d.value)}`,
    allowed: '`at-most`, `at-least`, `above` or `below`, because this fact is measured',
    hint: 'Two measured numbers are never quite equal: compare them by size.',
  }),
  'not-its-word': (d) => ({
    found: tick(d.value),
    allowed: d.allowed ?? '',
    hint: orNearest(d.nearest, `Write one of its words, such as ${firstWord(d.allowed)}.`),
  }),
  'never-met': (d) => ({
    found: `\`${d.name}\` with ${tick(d.value)}`,
    allowed: 'an amount of zero or more, because the size of this fact is compared',
    hint: 'Its size is never below zero, so this could never be told apart: use `above` or `at-least`.',
  }),
  'two-thresholds': (d) => ({
    found: `the limit ${tick(d.value)}, which has two thresholds`,
    allowed: 'a limit with one `value`, unless the rule says `otherwise: by-limit`',
    hint: 'Write `otherwise: by-limit`, or use a limit with one value.',
  }),
  'one-threshold': (d) => ({
    found: `\`otherwise: by-limit\` with ${tick(d.value)}`,
    allowed: 'exactly one limit with `stop` and `caution`',
    hint: 'Give the limit both `stop` and `caution` (in your own file, if you replaced it there), or let the rule say `caution` or `stop`.',
  }),
  'turned-thresholds': (d) => ({
    found: `${d.value as string}`,
    allowed: d.allowed ?? '',
    hint: 'Swap the two numbers.',
  }),
  'thresholds-of-one-line': () => ({
    found: 'thresholds for several lines',
    allowed: 'a `require` of one measured line',
    hint: 'Say `caution` or `stop`, or split the rule.',
  }),
  'caution-differs': (d) => ({
    found: tick(d.value),
    allowed: `the same as \`require\` says, ${d.allowed}`,
    hint: 'Leave `caution:` out: what does not meet `require` is a caution.',
  }),
  'unknown-placeholder': (d) => ({
    found: `{${quoted(d.value)}}`,
    allowed: '{about}, {actual}, {limit}, {used}, {limits.NAME} or a fact the rule can see',
    hint: orNearest(d.nearest, 'Remove the braces, or name a fact.'),
  }),
  'unknown-caution': (d) => ({
    found: tick(d.value),
    allowed: d.allowed ?? '',
    hint: orNearest(d.nearest, `Write one of these, such as ${firstWord(d.allowed)}, or leave the caution out.`),
  }),
  'unknown-rule-source': (d) => ({
    found: tick(d.value),
    allowed: 'a key of rules/sources.yaml',
    hint: orNearest(d.nearest, 'Use `practice`, `proposal` or `measured`, or add the source to the list.'),
  }),
  'no-examples': () => ({
    found: 'a rule without examples',
    allowed: '`examples: { clear: …, edge: …, fails: … }`',
    hint: 'Give a value that is clear, the last clear one, and one that fails.',
  }),
  'no-edge': () => ({
    found: 'examples without an edge',
    allowed: '`edge:`, the last value that is still clear',
    hint: 'Give the value at the limit exactly.',
  }),
  'example-of-several': () => ({
    found: 'one value',
    allowed: 'values by fact path, because the requirement has several facts',
    hint: 'Write `{ fact.path: value, … }`.',
  }),
  'thin-reason': (d) => ({
    found: d.value === '' ? 'no reason' : tick(d.value),
    allowed: `a reason of at least ${d.allowed} words`,
    hint: 'Say why this class does without the rule: every report prints it on its first page.',
  }),
  'not-a-day': (d) => ({
    found: tick(d.value),
    allowed: 'a day of the calendar: year, month, day',
    hint: 'Write it like 2026-09-01.',
  }),
  'points-unknown': (d) => ({
    found: `points for ${tick(d.value)}`,
    allowed: 'a rule of this ruleset or of one it builds on',
    hint: orNearest(d.nearest, 'Remove the line.'),
  }),
  'off-unknown': (d) => ({
    found: `${tick(d.value)} switched off`,
    allowed: 'a rule of a ruleset this one builds on',
    hint: orNearest(d.nearest, 'Remove the line.'),
  }),
  'bad-ruleset-name': (d) => ({
    found: tick(d.value),
    allowed: 'a ruleset beside this one, such as `baseline`',
    hint: 'Put both files into one folder, and name the file without a way to it.',
  }),
  'no-such-ruleset': (d) => ({
    found: tick(d.value),
    allowed: 'a ruleset beside this one, or one that ships with the tool, such as `baseline`',
    hint: orNearest(d.nearest, 'Check the name of the file.'),
  }),
  'builds-on-itself': (d) => ({
    found: d.value as string,
    allowed: 'rulesets that do not come back to themselves',
    hint: 'Remove one of these from `builds-on`.',
  }),
  'too-many-rulesets': (d) => ({
    found: `more than ${d.allowed} rulesets on each other`,
    allowed: `at most ${d.allowed}`,
    hint: 'Put some of them together.',
  }),
  'overlay-conflict': (d) => ({
    found: `${d.name}, set differently by ${d.value as string}`,
    allowed: 'one of them, or a choice of this ruleset’s own',
    hint: 'The last one named wins; say it again here to make the choice plain.',
  }),
  // What only shows when the rules are tried
  'limit-unused': (d) => ({
    found: `the limit ${tick(d.value)}, which no rule uses`,
    allowed: 'limits that a rule uses',
    hint: orNearest(d.nearest, 'Use it in a rule, or remove it.'),
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** Every code the reader of rulesets adds to those of `base/messages.ts`. */
export type RuleProblemCode = keyof typeof wordings;

/** A problem of a ruleset, worded. */
export const ruleProblem = worder<RuleProblemCode, Details>(wordings);
