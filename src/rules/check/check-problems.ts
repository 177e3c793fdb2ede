import { worder, type Wording } from '../../base/wording.js';
import { tick, type Details } from '../read/rule-problems.js';

/** What a check of a ruleset can find beyond what its reader does, by code. */
export const wordings = {
  'example-fails': (d) => ({
    found: d.value as string,
    allowed: d.allowed ?? '',
    hint: 'Change the example, or what the rule requires.',
  }),
  'never-asked': (d) => ({
    found: `\`applies\` of ${tick(d.value)}, which nothing can meet`,
    allowed: 'a condition that some frame meets',
    hint: 'Look at the comparisons: two of them exclude each other.',
  }),
  'never-speaks': (d) => ({
    found: `${tick(d.value)}, which nothing can fail`,
    allowed: 'a requirement that some frame misses',
    hint: 'Look at the direction of the comparison: it holds for every value the fact can have.',
  }),
  'never-clear': (d) => ({
    found: `${tick(d.value)}, which nothing can meet`,
    allowed: 'a requirement that some frame meets',
    hint: 'Look at the comparisons: two of them exclude each other.',
  }),
  'rules-exclude': (d) => ({
    found: `${tick(d.value)} and ${tick(d.name)}, which cannot both be met: ${d.allowed}`,
    allowed: 'rules that one frame can meet together',
    hint: 'Change one of the two bounds, or say with `applies:` when each is asked.',
  }),
  'impossible-example': (d) => ({
    found: `${tick(d.value)} for ${d.name}`,
    allowed: d.allowed ?? '',
    hint: 'Take a value that a frame can have, so that the example shows something.',
  }),
  'near-name': (d) => ({
    found: `${tick(d.value)}, a hair from ${tick(d.name)}`,
    allowed: 'names that nobody takes for each other',
    hint: 'If the other one is meant, write it so; else choose a name that differs more.',
  }),
  'limit-asked-by-plan': (d) => ({
    found: `the limit ${tick(d.value)}, asked only of plans that ask for it themselves`,
    allowed: 'a limit, knowing that',
    hint: `The rule ${d.name} is silent about every other plan. To hold all plans to an amount, write a rule of your own without \`applies:\`.`,
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** A problem of this kind, worded. */
export const checkProblem = worder<keyof typeof wordings, Details>(wordings);
