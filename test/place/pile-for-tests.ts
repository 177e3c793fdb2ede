import type { Frame } from '../../src/place/frame.js';
import { placeProblem, type PlaceProblem } from '../../src/place/problem.js';
import { copiesOf, slotsOf } from '../../src/place/slots.js';
import { factSettings } from '../../src/bench.js';
import { buildModel } from '../../src/model/build-model.js';
import type { Pile, PileBoard } from '../../src/pile/pile.js';
import type { Plan } from '../../src/plan/plan.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { bench, planOf } from '../suggest/studio.js';

export { bench, planOf };

export const deg = Math.PI / 180;

/** A board of the pile, unread but for what is given; twist in degrees per metre. */
export function board(mark: string, of: Partial<Omit<PileBoard, 'twist_rad_per_m'>> & { readonly twist?: number } = {}): PileBoard {
  const { twist, ...rest } = of;
  return { mark, marked: true, stock: 'strip-19x38', length_mm: 1200, twist_rad_per_m: twist === undefined ? null : twist * deg, bow_per_m: null, crook_per_m: null, knots: [], cut: null, ...rest };
}

export const pileOf = (boards: readonly PileBoard[]): Pile => ({ name: 'Test rack', units: 'metric', boards });

const solved = new Map<string, Pick<Frame, 'model' | 'solution' | 'settings'>>();

/** The frames of plans, each plan solved once. */
export function framesOf(plans: readonly Plan[]): readonly Frame[] {
  return copiesOf(plans).map(({ plan, copy }) => {
    const key = JSON.stringify({ ...plan, assumed: [], count: 1 });
    let one = solved.get(key);
    if (one === undefined) {
      const model = buildModel(plan, bench.shelf);
      solved.set(key, (one = { model, solution: solveModel(model), settings: factSettings(model, bench) }));
    }
    return { ...one, copy };
  });
}

/** The search's problem for plans and boards. */
export const problemOf = (plans: readonly Plan[], boards: readonly PileBoard[]): PlaceProblem => placeProblem(framesOf(plans), slotsOf(plans, bench.shelf), boards, bench.shelf.cutting.kerf_mm);

/** Frames of several builds, unsymmetric, each with a few pieces. */
export const someFrames = {
  single: 'plan: 1\nname: Single\nface: { width: 870 mm, height: 610 mm }\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: plain, moisture: 9 % }\n',
  edge: 'plan: 1\nname: On edge\nface: { width: 940 mm, height: 520 mm }\nbars: { stock: strip-19x38, lay: edge }\nlumber: { chosen: plain, moisture: 14 % }\n',
  crossed: 'plan: 1\nname: Crossed\nface: { width: 1130 mm, height: 640 mm }\nbars: { stock: strip-19x38, lay: flat }\ncrossbars: [ { runs: upright, at: 1/3 } ]\nlumber: { chosen: unsorted, moisture: 12 % }\n',
  braced: 'plan: 1\nname: Twice crossed\nface: { width: 1010 mm, height: 830 mm }\nbars: { stock: strip-19x38, lay: flat }\ncrossbars: [ { runs: upright, at: 2/5 }, { runs: level, at: 1/3 } ]\nlumber: { chosen: picked, moisture: 11 % }\n',
} as const;
