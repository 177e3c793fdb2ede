import { expect, test } from 'vitest';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from './shelf-for-tests.js';

/** Bars 38 mm deep with crossbars 38 mm deep, set back by so much from the cloth: their backs stand that far out behind the bars. */
function hung(crossbars: string, hang = ''): readonly [by: string, from: string, told: string | undefined] {
  const text = `plan: 1\nname: Settled\nface: { width: 1100 mm, height: 830 mm }\nbars: { stock: strip-19x38, lay: edge }\ncrossbars: [ ${crossbars} ]\n${hang}`;
  const read = readPlanWith(text, 'plan.yaml', shippedShelf());
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return [read.value.hang.by, read.value.hang.from, read.value.assumed.find(({ path }) => path === 'hang.from')?.value];
}
const bar = (runs: string, setback: number, at = 0.5): string => `{ runs: ${runs}, at: ${at}, stock: strip-19x38, lay: edge, setback: ${setback} mm }`;

test('a wire goes inside the bars where no upright stands in its way; level crossbars never do', () => {
  expect(hung('')[1]).toBe('inside');
  expect(hung(bar('level', 5)).slice(0, 2)).toEqual(['wire', 'inside']);
  // laid flat it ends 14 mm in front of the backs: the wire passes it 8 mm in front of them
  expect(hung('{ runs: upright, at: 0.5, stock: strip-19x38, lay: flat, setback: 5 mm }').slice(0, 2)).toEqual(['wire', 'inside']);
});

test('from the back where a wire from the inside would meet an upright: 2 mm out, the wire 4 mm behind keeps its 2 mm', () => {
  expect(hung(bar('upright', 2))).toEqual(['wire', 'back', 'the back of the bars, since a wire from the inside would run into the upright crossbar']);
  expect(hung(bar('upright', 2, 0.7)).slice(0, 2)).toEqual(['wire', 'back']);
});

test('two hooks without a wire where it would meet the upright from either face; a named wire stays, from the back', () => {
  expect(hung(bar('upright', 3)).slice(0, 2)).toEqual(['two-hooks', 'inside']);
  expect(hung(`${bar('level', 5)}, ${bar('upright', 5)}`)[0]).toBe('two-hooks');
  expect(hung(bar('upright', 5), 'hang: { by: wire, slack: 70 mm }').slice(0, 2)).toEqual(['wire', 'back']);
  expect(hung(bar('upright', 5), 'hang: { by: wire, slack: 70 mm, from: inside }').slice(0, 2)).toEqual(['wire', 'inside']);
});

test('a wire from the inside comes nearer the wall on its way to the hook: it passes in front of an upright from there on, wherever its hooks are', () => {
  // Bars 19 × 38 mm: from half their depth, 19 mm, at their inner edge down to 8 mm at the hook; an upright laid flat begins 15 mm in front of the backs and wants 2 mm, so 13 mm.
  const from = (at_mm: number, hang: string) => hung(`{ runs: upright, at: ${at_mm} mm, stock: strip-19x38, lay: flat, setback: 4 mm }`, hang)[1];
  const reached = (hook_mm: number) => 19 + ((hook_mm - 19) * (19 - 13)) / (19 - 8);
  for (const [hooks, hook_mm] of [[2, (1100 - (1100 - 38) / 3) / 2], [1, 550]] as const) {
    const hang = `hang: { hooks: ${hooks} }`;
    expect([-1, 1].map((off) => from(Math.round(10 * (reached(hook_mm) + off)) / 10, hang))).toEqual(['back', 'inside']);
    expect([1, -1].map((off) => from(Math.round(10 * (1100 - reached(hook_mm) + off)) / 10, hang))).toEqual(['back', 'inside']);
  }
});
