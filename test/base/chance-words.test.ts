import { expect, test } from 'vitest';
import { chanceGoes, chanceInWords, chanceTimes } from '../../src/base/chance-words.js';

test('a chance is told of frames, of how many go somewhere, and of times, from one rounding', () => {
  const told = (chance: number) => [chanceInWords(chance), chanceGoes(chance), chanceTimes(chance)];
  expect(told(0.17)).toEqual(['about 1 in 6', 'about 1 in 6 goes', '1 time in 6']);
  expect(told(0.41)).toEqual(['about 2 in 5', 'about 2 in 5 go', '2 times in 5']);
  expect(told(1 / 1501)).toEqual(['fewer than 1 in 1000', 'fewer than 1 in 1000 goes', 'less than 1 time in 1000']);
  expect(told(0.98)).toEqual(['nearly all', 'nearly all go', 'nearly always']);
  expect(told(Number.NaN)[2]).toBe('an unknown number of times');
});
