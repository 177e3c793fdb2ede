import { expect, test } from 'vitest';
import { timesInWords } from '../../src/base/times-words.js';

test('so many times a thing, said as one says it', () => {
  expect(timesInWords('1.4', 'what its joint can')).toBe('1.4 times what its joint can');
  expect(timesInWords('1', 'what its joint can')).toBe('what its joint can');
  expect(timesInWords('just over 1', 'what its joint can')).toBe('just over what its joint can');
  expect(timesInWords('just under 2.5', 'the peak pull')).toBe('just under 2.5 times the peak pull');
  expect(timesInWords('1')).toBe('as much');
  expect(timesInWords('11', 'its load')).toBe('11 times its load');
});
