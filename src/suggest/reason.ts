import { formatNumber, formatShare } from '../base/units-format.js';
import type { FactPath } from '../facts/fact.js';
import { findFact } from '../facts/find-fact.js';
import type { Finding } from '../findings/finding.js';
import type { Audit } from '../report/audit-view.js';
import type { Edit } from './edit.js';
import type { Wish } from './judge.js';

const grave = ({ verdict }: Finding, wish: Wish): boolean =>
  wish === 'clear' ? verdict !== 'clear' : verdict === 'stop';

/** Checks, not findings: a rule that fails at four corners is one check. */
const failed = (audit: Audit, wish: Wish): number =>
  new Set(audit.findings.filter((finding) => grave(finding, wish)).map(({ rule }) => rule)).size;

/**
 * Why a changed plan is worth having, in one line: what it does to the reserve and the chance, and how many checks it
 * puts right.
 */
export function reasonOf(planned: Audit, changed: Audit, edit: Edit, wish: Wish): string {
  if (edit.words.length === 0)
    return wish === 'clear' ? 'The plan is clear as it stands.' : 'The plan has no stop as it stands.';
  const before = failed(planned, wish);
  const puts =
    before === 0
      ? []
      : [
          `puts right ${before} ${before === 1 ? 'check' : 'checks'} that ${wish === 'clear' ? 'did not pass' : 'said stop'}`,
        ];
  const parts = [
    ...puts,
    ...moved(planned, changed, 'frame.twist_reserve', 'reserve against twisting', (n) => formatNumber(n, 2)),
    ...moved(planned, changed, 'warp.corner_lift_chance', 'chance of a lifted corner', formatShare),
  ];
  const text = parts.join('; ');
  return text === '' ? 'No worse in any check that counts.' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function moved(
  planned: Audit,
  changed: Audit,
  path: FactPath,
  name: string,
  show: (value: number) => string,
): readonly string[] {
  const [from, to] = [findFact(planned.facts, path, 'frame'), findFact(changed.facts, path, 'frame')];
  if (to === null) return [];
  if (from === null) return [`${name} ${show(to)}`];
  return show(from) === show(to) ? [] : [`${name} ${show(from)} → ${show(to)}`];
}
