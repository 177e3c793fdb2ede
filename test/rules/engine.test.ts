import { Engine } from 'json-rules-engine';
import { describe, expect, test } from 'vitest';
import { decide, type EngineLine, type Question } from '../../src/rules/judge/engine.js';

/** Whether the bare engine holds one rule true. */
async function bare(conditions: object, facts: Record<string, unknown>, options: object = {}): Promise<boolean> {
  const engine = new Engine([], options);
  engine.addRule({ conditions: conditions as never, event: { type: 'held' } });
  return (await engine.run(facts)).results.length === 1;
}

describe('weak points of the engine, and the guard before it', () => {
  const asking = (lines: readonly EngineLine[], about = 'q', join: 'all' | 'any' = 'all'): Question => ({ about, event: 'held', priority: 1, when: { join, parts: lines } });
  const tooBig = asking([{ fact: 'bow', operator: 'greaterThan', value: 3 }], 'too big');
  const facts = (value: unknown): Map<string, number | string> => new Map([['bow', value as number]]);

  test('a NaN fact makes "too big" false, so the rule would pass: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: Number.NaN })).toBe(false);
    await expect(decide([tooBig], facts(Number.NaN))).rejects.toThrow('not finite');
    await expect(decide([tooBig], facts(Number.POSITIVE_INFINITY))).rejects.toThrow('not finite');
  });

  test('an undefined fact value is false too: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: undefined })).toBe(false);
    await expect(decide([tooBig], facts(undefined))).rejects.toThrow('missing');
  });

  test('a numeric string is taken for a number: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'lessThan', value: 3 }] }, { bow: '2' })).toBe(true);
    await expect(decide([tooBig], facts('4'))).rejects.toThrow('another kind');
  });

  test('a missing fact throws and loses the whole run, or is just false when allowed: refused', async () => {
    await expect(bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {})).rejects.toThrow('Undefined fact');
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {}, { allowUndefinedFacts: true })).toBe(false);
    await expect(decide([tooBig], new Map())).rejects.toThrow('missing');
  });

  test('a missing path inside an object is false, and `not` around it true: paths are never passed on', async () => {
    const missing = { fact: 'bar', path: '$.bow', operator: 'greaterThan', value: 3 };
    expect(await bare({ all: [missing] }, { bar: {} })).toBe(false);
    expect(await bare({ not: missing }, { bar: {} })).toBe(true);
    const smuggled = { fact: 'bow', path: '$..constructor', operator: 'lessThanInclusive', value: 3 } as never;
    expect((await decide([asking([smuggled])], facts(2))).get('q')).toMatchObject({ event: 'held', held: [smuggled] });
  });

  test('an empty group holds, whichever it is: refused', async () => {
    expect(await bare({ all: [] }, {})).toBe(true);
    expect(await bare({ any: [] }, {})).toBe(true);
    for (const join of ['all', 'any'] as const) {
      await expect(decide([asking([], 'empty', join)], new Map())).rejects.toThrow('empty');
      await expect(decide([{ ...tooBig, when: { join: 'any', parts: [...tooBig.when.parts, { join, parts: [] }] } }], facts(4))).rejects.toThrow('empty');
    }
  });

  test('an unknown operator is accepted when added and fails only at run: refused', async () => {
    expect(() => new Engine().addRule({ conditions: { all: [{ fact: 'bow', operator: 'about', value: 3 }] }, event: { type: 'held' } })).not.toThrow();
    await expect(bare({ all: [{ fact: 'bow', operator: 'about', value: 3 }] }, { bow: 1 })).rejects.toThrow('Unknown operator');
    await expect(decide([asking([{ fact: 'bow', operator: 'about' as never, value: 3 }])], facts(1))).rejects.toThrow('unknown operator');
  });

  test('a value that is an object reads another fact: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'equal', value: { fact: 'other' } }] }, { bow: 1, other: 1 })).toBe(true);
    await expect(decide([asking([{ fact: 'bow', operator: 'equal', value: { fact: 'bow' } as never }])], facts(1))).rejects.toThrow('another kind');
  });

  test('words are never measured', async () => {
    await expect(decide([asking([{ fact: 'bow', operator: 'lessThan', value: 'zzz' }])], facts('abc'))).rejects.toThrow('word');
  });

  test('unequal priorities leave holes in the trace: all questions have the same, and every one is answered', async () => {
    const engine = new Engine();
    const lines = [{ fact: 'a', operator: 'equal', value: 1, priority: 2 }, { fact: 'b', operator: 'equal', value: 1, priority: 1 }];
    engine.addRule({ conditions: { all: lines }, event: { type: 'held' } });
    const [failed] = (await engine.run({ a: 2, b: 1 })).failureResults;
    expect((failed!.conditions as unknown as { readonly all: readonly { readonly result?: boolean }[] }).all.map(({ result }) => result)).toEqual([false, undefined]);
    const asked = Array.from({ length: 300 }, (_, index): Question => asking([{ fact: 'bow', operator: 'greaterThanInclusive', value: index }], `q${index}`, index % 2 ? 'all' : 'any'));
    const answers = await decide(asked, facts(100));
    expect([...answers.keys()]).toEqual(asked.slice(0, 101).map(({ about }) => about));
  });

  test('of several questions about one case that hold, the one of the highest priority decides, wherever it stands', async () => {
    const of = (event: string, priority: number, value: number): Question => ({ about: 'case', event, priority, when: { join: 'all', parts: [{ fact: 'bow', operator: 'greaterThan', value }] } });
    const events = async (bow: number): Promise<string | undefined> => (await decide([of('clear', 1, 0), of('stop', 3, 8), of('caution', 2, 5)], facts(bow))).get('case')?.event;
    expect(await Promise.all([-1, 4, 6, 9].map(events))).toEqual([undefined, 'clear', 'caution', 'stop']);
  });

  test('groups inside groups are decided by the engine, and the lines that made them hold are told', async () => {
    const line = (value: number): EngineLine => ({ fact: 'bow', operator: 'greaterThan', value });
    const [low, mid, high] = [line(1), line(5), line(9)];
    const nested: Question = { about: 'case', event: 'held', priority: 1, when: { join: 'any', parts: [{ join: 'all', parts: [low!, { join: 'any', parts: [high!, mid!] }] }, { join: 'all', parts: [high!, low!] }] } };
    expect((await decide([nested], facts(6))).get('case')?.held).toEqual([low, mid]);
    expect((await decide([nested], facts(3))).get('case')).toBeUndefined();
    expect((await decide([nested], facts(10))).get('case')?.held).toEqual([low, high, mid, high, low]);
  });

  test('a question asked twice under one name is refused', async () => {
    await expect(decide([tooBig, tooBig], facts(1))).rejects.toThrow('twice');
  });

  test('runs at the same time do not disturb each other', async () => {
    const asked = Array.from({ length: 40 }, (_, index) => decide([tooBig], facts(index)));
    expect((await Promise.all(asked)).map((answers) => answers.has('too big'))).toEqual(Array.from({ length: 40 }, (_, index) => index > 3));
  });

  test('an answer that is remembered is the one the engine gave: for these values, this comparison and this event alone', async () => {
    const more = Array.from({ length: 4100 }, (_, index): Question => asking([{ fact: 'bow', operator: 'lessThan', value: index - 0.5 }], `more ${index}`));
    const ask = async (bow: number, value: number, operator: EngineLine['operator'], event: string): Promise<unknown> =>
      [...(await decide([{ about: 'q', event, priority: 2, when: { join: 'any', parts: [{ fact: 'bow', operator, value }, { fact: 'bow', operator: 'equal', value: 7 }] } }], facts(bow))).values()];
    for (let round = 0; round < 3; round++) {
      expect(await ask(4, 3, 'greaterThan', 'stop')).toEqual([{ event: 'stop', priority: 2, held: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }]);
      expect(await ask(4, 3, 'greaterThan', 'caution')).toMatchObject([{ event: 'caution' }]);
      expect(await ask(4, 3, 'lessThan', 'stop')).toEqual([]);
      expect(await ask(3, 4, 'greaterThan', 'stop')).toEqual([]);
      expect(await ask(7, 9, 'greaterThan', 'stop')).toMatchObject([{ held: [{ operator: 'equal' }] }]);
      if (round === 1) expect((await decide(more, facts(4))).size).toBe(4095);
    }
  });
});
