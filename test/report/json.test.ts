import { beforeAll, describe, expect, it } from 'vitest';
import type { Audit } from '../../src/report/audit-view.js';
import { writeJson } from '../../src/report/json.js';
import { auditOf, inches, weak } from './audits.js';

let audit: Audit;
beforeAll(async () => {
  audit = await auditOf(weak);
});

describe('the JSON document', () => {
  it('has exactly the agreed keys, in the agreed order', () => {
    const data = JSON.parse(writeJson(audit)) as Record<string, unknown>;
    expect(Object.keys(data)).toEqual(['format', 'plan', 'verdict', 'facts', 'findings', 'supplies', 'assumed', 'left_out', 'ruleset', 'sheets']);
    expect(data['format']).toBe('audit/1');
    expect(data['verdict']).toBe('stop');
    const facts = data['facts'] as Record<string, unknown>[];
    expect(facts.length).toBe(audit.facts.length);
    for (const fact of facts) expect(Object.keys(fact)).toEqual(['path', 'about', 'value', 'unit']);
  });

  it('says null where a value is not known or not finite, never NaN or Infinity', () => {
    const [first, second] = audit.facts;
    if (first === undefined || second === undefined) throw new Error('the audit has facts');
    const text = writeJson({ ...audit, facts: [{ ...first, value: Number.NaN }, { ...second, value: Number.POSITIVE_INFINITY }, { ...second, value: null, reason: 'nobody knows' }] });
    const data = JSON.parse(text) as { facts: { value: unknown }[] };
    expect(data.facts.map(({ value }) => value)).toEqual([null, null, null]);
    expect(text).not.toMatch(/NaN|Infinity/u);
  });

  it('keeps the numbers: face in mm, and every fact within its ninth digit or, next to nothing, as zero', async () => {
    const own = await auditOf(inches);
    const data = JSON.parse(writeJson(own)) as { plan: { face: { width_mm: number } }; facts: { value: number | string | null }[] };
    expect(data.plan.face.width_mm).toBe(898.525);
    own.facts.forEach(({ value }, i) => {
      const written = data.facts[i]?.value;
      if (typeof value !== 'number') expect(written).toBe(value);
      else expect(Math.abs((written as number) - value)).toBeLessThanOrEqual(Math.max(1e-8 * Math.abs(value), 1e-11));
    });
  });

  it('is the same every time', async () => {
    expect(writeJson(await auditOf(weak))).toBe(writeJson(audit));
  });
});
