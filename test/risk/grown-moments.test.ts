import { expect, test } from 'vitest';
import { grownMoments } from '../../src/risk/lift-curve.js';

test('where nothing stiffens, pull magnifies mean and spread alike: by 1/(1 − f)', () => {
  expect(grownMoments({ pull_share: 0.6, beta_per_mm2: 0 }, { mean: 2, sd: 3 })).toEqual({ mean: 5, sd: 7.5 });
  expect(grownMoments({ pull_share: 0, beta_per_mm2: 0 }, { mean: -2, sd: 3 })).toEqual({ mean: -2, sd: 3 });
});
