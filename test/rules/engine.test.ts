import { Engine } from 'json-rules-engine';
import { describe, expect, test } from 'vitest';
import { answer, type Question } from '../../src/rules/engine.js';

/** Whether the bare engine holds one rule true. */
async function bare(conditions: object, facts: Record<string, unknown>, options: object = {}): Promise<boolean> {
  const engine = new Engine([], options);
  engine.addRule({ conditions: conditions as never, event: { type: 'held' } });
  return (await engine.run(facts)).results.length === 1;
}

describe('weak points of the engine, and the guard before it', () => {
  const tooBig: Question = { name: 'too big', join: 'all', lines: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] };
  const facts = (value: unknown): Map<string, number | string> => new Map([['bow', value as number]]);

  test('a NaN fact makes "too big" false, so the rule would pass: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: Number.NaN })).toBe(false);
    await expect(answer([tooBig], facts(Number.NaN))).rejects.toThrow('not finite');
    await expect(answer([tooBig], facts(Number.POSITIVE_INFINITY))).rejects.toThrow('not finite');
  });

  test('an undefined fact value is false too: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: undefined })).toBe(false);
    await expect(answer([tooBig], facts(undefined))).rejects.toThrow('missing');
  });

  test('a numeric string is taken for a number: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'lessThan', value: 3 }] }, { bow: '2' })).toBe(true);
    await expect(answer([tooBig], facts('4'))).rejects.toThrow('another kind');
  });

  test('a missing fact throws and loses the whole run, or is just false when allowed: refused', async () => {
    await expect(bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {})).rejects.toThrow('Undefined fact');
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {}, { allowUndefinedFacts: true })).toBe(false);
    await expect(answer([tooBig], new Map())).rejects.toThrow('missing');
  });

  test('a missing path inside an object is false, and `not` around it true: paths are never passed on', async () => {
    const missing = { fact: 'bar', path: '$.bow', operator: 'greaterThan', value: 3 };
    expect(await bare({ all: [missing] }, { bar: {} })).toBe(false);
    expect(await bare({ not: missing }, { bar: {} })).toBe(true);
    const smuggled = { fact: 'bow', path: '$..constructor', operator: 'lessThanInclusive', value: 3 } as never;
    expect(await answer([{ name: 'q', join: 'all', lines: [smuggled] }], facts(2))).toEqual(new Map([['q', true]]));
  });

  test('an empty group holds, whichever it is: refused', async () => {
    expect(await bare({ all: [] }, {})).toBe(true);
    expect(await bare({ any: [] }, {})).toBe(true);
    for (const join of ['all', 'any'] as const) await expect(answer([{ name: 'empty', join, lines: [] }], new Map())).rejects.toThrow('empty');
  });

  test('an unknown operator is accepted when added and fails only at run: refused', async () => {
    expect(() => new Engine().addRule({ conditions: { all: [{ fact: 'bow', operator: 'about', value: 3 }] }, event: { type: 'held' } })).not.toThrow();
    await expect(bare({ all: [{ fact: 'bow', operator: 'about', value: 3 }] }, { bow: 1 })).rejects.toThrow('Unknown operator');
    await expect(answer([{ name: 'q', join: 'all', lines: [{ fact: 'bow', operator: 'about' as never, value: 3 }] }], facts(1))).rejects.toThrow('unknown operator');
  });

  test('a value that is an object reads another fact: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'equal', value: { fact: 'other' } }] }, { bow: 1, other: 1 })).toBe(true);
    await expect(answer([{ name: 'q', join: 'all', lines: [{ fact: 'bow', operator: 'equal', value: { fact: 'bow' } as never }] }], facts(1))).rejects.toThrow('another kind');
  });

  test('words are never measured', async () => {
    await expect(answer([{ name: 'q', join: 'all', lines: [{ fact: 'bow', operator: 'lessThan', value: 'zzz' }] }], facts('abc'))).rejects.toThrow('word');
  });

  test('unequal priorities leave holes in the trace: all questions have the same, and every one is answered', async () => {
    const engine = new Engine();
    const lines = [{ fact: 'a', operator: 'equal', value: 1, priority: 2 }, { fact: 'b', operator: 'equal', value: 1, priority: 1 }];
    engine.addRule({ conditions: { all: lines }, event: { type: 'held' } });
    const [failed] = (await engine.run({ a: 2, b: 1 })).failureResults;
    expect((failed!.conditions as unknown as { readonly all: readonly { readonly result?: boolean }[] }).all.map(({ result }) => result)).toEqual([false, undefined]);
    const questions = Array.from({ length: 300 }, (_, index): Question => ({ name: `q${index}`, join: index % 2 ? 'all' : 'any', lines: [{ fact: 'bow', operator: 'greaterThanInclusive', value: index }] }));
    const answers = await answer(questions, facts(100));
    expect(answers.size).toBe(300);
    expect([answers.get('q100'), answers.get('q101')]).toEqual([true, false]);
  });

  test('a question asked twice under one name is refused', async () => {
    await expect(answer([tooBig, tooBig], facts(1))).rejects.toThrow('twice');
  });

  test('runs at the same time do not disturb each other', async () => {
    const asked = Array.from({ length: 40 }, (_, index) => answer([tooBig], facts(index)));
    expect((await Promise.all(asked)).map((answers) => answers.get('too big'))).toEqual(Array.from({ length: 40 }, (_, index) => index > 3));
  });
});
