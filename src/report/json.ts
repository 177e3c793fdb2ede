import { appliedData } from '../findings/applied.js';
import type { Supplies } from '../cost/supplies.js';
import type { Audit } from './audit-view.js';
import { sheetsData } from './json-sheets.js';

/** Amounts smaller than this, in any unit that is printed, are what rounding leaves of nothing. */
const nothing = 1e-11;

/**
 * Numbers keep nine significant digits, so that the last bits of one machine's arithmetic do not show, and what they
 * leave of zero is zero; what is not finite becomes null. For `JSON.stringify`.
 */
export function steady(_key: string, value: unknown): unknown {
  if (typeof value !== 'number') return value;
  if (Math.abs(value) < nothing) return 0;
  return Number.isFinite(value) ? Number(value.toPrecision(9)) + 0 : null;
}

/**
 * One audit as plain data, `format: "audit/1"`: plan, verdict, facts, findings, what to buy, the numbers of the pages,
 * what was assumed and what is left out.
 * Keys always stand in the same order; a value that cannot be known is null.
 */
export function auditData(audit: Audit): Record<string, unknown> {
  const { assumed: _assumed, ...plan } = audit.plan;
  return {
    format: 'audit/1',
    plan,
    verdict: audit.verdict,
    facts: audit.facts.map(({ path, about, value, unit }) => ({ path, about, value, unit })),
    findings: audit.findings.map((f) => ({
      rule: f.rule,
      about: f.about,
      verdict: f.verdict,
      fact: f.fact,
      actual: f.actual,
      limit: f.limit,
      unit: f.unit,
      used: f.used,
      say: f.say,
      do: f.do,
      cautions: f.cautions,
      source: f.source,
    })),
    supplies: suppliesData(audit.supplies),
    assumed: audit.assumed.map(({ path, value }) => ({ path, value })),
    left_out: audit.left_out,
    ruleset: appliedData(audit.applied),
    sheets: sheetsData(audit.sheets),
  };
}

/** What to buy as plain data: every amount for one frame and for all, packs, costs. */
function suppliesData({
  frames,
  currency,
  boards,
  cloths,
  lines,
  short,
  boards_cost,
  total_cost,
  used_cost,
  rest_cost,
  reason,
}: Supplies): Record<string, unknown> {
  return {
    frames,
    currency,
    boards,
    short,
    boards_cost,
    total_cost,
    used_cost,
    rest_cost,
    reason,
    cloths: cloths.map(({ cloth, layout, bought_mm, bought_cost, invented }) => ({
      cloth: cloth.key,
      roll_mm: layout.roll_mm,
      length_mm: layout.length_mm,
      bought_mm,
      cost: bought_cost,
      invented,
      too_wide: layout.too_wide,
    })),
    lines,
  };
}

/** The same as one JSON document ending in a newline. */
export const writeJson = (audit: Audit): string => `${JSON.stringify(auditData(audit), steady, 2)}\n`;
