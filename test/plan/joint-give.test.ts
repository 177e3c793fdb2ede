import { describe, expect, test } from 'vitest';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { cornerGive } from '../../src/model/joint-give.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

const words = (corners: string): string => `plan: 1\nname: Test piece\nface: { width: 700 mm, height: 500 mm }\nbars: { stock: strip-19x38, lay: flat }\ncorners: ${corners}\n`;
const read = (corners: string) => readPlanWith(words(corners), 'plan.yaml', demoShelf());
const given = (corners: string) => {
  const plan = read(corners);
  if (!plan.ok) throw new Error('not read');
  return plan.value.corners;
};

describe('how much a joint gives', () => {
  test('a number means all three ways; each way may have its own; a brace has its ends’', () => {
    expect(given('{ give: 3 }').give).toEqual({ plane: 3, out: 3, twist: 3 });
    expect(given('{ give: { plane: 100, out: 8, twist: 5 } }').give).toEqual({ plane: 100, out: 8, twist: 5 });
    expect(given('{ brace: { leg: 120 mm, give: { plane: 1, out: 2, twist: 3 } } }').brace?.give).toEqual({ plane: 1, out: 2, twist: 3 });
  });

  test('a way that is missing, unknown or below nothing is a problem where it stands', () => {
    for (const wrong of ['{ plane: 100, out: 8 }', '{ plane: 1, out: 1, twist: 1, racking: 1 }', '{ plane: -1, out: 8, twist: 8 }', 'soft']) {
      expect(read(`{ give: ${wrong} }`).ok, wrong).toBe(false);
    }
  });

  test('the ends of a timber brace give as those of a crossbar: the shelf’s for glued or dry, said under what was assumed', () => {
    const face = { face: { width: '700 mm', height: '500 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } };
    const give = (corners: object) => demoModel({ ...face, corners }).shape.braces[0]?.give;
    expect(give({ brace: { leg: '120 mm' } })).toEqual({ plane: 6, out: 6, twist: 6 });
    expect(give({ glue: 'none', brace: { leg: '120 mm' } })).toEqual({ plane: 20, out: 20, twist: 20 });
    expect(give({ brace: { leg: '120 mm', give: 0 } })).toEqual({ plane: 0, out: 0, twist: 0 });
  });

  test('a dry corner whose nail is not on the shelf gives as one without nails', () => {
    const shelf = demoShelf();
    const dry = demoModel({ face: { width: '700 mm', height: '500 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { cut: 'butt', glue: 'none', nails: { use: 'brad-18ga-25', each: 2 } } }).plan;
    const bar = { w_mm: 38, d_mm: 38 };
    expect(dry.corners.nails).not.toBeNull();
    expect(cornerGive(dry, { ...shelf, nails: {} }, bar)).toEqual(cornerGive({ ...dry, corners: { ...dry.corners, nails: null } }, shelf, bar));
  });
});
