import { expect, test } from 'vitest';
import { sameDecimals } from '../../src/base/same-decimals.js';

test('numbers of one unit stand with as many decimals in a column, whatever else is in it', () => {
  expect(sameDecimals([['as planned', '1', '3 kg'], ['lighter', '0.92', '2.75 kg'], ['other', 'unknown', '−4 kg']])).toEqual([['as planned', '1.00', '3.00 kg'], ['lighter', '0.92', '2.75 kg'], ['other', 'unknown', '−4.00 kg']]);
});

test('each unit by itself; fractions, ranges and sizes stay as they are', () => {
  const rows = [['12 mm'], ['0.5 in'], ['3/4 in'], ['1-1/2 in'], ['19 × 38 mm'], ['about 1 in 6'], ['2 to 3 mm'], ['7 mm']];
  expect(sameDecimals(rows)).toEqual(rows);
});
