import { capital } from '../base/capital.js';
import { sameDecimals } from '../base/same-decimals.js';
import { chanceInWords, formatFixed, formatQuantity } from '../base/units-format.js';
import { findFact } from '../facts/find-fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import type { Audit } from '../report/audit-view.js';
import { frameInWords } from '../report/words/build.js';
import { badge, counted } from '../report/words/verdict.js';
import type { Aim, Suggestion, Suggestions } from './suggest.js';

/** The numbers by which plans are compared. */
interface Figures {
  readonly verdict: Verdict;
  readonly cost: number | null;
  readonly weight_kg: number | null;
  readonly twist_reserve: number | null;
  readonly lift_chance: number | null;
}

function figures({ verdict, facts }: Audit): Figures {
  return {
    verdict,
    cost: findFact(facts, 'cutting.total_cost', null),
    weight_kg: findFact(facts, 'frame.weight_kg', 'frame'),
    twist_reserve: findFact(facts, 'frame.twist_reserve', 'frame'),
    lift_chance: findFact(facts, 'warp.corner_lift_chance', 'frame'),
  };
}

const aimWords: Readonly<Record<Aim, string>> = {
  cheapest: 'cheapest',
  lightest: 'lightest',
  'least-change': 'least change',
};

/** The aims of one suggestion in words: `cheapest and lightest`. */
export const aimsInWords = (aims: readonly Aim[]): string => aims.map((aim) => aimWords[aim]).join(' and ');

/** How an answer is told: the columns there are for it, and whether what was looked through is told as well. */
export interface TellingOfAnswer {
  readonly columns?: number;
  readonly whole?: boolean;
}

/** The answer as plain text for a terminal: a table, then each plan's changes and why. */
export function tellSuggestions(
  answer: Suggestions,
  { columns = Infinity, whole = false }: TellingOfAnswer = {},
): string {
  const { planned, found, tried } = answer;
  const { units } = planned.plan;
  const row = (name: string, f: Figures): readonly string[] => [
    name,
    badge(f.verdict),
    formatQuantity(f.cost, 'cost', units),
    formatQuantity(f.weight_kg, 'kg', units),
    formatFixed(f.twist_reserve, 2),
    f.lift_chance === null ? 'unknown' : chanceInWords(f.lift_chance),
  ];
  const wish = answer.wish === 'clear' ? 'clear of every stop, caution and unknown' : 'without a stop';
  const lines = [
    `${planned.plan.name}: ${found.length === 0 ? `no plan ${wish} was found.` : `plans that are ${wish}.`}`,
    '',
    ...fitting(columns, [
      ['', 'verdict', `cost ${planned.shelf.currency}`, 'weight', 'reserve', 'lifted corner'],
      ...sameDecimals([
        row('as planned', figures(planned)),
        ...found.map((one) => row(aimsInWords(one.aims), figures(one.audit))),
      ]),
    ]),
  ];
  for (const one of found) {
    const changes =
      one.edit.words.length === 0 ? ['  Nothing has to change.'] : one.edit.words.map((word) => `  - ${word}`);
    lines.push(
      '',
      `${capital(aimsInWords(one.aims))}: ${frameInWords(one.audit)}.`,
      ...changes,
      `  ${one.reason}`,
      ...remaining(one.audit),
    );
  }
  lines.push('', ...whatWasTried(answer, tried, whole), '');
  return lines.join('\n');
}

/** What is still to be thought of in a suggested plan: each check that is not clear, once. */
const notClear = ({ findings }: Audit): readonly Finding[] => {
  const seen = new Set<string>();
  return findings.filter(({ rule, verdict }) => verdict !== 'clear' && !seen.has(rule) && seen.add(rule));
};

function remaining(audit: Audit): readonly string[] {
  const left = notClear(audit);
  return left.length === 0
    ? []
    : [
        `  Still to think of, ${counted(left.length, 'check')}:`,
        ...left.map(({ verdict, say }) => `    ${badge(verdict, say)}`),
      ];
}

/** That the search was complete, in a line; what was looked through where it is asked for, or nothing was found. */
function whatWasTried(
  { planned, found, wish }: Suggestions,
  tried: Suggestions['tried'],
  whole: boolean,
): readonly string[] {
  const titles = new Map(planned.findings.map(({ rule, title }) => [rule, title]));
  const most = tried.in_the_way.slice(0, 3).map(({ rule, builds }) => {
    const title = titles.get(rule);
    return `${title === undefined ? rule : `${title} (${rule})`} in ${counted(builds, 'way', 'ways')}`;
  });
  return [
    found.length === 0
      ? `The search was complete: none of ${tried.candidates} plans will do.`
      : `The search was complete: none of ${tried.candidates} plans that will do costs less, weighs less or changes less.`,
    ...(whole || found.length === 0
      ? [
          `They are ${tried.builds} ways to build the frame, each with every choice of boards. ${tried.examined} of those ways had to be worked out${found.length === 0 ? '' : '; the others cannot do better'}.`,
        ]
      : []),
    ...(most.length > 0 && (whole || found.length === 0) ? [`Most often in the way: ${most.join('; ')}.`] : []),
    ...(whole ? ['What was looked through:', ...tried.space.map((sentence) => `  - ${sentence}`)] : []),
    ...(found.length === 0 && wish === 'no-stop'
      ? [
          'Outside of this are a smaller face, a wider roll of cloth, another corner or glue, and stock that is not on the shelf.',
        ]
      : []),
  ];
}

/** A table, or where that is too wide each row by itself, its cells named by their heads. */
function fitting(columns: number, rows: readonly (readonly string[])[]): readonly string[] {
  const lines = table(rows);
  if (lines.every((line) => line.length <= columns)) return lines;
  const [head = [], ...body] = rows;
  return body.map(([name = '', verdict = '', cost = '', ...cells]) => {
    const named = cells.map((cell, i) => `${head[i + 3] ?? ''} ${cell}`);
    return `${capital(name)}: ${verdict}, ${cost} ${(head[2] ?? '').replace('cost ', '')}, ${named.join(', ')}.`;
  });
}

/** Columns as wide as their widest cell. */
function table(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

/** The answer as one document, `suggest/1`. */
export function suggestionsAsJson(answer: Suggestions): string {
  const one = ({ aims, edit, audit, reason }: Suggestion) => ({
    aims,
    builds: frameInWords(audit),
    changes: edit.words,
    ...figures(audit),
    reason,
    left: notClear(audit).map(({ rule, about, verdict, say }) => ({ rule, about, verdict, say })),
  });
  const { planned, found, tried, wish } = answer;
  return `${JSON.stringify({ format: 'suggest/1', plan: planned.plan.name, wish, currency: planned.shelf.currency, planned: figures(planned), found: found.map(one), tried }, null, 2)}\n`;
}
