import type { About } from '../base/names.js';
import type { FactPath } from '../facts/fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { titleOfId } from '../findings/title.js';

/** A finding of a plan: it names the fact that decided, or none where no fact promises what was read. */
export type JudgedFinding = Finding<FactPath | ''>;

/** What a reading says, before it is filled up to a finding. */
export interface Said {
  /** After `measured/`. */
  readonly rule: string;
  readonly about?: About;
  readonly verdict: Verdict;
  /** The promise it was held against; empty for a reading that no fact promises. */
  readonly fact: JudgedFinding['fact'];
  readonly actual: number | string | null;
  readonly limit: number | string | null;
  readonly unit: string;
  readonly say: string;
  readonly do?: readonly string[];
  readonly source: string;
  /** True when less than the limit is the bad side. */
  readonly at_least?: boolean;
}

/** A finding about a reading. `used` is reading over limit, or limit over reading for at-least. */
export function findingOf({
  rule,
  about = 'frame',
  verdict,
  fact,
  actual,
  limit,
  unit,
  say,
  do: advice = [],
  source,
  at_least = false,
}: Said): JudgedFinding {
  const share =
    typeof limit === 'number' && limit > 0 && typeof actual === 'number' && actual !== 0
      ? at_least
        ? limit / actual
        : Math.abs(actual) / limit
      : null;
  return {
    rule: `measured/${rule}`,
    title: titleOfId(rule),
    about,
    verdict,
    fact,
    actual,
    limit,
    unit,
    used: share,
    say,
    do: verdict === 'clear' ? [] : advice,
    cautions: [],
    source,
  };
}
