import { Engine } from 'json-rules-engine';
import { describe, expect, test } from 'vitest';
import { decide, heldLines, type Answer, type Answers, type EngineLine, type EnginePart, type EngineRule } from '../../src/rules/judge/engine.js';

/** Whether the bare engine holds one rule true. */
async function bare(conditions: object, facts: Record<string, unknown>, options: object = {}): Promise<boolean> {
  const engine = new Engine([], options);
  engine.addRule({ conditions: conditions as never, event: { type: 'held' } });
  return (await engine.run(facts)).results.length === 1;
}

describe('weak points of the engine, and the guard before it', () => {
  const asking = (...questions: readonly EnginePart[]): readonly EngineRule[] => [{ event: 'held', priority: 1, questions: questions.map((when, about) => ({ about, when })) }];
  const line = (actual: unknown, operator: EngineLine['operator'], value: unknown): EngineLine => ({ fact: 'bow', actual: actual as number, operator, value: value as number });
  const tooBig = (bow: unknown): EngineLine => line(bow, 'greaterThan', 3);
  /** A line by itself, and the same in groups. */
  const ways: readonly ((part: EngineLine) => EnginePart)[] = [(part) => part, (part) => ({ join: 'all', parts: [part] }), (part) => ({ join: 'any', parts: [line(1, 'equal', 2), { join: 'all', parts: [line(1, 'equal', 1), part] }] })];
  const refused = async (part: EngineLine, why: string): Promise<void> => {
    for (const way of ways) await expect(decide(asking(way(part)))).rejects.toThrow(why);
  };
  /** The cases of which a question held. */
  const said = (answers: Answers): readonly number[] => [...answers.keys()].filter((about) => answers[about] !== undefined);
  const held = (answer: Answer | undefined): readonly EngineLine[] | undefined => answer && heldLines(answer.when, answer.trace);

  test('a NaN fact makes "too big" false, so the rule would pass: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: Number.NaN })).toBe(false);
    await refused(tooBig(Number.NaN), 'not finite');
    await refused(tooBig(Number.POSITIVE_INFINITY), 'not finite');
    await refused(line(1, 'greaterThan', Number.NaN), 'not finite');
  });

  test('an undefined fact value is false too: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, { bow: undefined })).toBe(false);
    await refused(tooBig(undefined), 'missing');
  });

  test('a numeric string is taken for a number: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'lessThan', value: 3 }] }, { bow: '2' })).toBe(true);
    await refused(tooBig('4'), 'another kind');
  });

  test('a missing fact throws and loses the whole run, or is just false when allowed: values come with what is asked of them', async () => {
    await expect(bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {})).rejects.toThrow('Undefined fact');
    expect(await bare({ all: [{ fact: 'bow', operator: 'greaterThan', value: 3 }] }, {}, { allowUndefinedFacts: true })).toBe(false);
    await refused({ fact: 'bow', operator: 'greaterThan', value: 3 } as never, 'missing');
  });

  test('a missing path inside an object is false, and `not` around it true: paths are never passed on', async () => {
    const missing = { fact: 'bar', path: '$.bow', operator: 'greaterThan', value: 3 };
    expect(await bare({ all: [missing] }, { bar: {} })).toBe(false);
    expect(await bare({ not: missing }, { bar: {} })).toBe(true);
    const smuggled = { ...line(2, 'lessThanInclusive', 3), path: '$..constructor' };
    for (const way of ways) expect(held((await decide(asking(way(smuggled))))[0])?.at(-1)).toBe(smuggled);
  });

  test('an empty group holds, whichever it is: refused', async () => {
    expect(await bare({ all: [] }, {})).toBe(true);
    expect(await bare({ any: [] }, {})).toBe(true);
    for (const join of ['all', 'any'] as const) {
      await expect(decide(asking({ join, parts: [] }))).rejects.toThrow('empty');
      await expect(decide(asking({ join: 'any', parts: [tooBig(4), { join, parts: [] }] }))).rejects.toThrow('empty');
    }
  });

  test('an unknown operator is accepted when added and fails only at run: refused', async () => {
    expect(() => new Engine().addRule({ conditions: { all: [{ fact: 'bow', operator: 'about', value: 3 }] }, event: { type: 'held' } })).not.toThrow();
    await expect(bare({ all: [{ fact: 'bow', operator: 'about', value: 3 }] }, { bow: 1 })).rejects.toThrow('Unknown operator');
    await refused(line(1, 'about' as never, 3), 'unknown operator');
  });

  test('a value that is an object reads another fact: refused', async () => {
    expect(await bare({ all: [{ fact: 'bow', operator: 'equal', value: { fact: 'other' } }] }, { bow: 1, other: 1 })).toBe(true);
    await refused(line(1, 'equal', { fact: 'bow' }), 'another kind');
  });

  test('words are never measured', async () => {
    await refused(line('abc', 'lessThan', 'zzz'), 'word');
  });

  test('unequal priorities leave holes in the trace: all questions have the same, and every one is answered', async () => {
    const engine = new Engine();
    const lines = [{ fact: 'a', operator: 'equal', value: 1, priority: 2 }, { fact: 'b', operator: 'equal', value: 1, priority: 1 }];
    engine.addRule({ conditions: { all: lines }, event: { type: 'held' } });
    const [failed] = (await engine.run({ a: 2, b: 1 })).failureResults;
    expect((failed!.conditions as unknown as { readonly all: readonly { readonly result?: boolean }[] }).all.map(({ result }) => result)).toEqual([false, undefined]);
    const asked = Array.from({ length: 300 }, (_, index): EnginePart => ways[index % 3]!(line(100, 'greaterThanInclusive', index)));
    const answers = await decide(asking(...asked));
    expect(said(answers)).toEqual(asked.slice(0, 101).map((_, index) => index));
  });

  test('of several rules that hold for one case, the one of the highest priority decides, wherever it stands', async () => {
    const of = (event: string, priority: number, ...questions: readonly EnginePart[]): EngineRule => ({ event, priority, questions: questions.map((when, about) => ({ about, when })) });
    const beyond = (value: number, ...bows: readonly number[]): readonly EngineLine[] => bows.map((bow) => line(bow, 'greaterThan', value));
    const bows = [-1, 4, 6, 9];
    const answers = await decide([of('clear', 1, ...beyond(0, ...bows)), of('stop', 3, ...beyond(8, ...bows)), of('caution', 2, ...beyond(5, ...bows))]);
    expect(bows.map((_, about) => answers[about]?.event)).toEqual([undefined, 'clear', 'caution', 'stop']);
    await expect(decide([of('clear', 1, tooBig(4)), of('stop', 1, tooBig(5))])).rejects.toThrow('priority');
  });

  test('groups inside groups are decided by the engine, and the lines that made them hold are told', async () => {
    const told = async (bow: number) => {
      const [low, mid, high] = [line(bow, 'greaterThan', 1), line(bow, 'greaterThan', 5), line(bow, 'greaterThan', 9)];
      const nested: EnginePart = { join: 'any', parts: [{ join: 'all', parts: [low!, { join: 'any', parts: [high!, mid!] }] }, { join: 'all', parts: [high!, low!] }] };
      return held((await decide(asking(nested)))[0])?.map(({ value }) => value);
    };
    expect([await told(6), await told(3), await told(10)]).toEqual([[1, 5], undefined, [1, 9, 5, 9, 1]]);
  });

  test('a case that is asked twice by one rule is refused', async () => {
    for (const second of [0, -1]) await expect(decide([{ event: 'held', priority: 1, questions: [{ about: 0, when: tooBig(1) }, { about: second, when: tooBig(1) }] }])).rejects.toThrow('twice');
  });

  test('questions that are the same are put once and answered for each of their cases', async () => {
    const answers = await decide(asking(tooBig(3.25), tooBig(2.25), ways[1]!(tooBig(3.25)), tooBig(3.25), ways[1]!(tooBig(3.25)), tooBig(2.25)));
    expect(said(answers).map((about) => [about, held(answers[about])])).toEqual([0, 2, 3, 4].map((about) => [about, [tooBig(3.25)]]));
  });

  test('runs at the same time do not disturb each other', async () => {
    const asked = Array.from({ length: 40 }, (_, index) => decide(asking(tooBig(index % 20), ways[2]!(tooBig(index % 20)))));
    expect((await Promise.all(asked)).map((answers) => said(answers))).toEqual(Array.from({ length: 40 }, (_, index) => (index % 20 > 3 ? [0, 1] : [])));
  });

  test('what is put again after a run that failed is answered', async () => {
    await expect(decide(asking(tooBig(5.125), line(5.125, 'about' as never, 1)))).rejects.toThrow('unknown operator');
    expect(said(await decide(asking(tooBig(5.125)))).length).toBe(1);
  });

  test('an answer that is remembered is the one the engine gave: for these values, this comparison and this event alone', async () => {
    const more = Array.from({ length: 4100 }, (_, index): EnginePart => line(4, 'lessThan', index - 0.5));
    for (const way of ways) {
      const ask = async (bow: number, value: number, operator: EngineLine['operator'], event: string, priority = 2): Promise<unknown> =>
        [...(await decide([{ event, priority, questions: [{ about: 0, when: way(line(bow, operator, value)) }] }]))].map((answer) => [answer?.event, answer?.priority, held(answer)?.at(-1)]);
      for (let round = 0; round < 3; round++) {
        expect(await ask(4, 3, 'greaterThan', 'stop')).toEqual([['stop', 2, line(4, 'greaterThan', 3)]]);
        expect(await ask(4, 3, 'greaterThan', 'caution')).toMatchObject([{ 0: 'caution', 1: 2 }]);
        expect(await ask(4, 3, 'greaterThan', 'stop', 5)).toMatchObject([{ 0: 'stop', 1: 5 }]);
        expect(await ask(4, 3, 'lessThan', 'stop')).toEqual([]);
        expect(await ask(3, 4, 'greaterThan', 'stop')).toEqual([]);
        expect(await ask(3, 3, 'greaterThanInclusive', 'stop')).toMatchObject([{ 0: 'stop', 1: 2 }]);
        expect(await ask(3, 3, 'greaterThan', 'stop')).toEqual([]);
        if (round === 1) expect(said(await decide(asking(...more))).length).toBe(4095);
      }
    }
  });
});
