import { expect, test } from 'vitest';
import { relaxes, type Applied } from '../../src/findings/applied.js';

const plain: Applied = { name: 'Evening class', version: null, date: null, fingerprint: '01234567', switched_off: [], loosened: [], replaced: [] };
const off = [{ rule: 'bars/inward-bow', reason: 'Shown by hand.' }];
const loosened = [{ limit: 'inward-bow', was: '1/400', is: '1/250', read: { was: '1/400', is: '1/250' }, surely: true }];
const replaced = [{ rule: 'frame/twist-reserve', was: 'at least 1.5', is: 'at least 1', read: { was: 'at least 1.5', is: 'at least 1' } }];

test('a ruleset that asks all the baseline asks relaxes nothing', () => expect(relaxes(plain)).toBe(false));

test('each way of asking less counts by itself', () => {
  expect(relaxes({ ...plain, switched_off: off })).toBe(true);
  expect(relaxes({ ...plain, loosened })).toBe(true);
  expect(relaxes({ ...plain, replaced })).toBe(true);
});

test('one kind of relaxing never outweighs another', () => {
  expect(relaxes({ ...plain, switched_off: off, loosened })).toBe(true);
  expect(relaxes({ ...plain, loosened, replaced })).toBe(true);
  expect(relaxes({ ...plain, switched_off: off, replaced })).toBe(true);
  expect(relaxes({ ...plain, switched_off: off, loosened: [...loosened, ...loosened], replaced })).toBe(true);
});
