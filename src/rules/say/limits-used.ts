import { limitsReadByFacts, linesOf, type Layer, type Rule } from '../ruleset.js';
import { placeholdersOf } from './say.js';
import { sentencesOf } from './sentences.js';

/** Limits named by any rule of any file, so that a rule switched off does not make its limit a mistake. */
export function usedLimits(layers: readonly Layer[]): ReadonlySet<string> {
  const names = layers.flatMap(({ rules }) => rules.flatMap(limitsOfRule));
  return new Set([...names, ...limitsReadByFacts]);
}

/** The limits a rule names, in its lines, its thresholds and its sentences. */
export function limitsOfRule(rule: Rule): readonly string[] {
  const lines = [...linesOf(rule.require), ...linesOf(rule.applies)].map(({ against }) => against);
  const against = rule.otherwise.kind === 'stop-beyond' ? [...lines, rule.otherwise.stop] : lines;
  const named = against.flatMap((one) => (one.kind === 'limit' ? [one.name] : []));
  const said = sentencesOf(rule)
    .flatMap(placeholdersOf)
    .flatMap((name) => (name.startsWith('limits.') ? [name.slice('limits.'.length)] : []));
  return [...new Set([...named, ...said])];
}
