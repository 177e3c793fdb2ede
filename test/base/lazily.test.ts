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

test('is like any other object: copied, written out and compared by its fields alone, those too that are known', () => {
  const known = { k: 1 };
  let times = 0;
  const one = lazily({ a: () => ({ n: ++times }), none: () => undefined }, known);
  expect(one).toBe(known);
  expect([{ ...one }, JSON.stringify(one), Reflect.ownKeys(one)]).toEqual([{ k: 1, a: { n: 1 }, none: undefined }, '{"k":1,"a":{"n":1}}', ['k', 'a', 'none']]);
  expect(one.a).toBe(one.a);
  Object.defineProperty(one, 'a', { value: 7 });
  expect([one.a, times]).toEqual([7, 1]);
});

test('a field whose making threw is made when it is asked for again; one that is made stays, where two objects share the making too', () => {
  let times = 0;
  const parts = { a: () => { if (++times === 1) throw new Error('not yet'); return { times }; } };
  const [one, other] = [lazily(parts, { k: 1 }), lazily(parts, { k: 2 })];
  expect(() => one.a).toThrow('not yet');
  expect([one.a.times, other.a === one.a, times]).toEqual([2, true, 2]);
});
