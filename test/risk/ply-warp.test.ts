import { Matrix, inverse } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { plyCorrelation, sumPlies, type PlyKnowledge } from '../../src/risk/pairing.js';
import { warpWeights, type PlyStack } from '../../src/risk/ply-warp.js';

const pair: PlyStack = { plies: 2, lay: 'edge', stack: 'side-by-side', bond: 'glue', J_ply_mm4: 3, J_bar_mm4: 15 };
const weightOf = (stack: Partial<PlyStack>, kind: string) => warpWeights({ ...pair, ...stack }).find((weight) => weight.kind === kind);

describe('from boards to bar', () => {
  it('maps the boards’ bow and crook by how they lie', () => {
    expect(weightOf({ lay: 'flat' }, 'out')?.from).toBe('bow');
    expect(weightOf({ lay: 'flat' }, 'plane')?.from).toBe('crook');
    expect(weightOf({ lay: 'edge' }, 'out')?.from).toBe('crook');
    expect(weightOf({ lay: 'edge' }, 'plane')?.from).toBe('bow');
  });

  it('leaves Σκ/n³ across the glue lines and Σκ/n along them', () => {
    for (const plies of [2, 3, 4]) {
      expect(weightOf({ plies }, 'plane')?.weight).toBeCloseTo(1 / plies ** 3, 12);
      expect(weightOf({ plies }, 'out')?.weight).toBeCloseTo(1 / plies, 12);
      expect(weightOf({ plies, stack: 'front-to-back' }, 'out')?.weight).toBeCloseTo(1 / plies ** 3, 12);
      expect(weightOf({ plies, stack: 'front-to-back' }, 'plane')?.weight).toBeCloseTo(1 / plies, 12);
    }
  });

  it('lets screwed and loose plies share their curvature both ways', () => {
    for (const bond of ['screws', 'none'] as const) {
      expect(weightOf({ bond }, 'plane')?.weight).toBe(0.5);
      expect(weightOf({ bond }, 'out')?.weight).toBe(0.5);
    }
  });

  it('gives each ply its share of the torsion constant', () => {
    expect(weightOf({}, 'twist')?.weight).toBe(0.2);
    expect(weightOf({ plies: 1, J_bar_mm4: 3 }, 'twist')?.weight).toBe(1);
    expect(weightOf({ plies: 1 }, 'plane')?.weight).toBe(1);
  });
});

describe('pairing of plies', () => {
  it('stays a valid correlation for three and four boards, with a fifth of the variance of the sum left', () => {
    for (const n of [2, 3, 4]) {
      const rho = plyCorrelation(-0.8, n);
      expect(rho).toBeGreaterThan(-1 / (n - 1));
      expect(n * (1 + (n - 1) * rho)).toBeCloseTo(0.2 * n, 12);
      expect(plyCorrelation(0.8, n)).toBe(0.8);
    }
  });

  it.each([
    [2, 0.8, [null, null]],
    [3, -0.4, [null, 0.7, null]],
    [4, 0.3, [0.1, null, -0.6, null]],
    [4, -0.8 / 3, [null, null, null, 1.2]],
    [3, 0.8, [0.2, 0.3, 0.4]],
  ] as const)('agrees with general regression on a covariance matrix: %i plies, correlation %f, readings %j', (n, correlation, readings) => {
    const known: PlyKnowledge = { chosen: { mean: 0.25, sd: 1.3 }, drying: { mean: 0.1, sd: 0.2 }, readings, reading_sd: 0.15, correlation };
    const cov = Matrix.zeros(n, n).apply(function (this: Matrix, i: number, j: number) {
      this.set(i, j, 1.3 ** 2 * (i === j ? 1 : correlation));
    });
    const measured = readings.flatMap((reading, i) => (reading === null ? [] : [i]));
    const rest = readings.flatMap((reading, i) => (reading === null ? [i] : []));
    let mean = measured.reduce((sum, i) => sum + (readings[i] as number), 0) + n * 0.1;
    let variance = n * 0.2 ** 2;
    if (measured.length === 0) {
      mean += n * 0.25;
      variance += cov.sum();
    } else if (rest.length === 0) {
      variance += n * 0.15 ** 2;
    } else {
      const pull = cov.subMatrix(0, n - 1, 0, n - 1).selection(rest, measured).mmul(inverse(cov.selection(measured, measured)));
      const left = cov.selection(rest, rest).sub(pull.mmul(cov.selection(measured, rest)));
      const away = Matrix.columnVector(measured.map((i) => (readings[i] as number) - 0.25));
      mean += rest.length * 0.25 + pull.mmul(away).sum();
      const gain = measured.map((_, c) => 1 + pull.getColumn(c).reduce((sum, value) => sum + value, 0));
      variance += left.sum() + gain.reduce((sum, g) => sum + (g * 0.15) ** 2, 0);
    }
    const sum = sumPlies(known);
    expect(sum.mean).toBeCloseTo(mean, 12);
    expect(sum.chosen_var + sum.reading_var + sum.drying_var).toBeCloseTo(variance, 12);
  });
});
