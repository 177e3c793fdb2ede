import type { About } from '../../base/names.js';
import type { EnginePart } from './engine.js';
import type { ReadyRule } from './ready-rule.js';
import { isKnown, pose, question, type Posed, type Setting } from './settle.js';

/** One rule asked of one element, with the numbers that tell whether it applies there. */
export interface Asked {
  /** What the engine calls it. */
  readonly number: number;
  readonly ready: ReadyRule;
  readonly about: About;
  readonly applies: Posed | null;
}

/** One that is not silent, with the numbers of what it requires, which are worked out for no other. */
export interface Case extends Asked {
  /** What is left to ask of whether it applies: of a condition that is known in all its lines the silence tells. */
  readonly asked: Part;
  /** What keeps it from being a stop, where that is less than the requirement. */
  readonly notStop: Posed | null;
  readonly clear: Posed;
}

/** A question; true where there is none to ask, null where its answer cannot be yes. */
type Part = EnginePart | true | null;

export function caseOf(one: Asked, setting: Setting): Case {
  const { number, ready, about, applies } = one;
  return {
    number,
    ready,
    about,
    applies,
    asked: applies === null || isKnown(applies) ? true : question(applies, 'holds'),
    notStop: ready.notStop === null ? null : pose(ready.notStop, about, setting),
    clear: pose(ready.clear, about, setting),
  };
}

/** What means that a rule has nothing to say of an element: the condition to ask it surely fails. */
export const silenceFor = ({ applies }: Asked): EnginePart | null =>
  applies === null ? null : question(applies, 'fails');

/**
 * What may become of a case; `unknown` is what is left when none of these does. `asked`: the rule applies, whatever it
 * makes of it, as far as its silence has not told that.
 */
type Outcome = 'clear' | 'stop' | 'caution' | 'asked';

/**
 * What must surely hold or surely fail for an outcome, that which decides it last; null where a case cannot have the
 * outcome, whatever is known.
 */
export function conditionFor({ asked, notStop, clear, ready }: Case, outcome: Outcome): EnginePart | null {
  const { otherwise } = ready.rule;
  const blame = otherwise.kind === 'always' ? otherwise.verdict : null;
  const spared = notStop === null ? true : question(notStop, 'holds');
  switch (outcome) {
    case 'clear':
      return both(both(asked, spared), question(clear, 'holds'));
    case 'stop':
      return blame === 'caution' ? null : both(asked, question(notStop ?? clear, 'fails'));
    case 'caution':
      return blame === 'stop' ? null : both(both(asked, spared), question(clear, 'fails'));
    case 'asked':
      return asked === true ? null : asked;
  }
}

/** Both; the last alone where it is a tighter bound on the same value, which says both. */
function both<P extends Part>(one: Part, other: P): P | EnginePart | null {
  if (one === null || other === null) return null;
  if (one === true) return other;
  if (other === true) return one;
  const last: EnginePart = other;
  return saysBoth(one, last) ? last : { join: 'all', parts: [one, last] };
}

function saysBoth(one: EnginePart, last: EnginePart): boolean {
  if ('parts' in one || 'parts' in last || one.actual !== last.actual || one.operator !== last.operator) return false;
  return one.operator.startsWith('less')
    ? last.value <= one.value
    : one.operator.startsWith('greater') && last.value >= one.value;
}
