import { expect, test } from 'vitest';
import { fieldsOf, lazily } from '../../src/base/lazily.js';

test('fields of another are worked out when they are read, once, and those that are given besides count instead', () => {
  const asked: string[] = [];
  const note = <T>(name: string, value: T) => (): T => {
    asked.push(name);
    return value;
  };
  const one = lazily<{ a: number; b: number; c: number | null }>({ a: note('a', 3), b: note('b', 5), c: note('c', null) });
  const other = lazily<{ a: number; b: number; c: number | null; d: number }>({ ...fieldsOf(one), b: note('other b', 7), d: note('d', 9) });
  expect(asked).toEqual([]);
  expect([other.a, other.b, other.c, other.d, other.a, one.a]).toEqual([3, 7, null, 9, 3, 3]);
  expect(asked).toEqual(['a', 'other b', 'c', 'd']);
  expect(Object.keys(other)).toEqual(['a', 'b', 'c', 'd']);
});
