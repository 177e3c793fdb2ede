import { catalogueByPath } from '../../facts/catalogue.js';
import { cautionsById } from '../../findings/cautions.js';
import { formatQuantity } from '../../base/units-format.js';
import type { ExampleOutcome } from './examples.js';
import { limitsOfRule } from '../say/limits-used.js';
import { conditionInWords, limitInWords, otherwiseInWords } from '../say/in-words.js';
import { linesOf, type Rule, type Ruleset } from '../ruleset.js';

/** A limit as a rule's page shows it. */
export interface LimitOnPage {
  readonly name: string;
  readonly said: string;
  readonly source: string;
  /** Oldest first: `Studio baseline (baseline.yaml): 1/400 of bar.span_mm`. */
  readonly history: readonly string[];
}

/** A rule in words: everything a person needs to agree with it or to change it. */
export interface RulePage {
  readonly id: string;
  readonly asked: string;
  readonly applies: string | null;
  readonly requires: string;
  readonly otherwise: string;
  readonly says: string;
  /** Said instead when the requirement holds; null when `says` serves both. */
  readonly says_clear: string | null;
  /** Said instead of a stop, and of a value below nought that does not hold; null when `says` serves. */
  readonly says_stop: string | null;
  readonly says_below_zero: string | null;
  readonly next: readonly string[];
  readonly cautions: readonly string[];
  readonly source: string;
  readonly file: string;
  /** Facts the rule reads, with their meaning. */
  readonly facts: readonly { readonly path: string; readonly unit: string; readonly meaning: string }[];
  readonly limits: readonly LimitOnPage[];
  readonly examples: readonly string[];
  readonly history: readonly string[];
}

/** One line for each rule: id and what it requires; switched-off ones say so. */
export function ruleList(ruleset: Ruleset): readonly { readonly id: string; readonly requires: string }[] {
  const live = ruleset.rules.map((rule) => ({ id: rule.id, requires: conditionInWords(rule.require, ruleset.limits) }));
  return [...live, ...ruleset.off.map(({ id, reason }) => ({ id, requires: `switched off: ${reason}` }))];
}

/**
 * The page of a rule, with those of its examples that hold (all where none are named); null when the ruleset has no
 * such rule. A switched-off rule has a page in the file that had it.
 */
export function rulePage(
  ruleset: Ruleset,
  id: string,
  holding?: ReadonlySet<ExampleOutcome['example']>,
): RulePage | null {
  const off = ruleset.off.find((one) => one.id === id);
  const rule =
    ruleset.rules.find((one) => one.id === id) ??
    ruleset.layers.flatMap(({ rules }) => rules).findLast((one) => one.id === id);
  if (rule === undefined) return null;
  const lines = [...linesOf(rule.require), ...linesOf(rule.applies)];
  return {
    id,
    asked: `Asked of each ${rule.each}${rule.each === 'frame' ? '' : ', one by one'}.`,
    applies: rule.applies === null ? null : conditionInWords(rule.applies, ruleset.limits),
    requires: conditionInWords(rule.require, ruleset.limits),
    otherwise:
      off === undefined
        ? otherwiseInWords(rule, ruleset.limits)
        : `nothing: the rule is switched off by ${off.place.file}. ${off.reason}`,
    says: rule.say,
    says_clear: rule.say_clear,
    says_stop: rule.say_stop,
    says_below_zero: rule.say_below_zero,
    next: rule.do.map((advice) =>
      advice.unless === null
        ? advice.say
        : `${advice.say} (Not said when ${conditionInWords(advice.unless, ruleset.limits)}.)`,
    ),
    cautions: rule.cautions.map((caution) => cautionsById.get(caution)?.text ?? caution),
    source: rule.source,
    file: rule.place.file,
    facts: [...new Set(lines.map(({ fact }) => fact))].map((path) => ({
      path,
      unit: catalogueByPath.get(path)!.unit,
      meaning: catalogueByPath.get(path)!.meaning,
    })),
    limits: limitsOfRule(rule).flatMap((name) => {
      const limit = ruleset.limits.get(name);
      return limit === undefined
        ? []
        : [{ name, said: limitInWords(limit), source: limit.source, history: historyOf(ruleset, `limit ${name}`) }];
    }),
    examples: examplesInWords(rule, holding),
    history: (ruleset.history.get(`rule ${id}`) ?? []).map(
      ({ file, ruleset: name, said }) => `${name} (${file}): ${said}`,
    ),
  };
}

/** The page as text for a terminal or a page of Markdown. */
export function rulePageText(page: RulePage): string {
  const list = (entries: readonly string[]): string => entries.map((entry) => `- ${entry}\n`).join('');
  const part = (title: string, text: string): string =>
    text === '' ? '' : `\n## ${title}\n\n${text}${text.endsWith('\n') ? '' : '\n'}`;
  return [
    `# ${page.id}\n\n${page.asked}\n`,
    page.applies === null ? '' : `Only when ${page.applies}.\n`,
    part('What must hold', `${page.requires}.\n\nOtherwise: ${page.otherwise}.`),
    part(
      'What it says',
      [
        page.says,
        ...said('When the requirement holds', page.says_clear),
        ...said('When it is a stop', page.says_stop),
        ...said('When the value is below nought', page.says_below_zero),
      ].join('\n\n'),
    ),
    part('What to do next', list(page.next)),
    part('Cautions', list(page.cautions)),
    part('Facts', list(page.facts.map(({ path, unit, meaning }) => `${path} (${unit}): ${meaning}`))),
    part(
      'Limits',
      page.limits
        .map(
          ({ name, said, source, history }) =>
            `- ${name}: ${said}. Source: ${source}.\n${history.length > 1 ? history.map((step) => `  - ${step}\n`).join('') : ''}`,
        )
        .join(''),
    ),
    part('Examples', list(page.examples)),
    part('Where it comes from', `Source: ${page.source}. Set by:\n\n${list(page.history)}`),
  ].join('');
}

const said = (when: string, sentence: string | null): readonly string[] =>
  sentence === null ? [] : [`${when}: ${sentence}`];

function historyOf(ruleset: Ruleset, key: string): readonly string[] {
  return (ruleset.history.get(key) ?? []).map(({ file, ruleset: name, said }) => `${name} (${file}): ${said}`);
}

function examplesInWords(
  rule: Rule,
  holding: ReadonlySet<ExampleOutcome['example']> = new Set(['clear', 'edge', 'fails']),
): readonly string[] {
  const { examples } = rule;
  if (examples === null) return [];
  const words = (values: Readonly<Record<string, number | string>>): string =>
    Object.entries(values)
      .map(([path, value]) => `${path} ${formatQuantity(value, catalogueByPath.get(path)!.unit, 'metric')}`)
      .join(', ');
  const given = Object.keys(examples.with).length === 0 ? '' : `, given ${words(examples.with)}`;
  const told = [
    ...(holding.has('clear') ? [`clear: ${words(examples.clear)}${given}`] : []),
    ...(examples.edge !== null && holding.has('edge')
      ? [`still clear, at the edge: ${words(examples.edge)}${given}`]
      : []),
    ...(holding.has('fails') ? [`fails: ${words(examples.fails)}${given}`] : []),
  ];
  const all = examples.edge === null ? 2 : 3;
  return told.length === all
    ? told
    : [
        ...told,
        `${told.length === 0 ? 'none' : 'no more'}: the others were made for limits that a later file has changed`,
      ];
}
