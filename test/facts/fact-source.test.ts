import { expect, test } from 'vitest';
import { catalogue, specOf } from '../../src/facts/catalogue.js';
import type { FactInput } from '../../src/facts/declare.js';
import { factInput, factsGiven, factsOfPlan, factsWanted } from '../../src/facts/fact-source.js';
import { elements } from '../../src/facts/fact.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

const face = { width: '1150 mm', height: '830 mm' };
const plans = [
  { face, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, crossbars: [{ runs: 'upright', at: '2/5', stock: 'strip-19x38', lay: 'flat', setback: '18 mm' }] },
  { face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { cut: 'butt', glue: 'none' }, hang: { by: 'two-hooks' } },
  { face, bars: { stock: 'strip-19x38', lay: 'flat' }, hang: { by: 'none' } },
];
const settings = { corner_lift_limit_mm: 5, bar_bow_limit_mm: { top: 3, bottom: 3, left: 2, right: 2 }, seed: 1, samples: 500 };

const inputOf = (plan: object): FactInput => {
  const model = demoModel(plan);
  return factInput(model, solveModel(model), settings, demoShelf());
};

test('a fact is worked out when it is asked for, and then only from what it needs', () => {
  const { model, settings: own } = inputOf(plans[0]!);
  const read: string[] = [];
  const watched: FactInput = {
    model, settings: own,
    get solution(): never { read.push('solution'); throw new Error('solved'); },
    get cut(): never { read.push('cut'); throw new Error('cut'); },
    get too_long(): never { read.push('too long'); throw new Error('too long'); },
    get bought(): never { read.push('bought'); throw new Error('bought'); },
  };
  const source = factsOfPlan(watched);
  expect(source.at('frame.width_mm', 'frame')).toEqual({ path: 'frame.width_mm', about: 'frame', value: 1150, unit: 'mm' });
  expect(source.at('cutting.spend_set', 'cutting')).toMatchObject({ value: 'no' });
  expect(source.abouts('cutting')).toEqual(['cutting']);
  expect(read).toEqual([]);
  expect(() => source.at('cutting.pieces_too_long', 'cutting')).toThrow('too long');
  expect(() => source.at('cutting.total_cost', 'cutting')).toThrow('bought');
  expect(read).toEqual(['too long', 'bought']);
});

test.each(plans.map((plan, number) => [number, plan] as const))('plan %i: asked one by one, all at once, or as a list, the facts are the same', (_, plan) => {
  const whole = factsOfPlan(inputOf(plan)).all();
  expect(factsWanted(inputOf(plan), () => true)).toEqual(whole);
  const source = factsOfPlan(inputOf(plan));
  const given = factsGiven(whole);
  for (const { path, about } of [...whole].reverse()) expect(given.at(path, about), `${path} @ ${about}`).toEqual(source.at(path, about));
  expect(source.all()).toEqual(whole);
  for (const { path } of catalogue) expect([source.at(path, 'nobody'), given.at(path, 'nobody')]).toEqual([null, null]);
  // An element that is there has some fact, so that the kinds of a plan are known before their facts are.
  for (const each of elements.filter((one) => one !== 'frame')) {
    expect(new Set(source.abouts(each)), each).toEqual(new Set(whole.filter(({ path }) => specOf(path).each === each).map(({ about }) => about)));
    expect(new Set(given.abouts(each)), each).toEqual(new Set(source.abouts(each)));
  }
});
