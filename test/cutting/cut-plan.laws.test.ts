import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piecesAssemble } from '../../src/cutting/pieces/assemble.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { markingOrder } from '../../src/cutting/marking.js';
import { lengthInReach_mm, stocksOf } from '../../src/cutting/pieces/in-reach.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import { poolPieces } from '../../src/cutting/pieces/pool.js';
import { ask } from '../../src/cutting/boards/asked.js';
import { allFit } from '../../src/cutting/enough-boards.js';
import type { BoughtBoard } from '../../src/cutting/boards/purchase.js';
import type { PlacedPiece } from '../../src/cutting/boards/layout.js';
import type { Plan } from '../../src/plan/plan.js';
import { boards, demoShelf, shelfWith, studioPlan } from './studio.js';
import { everything, runs } from '../effort.js';

const base = studioPlan({ crossbars: [{ runs: 'upright', at: '1/3', stock: 'strip-19x38', lay: 'flat' }, { runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'edge' }] });

/** Plans of all corner cuts, lays, plies and bonds, with up to two crossbars, braces or none, on strips; metric or inch. */
const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    width_mm: fc.integer({ min: 300, max: 2300 }),
    height_mm: fc.integer({ min: 250, max: 1500 }),
    fraction: fc.constantFrom(0, 0.25, 0.3),
    units: fc.constantFrom('metric' as const, 'inch' as const),
    lay: fc.constantFrom('flat' as const, 'edge' as const),
    plies: fc.integer({ min: 1, max: 2 }),
    stack: fc.constantFrom('side-by-side' as const, 'front-to-back' as const),
    bond: fc.constantFrom('none' as const, 'glue' as const),
    cut: fc.constantFrom('mitre' as const, 'butt' as const, 'half-lap' as const),
    crossbars: fc.integer({ min: 0, max: 2 }),
    leg_mm: fc.option(fc.integer({ min: 160, max: 240 }), { nil: null }),
    brace_lay: fc.constantFrom('flat' as const, 'edge' as const),
    count: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ width_mm, height_mm, fraction, units, lay, plies, stack, bond, cut, crossbars, leg_mm, brace_lay, count }): Plan => ({
    ...base,
    units,
    count,
    face: { width_mm: width_mm + fraction, height_mm: height_mm + fraction },
    bars: { ...base.bars, lay, plies, stack, bond },
    crossbars: base.crossbars.slice(0, crossbars),
    corners: { ...base.corners, cut, brace: leg_mm === null ? null : { kind: 'timber', leg_mm, stock: 'strip-19x38', lay: brace_lay, give: null } },
  }));

const shelf = shelfWith('strip-19x38', boards([1800, 2.5], [2400, 3.2], [700, 0, 2]));

/** What a piece takes of each edge of its board. */
function edges({ piece, from_mm, to_mm, long_side }: PlacedPiece): { upper: [number, number]; lower: [number, number] } {
  const long: [number, number] = [from_mm, to_mm];
  const short: [number, number] = piece.ends === 'square' ? long : [from_mm + piece.across_mm, to_mm - piece.across_mm];
  return long_side === 'lower' ? { upper: short, lower: long } : { upper: long, lower: short };
}

/** Fails unless the pieces lie on the sound part of the board with a whole kerf between neighbours on both edges; a shared mitre needs √2 kerfs along the board. */
function expectSound(board: BoughtBoard, kerf_mm: number): void {
  let before: PlacedPiece | null = null;
  for (const piece of board.pieces) {
    expect(piece.from_mm).toBeGreaterThanOrEqual(board.trim_mm - 1e-3);
    expect(piece.to_mm).toBeLessThanOrEqual(board.length_mm - board.trim_mm + 1e-3);
    if (before !== null) {
      const need_mm = before.piece.ends === 'mitre' ? kerf_mm * Math.SQRT2 : kerf_mm;
      for (const side of ['upper', 'lower'] as const) expect(edges(piece)[side][0] - edges(before)[side][1]).toBeGreaterThanOrEqual(need_mm - 1e-3);
    }
    before = piece;
  }
}

describe('cutting plans', () => {
  it('every piece of every frame lies once on a sound board, nested mitres never overlapping', () => {
    fc.assert(fc.property(fc.array(anyPlan, { minLength: 1, maxLength: 3 }), (plans) => {
      const cut = cutPlan(plans, shelf);
      expect(cut.uncut).toEqual([]);
      const wanted = plans.flatMap((plan, p) => piecesOf(plan, shelf).pieces.flatMap(({ label }) => Array.from({ length: plan.count }, (_, c) => `${p}/${c + 1}/${label}`)));
      const got = cut.stocks.flatMap(({ boards: all }) => all.flatMap(({ pieces }) => pieces.map(({ plan, copy, piece }) => `${plan}/${copy}/${piece.label}`)));
      expect(got.sort()).toEqual(wanted.sort());
      for (const board of cut.stocks.flatMap(({ boards: all }) => all)) expectSound(board, demoShelf.cutting.kerf_mm);
      expect(cut.waste_share).toBeGreaterThanOrEqual(0);
      expect(cut.bound).toBeLessThanOrEqual(cut.cost as number);
      if (cut.proven) expect(cut.bound).toBeCloseTo(cut.cost as number, 9);
    }), { numRuns: runs(100, 1 / 4) });
  });

  it('pieces put together give the face, or a refusal in words', () => {
    let fits = 0;
    fc.assert(fc.property(anyPlan, (plan) => {
      const list = piecesOf(plan, shelf);
      const made = piecesAssemble(list);
      expect(made.fits).toBe(list.faults.length === 0);
      expect(made.opening_mm).toBe(0);
      for (const [size, face] of [[made.width_mm, plan.face.width_mm], [made.height_mm, plan.face.height_mm]] as const) {
        expect(size - face).toBeGreaterThanOrEqual(-1e-3);
        expect(size - face).toBeLessThan(list.mark_mm);
      }
      if (made.fits) fits++;
    }), { numRuns: runs(200, 1 / 4) });
    expect(fits).toBeGreaterThan(everything ? 150 : 35);
  });

  it('the mitred bars cover the frame: their areas are the face less the opening', () => {
    fc.assert(fc.property(anyPlan, (plan) => {
      const list = piecesOf({ ...plan, corners: { ...plan.corners, cut: 'mitre' }, bars: { ...plan.bars, plies: 1 } }, shelf);
      const made = piecesAssemble(list);
      const w_mm = list.w_mm;
      const area = list.pieces.filter(({ part }) => part === 'bar').reduce((sum, { cut_mm, short_mm }) => sum + ((cut_mm + short_mm) / 2) * w_mm, 0);
      expect(area).toBeCloseTo(made.width_mm * made.height_mm - (made.width_mm - 2 * w_mm) * (made.height_mm - 2 * w_mm), 4);
    }), { numRuns: runs(100, 1 / 4) });
  });

  it('never costs more with one more length on offer, and not less for one frame more', () => {
    fc.assert(fc.property(anyPlan, fc.integer({ min: 1750, max: 4000 }), fc.integer({ min: 1, max: 900 }), (plan, length_mm, cents) => {
      const few = boards([1800, 2.5], [2400, 3.2]);
      const cost = (lengths: typeof few, count = plan.count): number => cutPlan([{ ...plan, count }], shelfWith('strip-19x38', lengths)).cost as number;
      const now = cost(few);
      expect(cost([...few, { length_mm, price: cents / 100, available: null }])).toBeLessThanOrEqual(now + 1e-9);
      expect(cost(few, plan.count + 1)).toBeGreaterThanOrEqual(now - 1e-9);
    }), { numRuns: runs(40, 1 / 4) });
  });

  it('the order at the saw goes through every board as its pieces lie', () => {
    fc.assert(fc.property(fc.array(anyPlan, { minLength: 1, maxLength: 2 }), (plans) => {
      const cut = cutPlan(plans, shelf);
      const { steps } = markingOrder(cut);
      for (const { stock, boards: all } of cut.stocks)
        all.forEach((board, i) => {
          const sawn = steps.filter((step) => step.stock === stock).flatMap(({ cuts }) => cuts.filter((one) => one.board === i + 1).map(({ tag }) => tag));
          expect(sawn).toEqual(board.pieces.map(({ tag }) => tag));
        });
      const stops = steps.map(({ stock, ends, stop_mm, cuts }) => `${stock}/${ends}/${stop_mm}/${cuts.map(({ tag }) => tag).join()}`);
      expect(new Set(stops).size).toBe(stops.length);
    }), { numRuns: runs(60, 1 / 4) });
  });
});

it('no piece is longer than what is told without making it, and of no other stock; whether all fit is what the pieces say', () => {
  const seen = { yes: 0, no: 0, closest_mm: Infinity };
  fc.assert(
    fc.property(anyPlan, fc.integer({ min: 300, max: 3000 }), fc.constantFrom(undefined, 0, 3), fc.constantFrom(0, 0.3, 1), fc.constantFrom({}, {}, {}, { as_is: 'square' as const }), (plan, length_mm, available, knots, more) => {
      const shelf = shelfWith('strip-19x38', [{ length_mm, price: 2, available: available ?? null, ...more }], { knot_waste_share: { none: 0, few: knots, many: knots } });
      const most_mm = Math.max(...piecesOf(plan, shelf).pieces.map(({ cut_mm }) => cut_mm));
      expect(most_mm).toBeLessThanOrEqual(lengthInReach_mm(plan, shelf));
      expect(piecesOf(plan, shelf).pieces.every(({ stock }) => stocksOf(plan).includes(stock))).toBe(true);
      const pool = poolPieces([plan], shelf);
      const fit = pool.stocks.every((key) => ask([plan], shelf, pool, key).problem !== null);
      expect(allFit([plan], shelf)).toBe(fit);
      seen[fit ? 'yes' : 'no'] += 1;
      seen.closest_mm = Math.min(seen.closest_mm, Math.abs(length_mm - most_mm));
    }),
    { numRuns: 400, seed: 5 },
  );
  expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(50);
  expect(seen.closest_mm).toBeLessThan(5);
});
