/** What many pieces cost, which boards are too short for them, and how plans are bought together. */
import { describe, expect, it } from 'vitest';
import { cutMany } from '../../src/cutting/boards/cut-many.js';
import { tooLong } from '../../src/cutting/boards/too-long.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { lipStrips } from '../../src/cutting/lip-strips.js';
import { commonUnits, frameName, poolPieces } from '../../src/cutting/pieces/pool.js';
import { fresh } from './problems.js';
import { demoShelf, studioPlan } from './studio.js';

describe('many lengths', () => {
  /** Pieces of 940 to 1,000 less one each: none fits beside another on a board of 1,000. */
  const problem = (available: number | null, kinds = 61) => fresh({ kerf: 0, stock: [{ length: 1000, price: 10, available }], items: Array.from({ length: kinds }, (_, i) => ({ length: 939 + i, count: 1 })) });
  const sum = (61 * (939 + 999)) / 2;

  it('each on a board of its own: proven by what the pieces are worth, where length alone proves nothing', () => {
    for (const available of [null, 61]) {
      const found = cutMany(problem(available));
      expect(found).toMatchObject({ ok: true, cost: 610, waste: 61_000 - sum, proven: true, tiesProven: false, bound: 610, gap: 0 });
      expect(found.ok && found.boards.flatMap(({ pieces }) => pieces).sort((p, q) => p - q)).toEqual(Array.from({ length: 61 }, (_, i) => i));
    }
  });

  it('three thousand pieces are searched as one, of which ties are proven too; one more is cut in portions, of which they are not', () => {
    const hundreds = (count: number) => cutMany(fresh({ kerf: 0, stock: [{ length: 1000, price: 70 }], items: [{ length: 10, count }] }));
    expect(hundreds(3000)).toMatchObject({ cost: 2100, waste: 0, proven: true, tiesProven: true });
    // By length 30.01 boards.
    expect(hundreds(3001)).toMatchObject({ cost: 2170, waste: 990, tiesProven: false, bound: 2101 });
  });

  it('one board too few is undecided, too few by length are not enough', () => {
    // 59,109 of length, at most 999 on a board: sixty by length.
    expect([cutMany(problem(60)), cutMany(problem(59))]).toEqual([{ ok: false, reason: 'undecided' }, { ok: false, reason: 'not-enough' }]);
  });

  it('a cutting that is known stands, with the bound of length: 60 boards of 61 paid', () => {
    const known = Array.from({ length: 61 }, (_, i) => ({ stock: 0, pieces: [i] }));
    expect(cutMany({ ...problem(null), known })).toMatchObject({ ok: true, cost: 610, boards: known, proven: false, bound: Math.ceil((sum / 999) * 10), gap: (610 - Math.ceil((sum / 999) * 10)) / 610 });
  });
});

describe('pools of plans', () => {
  it('share of knots: the most that any plan of the stock asks for, in any order', () => {
    const [none, many] = [studioPlan({ lumber: { knots: 'none' } }), studioPlan({ lumber: { knots: 'many' } })];
    const share = (...plans: readonly (typeof none)[]) => poolPieces(plans, demoShelf).knot_share['strip-19x38'];
    const told = demoShelf.cutting.knot_waste_share;
    expect(told.many).toBeGreaterThan(told.none);
    expect([share(none), share(many), share(none, many), share(many, none)]).toEqual([told.none, told.many, told.many, told.many]);
  });

  it('each piece as often as its frame is made, named so', () => {
    const [one, three] = [studioPlan(), { ...studioPlan(), count: 3 }];
    const tags = (...plans: readonly (typeof one)[]) => poolPieces(plans, demoShelf).pieces['strip-19x38']!.map(({ tag, plan, copy }) => `${tag} ${plan} ${copy}`).filter((tag) => tag.includes('T'));
    expect([tags(one), tags(three), tags(one, three)]).toEqual([['T 0 1'], ['1-T 0 1', '2-T 0 2', '3-T 0 3'], ['1-T 0 1', '2.1-T 1 1', '2.2-T 1 2', '2.3-T 1 3']]);
    expect([frameName([one, three], 1, 2, [7, 9]), frameName([one], 0, 1), frameName([one, one], 0, 1)]).toEqual(['9.2', '', '1']);
  });

  it('strips of lips: four of each frame, told by plan and frame as its pieces are', () => {
    const lipped = { ...studioPlan(), count: 2 };
    const told = lipStrips(cutPlan([studioPlan(), { ...lipped, bars: { ...lipped.bars, lip_mm: 5 } }], demoShelf));
    expect(told.map(({ plan, copy, tag, cut_mm }) => `${plan} ${copy} ${tag} ${cut_mm}`)).toEqual([1, 2].flatMap((copy) => [['T', 900], ['B', 900], ['L', 620], ['R', 620]].map(([bar, mm]) => `1 ${copy} 2.${copy}-lip ${bar} ${mm}`)));
  });

  it('bought in inches only where all are told in inches', () => {
    const [metric, inch] = [studioPlan(), { ...studioPlan(), units: 'inch' as const }];
    expect([commonUnits([]), commonUnits([inch]), commonUnits([inch, inch]), commonUnits([inch, metric]), commonUnits([metric])]).toEqual(['metric', 'inch', 'inch', 'metric', 'metric']);
  });
});

describe('pieces that no board is long enough for', () => {
  const strip = demoShelf.lumber['strip-19x38']!;
  const plan = studioPlan();
  const [long] = poolPieces([plan], demoShelf).pieces['strip-19x38']!;
  const shelf = { ...demoShelf, cutting: { ...demoShelf.cutting, end_trim_mm: 20 }, lumber: {
    'strip-19x38': strip,
    like: { ...strip, key: 'like', thickness_mm: strip.thickness_mm + 0.49, lengths: [{ length_mm: 1500, price: 3 }, { length_mm: 940, price: 2 }, { length_mm: 939.9, price: 2 }, { length_mm: 930, price: 2, available: 0 }] },
    hand: { ...strip, key: 'hand', lengths: [{ length_mm: 900, price: 0 }, { length_mm: 899, price: 0 }] },
    thick: { ...strip, key: 'thick', thickness_mm: strip.thickness_mm + 0.5, lengths: [{ length_mm: 1500, price: 3 }] },
    wide: { ...strip, key: 'wide', width_mm: strip.width_mm - 0.5, lengths: [{ length_mm: 1500, price: 3 }] },
  } } as unknown as typeof demoShelf;
  const lengths = [{ length_mm: 800, price: 4 }, { length_mm: 700, price: 3 }, { length_mm: 2000, price: 9, available: 0 }] as never;

  it('are told what length would do, what else of the section is long enough, and how small the face would have to be', () => {
    const [told, ...more] = tooLong([{ ...long!, over_mm: 140.3 }, { ...long!, copy: 2, over_mm: 140.3 }], [plan], shelf, 'strip-19x38', lengths);
    expect(more).toEqual([]);
    // 900 with 20 trimmed off at each end; of a board in hand nothing is; 900 − 140.3 = 759.7, down to the half millimetre.
    expect(told).toMatchObject({ stock: 'strip-19x38', needs_mm: 940, longest_mm: 800, alternatives: [
      { kind: 'longer-board', length_mm: 940 }, { kind: 'other-stock', stock: 'like', length_mm: 940 }, { kind: 'other-stock', stock: 'hand', length_mm: 900 }, { kind: 'smaller-face', side: 'width', most_mm: 759.5 },
    ] });
    expect(told!.alternatives).toHaveLength(4);
    const upright = poolPieces([plan], demoShelf).pieces['strip-19x38']!.find(({ piece }) => piece.about === 'left')!;
    expect(tooLong([{ ...upright, over_mm: 100 }], [plan], shelf, 'strip-19x38', lengths)[0]!.alternatives.at(-1)).toEqual({ kind: 'smaller-face', side: 'height', most_mm: 520 });
    expect(tooLong([{ ...upright, over_mm: 620 }], [plan], shelf, 'strip-19x38', [])[0]).toMatchObject({ longest_mm: 0, alternatives: expect.not.arrayContaining([expect.objectContaining({ kind: 'smaller-face' })]) });
  });
});
