import { remembered } from '../../base/remembered.js';
import { specOf } from '../../facts/catalogue.js';
import type { FactSpec } from '../../facts/fact.js';
import type { Tree } from '../group.js';
import { thresholdKey } from '../quantity.js';
import type { Against, Compare, Condition, Line, Rule } from '../ruleset.js';
import type { EngineOperator } from './engine.js';

/** Which of a limit's amounts is meant. */
export type Which = 'value' | 'stop' | 'caution';

/** A line of a rule with what is known of it before any plan is. */
export interface ReadyLine {
  readonly line: Line;
  readonly spec: FactSpec;
  /** Whether it compares the size of a signed fact, not its direction. */
  readonly sized: boolean;
  /** The comparison and its contrary, as the engine calls them. */
  readonly holds: EngineOperator;
  readonly fails: EngineOperator;
  /** Key of the thresholds that it is held against, and which of them; null where it is held against no limit. */
  readonly thresholds: string | null;
  readonly which: Which;
}

/** A condition made ready: of a group with one part that part alone. */
export type Ready = Tree<ReadyLine>;

/** A rule with what hangs on it alone. */
export interface ReadyRule {
  readonly rule: Rule;
  readonly applies: Ready | null;
  /** What keeps it from being a stop, where that is less than the requirement; else null. */
  readonly notStop: Ready | null;
  readonly clear: Ready;
  /** For each piece of advice when it need not be given; null = it is always. */
  readonly unless: readonly (Ready | null)[];
}

const operators: Readonly<Record<Compare, readonly [holds: EngineOperator, fails: EngineOperator]>> = {
  'at-most': ['lessThanInclusive', 'greaterThan'],
  'at-least': ['greaterThanInclusive', 'lessThan'],
  above: ['greaterThan', 'lessThanInclusive'],
  below: ['lessThan', 'greaterThanInclusive'],
  is: ['equal', 'notEqual'],
  'is-not': ['notEqual', 'equal'],
};

/** Rules made ready, each once, and a list of them too. */
export const readyRules = remembered((rules: readonly Rule[]): readonly ReadyRule[] =>
  rules.map((rule) => readyRule(rule)),
);

const readyRule = remembered((rule: Rule): ReadyRule => {
  const { applies, require, otherwise } = rule;
  const byLimit = otherwise.kind === 'by-limit';
  const stop = otherwise.kind === 'stop-beyond' ? beyond(require, otherwise.stop) : require;
  return {
    rule,
    applies: applies === null ? null : ready(applies, 'value'),
    notStop: otherwise.kind === 'always' ? null : ready(stop, byLimit ? 'stop' : 'value'),
    clear: ready(require, byLimit ? 'caution' : 'value'),
    unless: rule.do.map(({ unless }) => (unless === null ? null : ready(unless, 'value'))),
  };
});

/** The same requirement with the threshold beyond which it is a stop. */
const beyond = (condition: Condition, stop: Against): Condition => ({
  ...condition,
  parts: condition.parts.map((part) => ('parts' in part ? beyond(part, stop) : { ...part, against: stop })),
});

function ready({ join, parts }: Condition, which: Which): Ready {
  const made = parts.map((part) => ('parts' in part ? ready(part, which) : readyLine(part, which)));
  return made.length === 1 ? made[0]! : { join, parts: made };
}

function readyLine(line: Line, which: Which): ReadyLine {
  const { fact, compare, against } = line;
  const spec = specOf(fact);
  const [holds, fails] = operators[compare];
  const thresholds = against.kind === 'limit' ? thresholdKey(against.name, spec.unit) : null;
  return { line, spec, sized: comparesMagnitude(line), holds, fails, thresholds, which };
}

/** True when the comparison looks at the size of a signed fact, not at its direction. */
export const comparesMagnitude = ({ fact, compare }: Line): boolean =>
  (compare === 'at-most' || compare === 'below') && specOf(fact).signed === true;
