/**
 * Published limits and measurements of warp, all paraphrased:
 * Western Lumber Grading Rules 1998, Stud grade, 8 ft: crook 1/4 in, twist 3/8 in (over 3-1/2 in), bow three times the crook
 * (seen, in the AGRIS record of Erickson and Shmulsky 2005). Chalmers publication 18709: mean twist 7.3 mm per 100 mm over 2 m (seen).
 * EN 14081-1 Table 1: 10 mm bow, 8 mm spring, 1 mm twist per 25 mm over 2 m (memory). Wood and Fiber Science 1542: bow from a gradient of
 * longitudinal shrinkage, mean coefficient 0.0111 % per % (seen). Units: m, 1/m, degrees per metre.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { twistRateOf } from '../../src/mechanics/board-shape.js';
import { curvatureOf, gradientCurvature_per_m, publishedAnchors } from './warp-anchors.js';
import { proposedSpread } from '../risk/made-up-frame.js';
import { expectDecimals, expectShare } from './recorded.js';

const deg = Math.PI / 180;
const anchor = (what: string) => publishedAnchors.find((entry) => entry.what.includes(what));

describe('stud-grade limits (WWPA 1998, seen)', () => {
  it('stud-grade-limit-crook: 6.35 mm over 2.4384 m is 0.00854385 /m', () => {
    expectShare(curvatureOf(0.00635, 2.4384), 0.00854385, 5e-6);
    expectShare(anchor('crook of an 8 ft')?.curve_per_m ?? 0, 0.00854385, 5e-6);
  });

  it('stud-grade-limit-bow: 19.05 mm over 2.4384 m is 0.0256316 /m', () => {
    expectShare(anchor('bow of an 8 ft')?.curve_per_m ?? 0, 0.0256316, 5e-6);
  });

  it('stud-grade-limit-twist: 9.525 mm over 88.9 mm is 2.51757 °/m as rise over width, a little less as an angle', () => {
    expectShare(9.525 / 88.9 / 2.4384 / deg, 2.51757, 5e-5);
    const angle = anchor('twist of an 8 ft')?.twist_deg_per_m ?? 0;
    expectDecimals(angle, Math.atan(9.525 / 88.9) / 2.4384 / deg, 10);
    expect(angle / 2.51757).toBeGreaterThan(0.99);
  });
});

describe('measured warp', () => {
  it('twist-mm-to-deg: 7.3 mm per 100 mm over 2 m is 4.17519°, 2.08759 °/m (Chalmers 18709, seen)', () => {
    expectShare(twistRateOf(7.3, 100, 2) / deg, 2.08759, 5e-5);
    expectShare((twistRateOf(7.3, 100, 2) * 2) / deg, 4.17519, 5e-5);
  });

  it('bow-from-shrink-gradient: 0.0005 across 38 mm is 0.0131579 /m, 2.36842 mm over 1.2 m (mechanism seen, formula elementary)', () => {
    const kappa = gradientCurvature_per_m(0.0005, 0.038);
    expectShare(kappa, 0.0131579, 5e-6, 'derived');
    expectShare((kappa * 1.2 ** 2 * 1000) / 8, 2.36842, 5e-6, 'derived');
  });

  it('long-shrink-strain: a coefficient of 0.0111 % per % on one edge only, 6 points of moisture, 38 mm: 8.8 mm bow in 2 m (WFS 1542, seen; figure derived)', () => {
    expectDecimals((gradientCurvature_per_m(0.000111 * 6, 0.038) * 2 ** 2 * 1000) / 8, 8.8, 1, 'derived');
  });
});

describe('the proposed spread beside the published figures', () => {
  it('puts unsorted boards inside what the grades allow nearly always, and below the mean twist of studs at 18 % moisture', () => {
    const { twist_rad_per_m, bow_per_m, crook_per_m } = proposedSpread.unsorted;
    expect(bow_per_m.sd * 2).toBeLessThan(anchor('bow of an 8 ft')?.curve_per_m ?? 0);
    expect(crook_per_m.sd * 2).toBeLessThan(anchor('crook of an 8 ft')?.curve_per_m ?? 0);
    expect(twist_rad_per_m.mean / deg).toBeLessThan(anchor('mean twist of studs')?.twist_deg_per_m ?? 0);
    expect((twist_rad_per_m.mean + twist_rad_per_m.sd) / deg).toBeGreaterThan(anchor('mean twist of studs')?.twist_deg_per_m ?? 99);
  });
});

describe('sources of the published figures', () => {
  it('are all in the list of sources', () => {
    const list = readFileSync(new URL('../../rules/sources.yaml', import.meta.url), 'utf8');
    for (const { source } of publishedAnchors) expect(list).toContain(`key: ${source},`);
  });
});
