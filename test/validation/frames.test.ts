/**
 * Worked space frames in test/data/frames.yaml: SI units (m, N, rad, Pa) or kip and inch where a case says so.
 * Answers without shear and with it come from two independent beam programs (agreeing to 1e-13); a solid model in a general
 * finite-element program stands behind some. Printed textbook values (Logan, A First Course in the Finite Element Method,
 * 4th ed.; Kassimali, Structural Analysis, 3rd ed.; Weaver, Computer Programs for Structural Analysis; Ferreira, MATLAB Codes
 * for Finite Element Analysis; McGuire, Gallagher and Ziemian, Matrix Structural Analysis, 2nd ed.; Sennett, Matrix Analysis of
 * Structures) are held to one unit in the last printed place or 0.2 % (they were worked by hand), Kassimali's settlement
 * example to the 7.6 % its quotation admits.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { note } from './recorded.js';
import { differencesOf, runFrameCases } from '../tools/cases-frames.js';
import type { FrameCase } from '../tools/cases-frames.js';

const { cases } = parse(readFileSync(new URL('../data/frames.yaml', import.meta.url), 'utf8')) as { cases: FrameCase[] };

/** The largest difference of one kind of answer in a case, as a share. */
const noteLargest = (deviation: number): void => note({ theirs: 'all answers of one kind', ours: 'the same', deviation, tolerance: 1e-6, absolute: false, standing: 'independent program' });

describe('worked space frames', () => {
  it('has all 29 of them', () => expect(cases.length).toBe(29));

  it.each(cases.map((c) => [c.id, c] as const))('%s agrees in both theories', (_, c) => {
    const off = differencesOf(c);
    for (const deviation of [off.eulerBernoulli, off.timoshenko, off.reactions, off.endForces]) if (deviation !== null) noteLargest(deviation);
    expect(off.eulerBernoulli).toBeLessThanOrEqual(1e-6);
    expect(off.timoshenko).toBeLessThanOrEqual(1e-6);
    expect(off.reactions).toBeLessThanOrEqual(1e-6);
    expect(off.endForces).toBeLessThanOrEqual(1e-6);
    if (c.expected.closedForm) expect(off.closedForm).toBeLessThanOrEqual(1e-6);
    if (c.expected.published) expect(off.published).toBeLessThanOrEqual(1);
    expect(off.within).toBe(true);
  });
});

describe('the runner of frame cases', () => {
  const altered = (change: (c: FrameCase) => object): Promise<{ within: number; total: number; lines: string[] }> =>
    runFrameCases({ cases: [{ ...cases[0]!, ...change(cases[0]!) }] });
  const expecting = (part: object) => (c: FrameCase) => ({ expected: { ...c.expected, ...part } });

  it('counts a case as off when any one kind of value is off by more than 1e-6', async () => {
    const six = [6.9252e-6, 1.9423193e-3, -9.711596e-4, 6.2915e-3, 3.88463e-3, 7.76927e-3];
    for (const part of [
      { displacements: { N2: six } },
      { displacementsTimoshenko: { N2: six } },
      { reactions: { N1: { Fx: -100.001 } } },
      { endForces: { M1: [-100.001, -5, 10, -0.5, -9, -4.5, 100, 5, -10, 0.5, 4.5, 2.25] } },
      { closedForm: { 'N3.uy': 0.00622 } },
      { closedForm: { 'N99.uy': 0.006215421919721304 } },
      { published: { source: 'made up', 'N3.uy': 0.00625 } },
    ]) {
      const run = await altered(expecting(part));
      expect(run.within, JSON.stringify(part)).toBe(0);
      expect(run.lines[0]).toMatch(/^OFF a1/);
    }
    expect((await altered(() => ({}))).within).toBe(1);
  });

  it('does not take a case without expectations, or with an unknown node, for a right one', async () => {
    expect((await altered(() => ({ expected: {} }))).within).toBe(0);
    const run = await altered(() => ({ supports: [{ node: 'N9', fix: { ux: 0 } }] }));
    expect(run.within).toBe(0);
    expect(run.lines[0]).toContain('a node "N9", which it does not have');
  });

  it('says in words why a case cannot be solved', async () => {
    const run = await altered(() => ({ supports: [{ node: 'N1', fix: { ux: 0, uy: 0, uz: 0, ry: 0, rz: 0 } }] }));
    expect(run.lines[0]).toMatch(/OFF a1-cantilever-tip: it is unstable: node "N\d" is free to turn about x/);
  });

  it.each([[null], [{}], [{ cases: [] }], [{ cases: [{ id: 'x' }] }], ['text']])('refuses %j', async (document) => {
    await expect(runFrameCases(document)).rejects.toThrow(/no list of cases|no frame case/);
  });
});
