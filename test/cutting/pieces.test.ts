import { describe, expect, it } from 'vitest';
import { piecesAssemble } from '../../src/cutting/pieces/assemble.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import type { Piece, PieceList } from '../../src/cutting/pieces/piece.js';
import { demoShelf, studioPlan } from './studio.js';

const pieces = (more: object): PieceList => piecesOf(studioPlan(more), demoShelf);
const named = (list: PieceList, label: string): Piece => {
  const piece = list.pieces.find((one) => one.label === label);
  if (piece === undefined) throw new Error(`${label} of ${list.pieces.map((one) => one.label).join()}`);
  return piece;
};

describe('pieces of a keyed frame', () => {
  it('a crossbar is longer than the opening by the tongues that reach into either bar, and fits', () => {
    const list = pieces({ corners: { cut: 'keyed' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] });
    expect(named(list, 'C1').cut_mm).toBe(620 - 2 * 38 + 2 * 19);
    expect(piecesAssemble(list)).toMatchObject({ fits: true, faults: [], opening_mm: 0, tight_mm: 0 });
    const short = { ...list, pieces: list.pieces.map((piece) => (piece.label === 'C1' ? { ...piece, cut_mm: piece.cut_mm - 38 } : piece)) };
    expect(piecesAssemble(short)).toMatchObject({ fits: false, faults: ['C1 is shorter than the room for it.'] });
  });
});

describe('pieces of a mitred frame', () => {
  it('have the outside size at the long point and lose the width of the bar at each end', () => {
    const list = pieces({});
    expect(list.pieces.map(({ label }) => label)).toEqual(['T', 'B', 'L', 'R']);
    expect(named(list, 'T')).toMatchObject({ ends: 'mitre', cut_mm: 900, short_mm: 900 - 2 * 38, across_mm: 38, later: null, face_up: 'front face up, board lying flat' });
    expect(named(list, 'L')).toMatchObject({ ends: 'mitre', cut_mm: 620, short_mm: 620 - 2 * 38 });
  });

  it('on edge lose the thickness instead', () => {
    const list = pieces({ bars: { stock: 'strip-19x38', lay: 'edge' } });
    expect(named(list, 'B')).toMatchObject({ cut_mm: 900, short_mm: 900 - 2 * 19, across_mm: 19, face_up: 'front edge up, board standing on edge' });
  });

  it('go up to the mark of the tape the plan is written in', () => {
    const metric = pieces({ face: { width: '900.2 mm', height: '620 mm' } });
    expect(named(metric, 'T').cut_mm).toBe(900.5);
    const inch = pieces({ face: { width: '35.4 in', height: '24 in' } });
    expect(inch.mark_mm).toBe(25.4 / 16);
    expect(named(inch, 'T').cut_mm / 25.4).toBeCloseTo(35 + 7 / 16, 9);
    expect(named(inch, 'L').cut_mm / 25.4).toBeCloseTo(24, 9);
    expect(piecesAssemble(inch).fits).toBe(true);
  });
});

describe('pieces of built-up bars', () => {
  it('are square blanks of one length, 10 mm spare at each end, mitred together later', () => {
    const list = pieces({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'glue+screws' } });
    expect(list.w_mm).toBe(38);
    expect(list.pieces.map(({ label }) => label)).toEqual(['T1', 'T2', 'B1', 'B2', 'L1', 'L2', 'R1', 'R2']);
    for (const label of ['T1', 'T2']) expect(named(list, label)).toMatchObject({ ends: 'square', cut_mm: 920, across_mm: 0, later: { ends: 'mitre', cut_mm: 900, short_mm: 824 } });
    expect(piecesAssemble(list)).toMatchObject({ width_mm: 900, height_mm: 620, opening_mm: 0, fits: true });
  });

  it('that stay loose are mitred ply by ply: the inner one starts where the outer ends', () => {
    const list = pieces({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 3, stack: 'side-by-side', bond: 'none' } });
    expect(['T1', 'T2', 'T3'].map((label) => named(list, label).cut_mm)).toEqual([900, 862, 824]);
    expect(['T1', 'T2', 'T3'].map((label) => named(list, label).short_mm)).toEqual([862, 824, 786]);
    expect(piecesAssemble(list).fits).toBe(true);
    const deep = pieces({ bars: { stock: 'strip-19x38', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'none' } });
    expect([named(deep, 'T1').cut_mm, named(deep, 'T2').cut_mm, deep.w_mm]).toEqual([900, 900, 38]);
  });
});

describe('pieces of square corners', () => {
  it('butted: left and right run the full height, top and bottom stand between them', () => {
    const list = pieces({ corners: { cut: 'butt' } });
    expect(named(list, 'L')).toMatchObject({ ends: 'square', cut_mm: 620 });
    expect(named(list, 'T')).toMatchObject({ ends: 'square', cut_mm: 900 - 76 });
    expect(piecesAssemble(list)).toMatchObject({ width_mm: 900, height_mm: 620, fits: true });
  });

  it('half-lapped: all run through, half the depth cut away over the width of the other', () => {
    const list = pieces({ corners: { cut: 'half-lap' } });
    expect(named(list, 'T')).toMatchObject({ cut_mm: 900, laps: [{ from_mm: 0, width_mm: 38, depth_mm: 9.5 }, { from_mm: 862, width_mm: 38, depth_mm: 9.5 }] });
    expect(named(list, 'T').notes.join()).toContain('back half');
    expect(named(list, 'R').notes.join()).toContain('front half');
  });
});

describe('crossbars and braces', () => {
  it('crossbars fill the clear opening; crossing ones are half-lapped and both run through', () => {
    const list = pieces({ crossbars: [{ runs: 'upright', at: '1/3', stock: 'strip-19x38', lay: 'edge' }, { runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] });
    expect(named(list, 'C1')).toMatchObject({ ends: 'square', cut_mm: 620 - 76, runs: 'upright' });
    expect(named(list, 'C2')).toMatchObject({ ends: 'square', cut_mm: 900 - 76, runs: 'level' });
    expect(named(list, 'C1').laps).toEqual([{ from_mm: 310 - 38 - 19, width_mm: 38, depth_mm: 19 }]);
    expect(named(list, 'C2').laps).toEqual([{ from_mm: 300 - 38 - 9.5, width_mm: 19, depth_mm: 9.5 }]);
    expect(piecesAssemble(list)).toMatchObject({ fits: true, tight_mm: 0 });
  });

  it('a crossbar is never short: with bars that are off the tape it is too long by less than a mark', () => {
    const list = pieces({ face: { width: '36 in', height: '24 in' }, bars: { stock: 'planed-21x45', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'planed-21x45', lay: 'flat' }] });
    const room_mm = 24 * 25.4 - 90;
    expect(named(list, 'C1').cut_mm).toBeGreaterThan(room_mm);
    expect(named(list, 'C1').cut_mm).toBeLessThan(room_mm + 25.4 / 16);
    expect(piecesAssemble(list).tight_mm).toBeCloseTo(named(list, 'C1').cut_mm - room_mm, 9);
  });

  it('a brace lies between the inner edges, its centre line through the legs', () => {
    const list = pieces({ corners: { brace: { kind: 'timber', leg: '250 mm', stock: 'strip-19x38', lay: 'flat' } } });
    const brace = named(list, 'TL');
    expect(list.pieces.filter(({ part }) => part === 'brace').map(({ label }) => label)).toEqual(['TL', 'TR', 'BL', 'BR']);
    // Outer side on x + y = 250 + 38/√2 from the centre-line corner, cut off at the inner edges x = 19 and y = 19.
    const side = 250 + 38 / Math.SQRT2;
    const outer_mm = Math.hypot(side - 19 - 19, 19 - (side - 19));
    expect(brace.exact_mm).toBeCloseTo(outer_mm, 9);
    expect(brace.cut_mm - brace.short_mm).toBeCloseTo(76, 9);
    expect(piecesAssemble(list).fits).toBe(true);
  });

  it('keeps an inner side on the shortest brace that the reader lets through', () => {
    const brace = (leg: string) => ({ corners: { brace: { kind: 'timber', leg, stock: 'strip-19x38', lay: 'flat' } } });
    expect(() => pieces(brace('60 mm'))).toThrow('leg-too-short');
    const { pieces: cut } = pieces(brace('66 mm'));
    expect(Math.min(...cut.filter(({ part }) => part === 'brace').map(({ short_mm }) => short_mm))).toBeGreaterThan(0);
    expect(pieces({ corners: { brace: { kind: 'ply-gusset', leg: '100 mm' } } }).pieces).toHaveLength(4);
  });
});

describe('the assembly check', () => {
  const spoil = (label: string, change: Partial<Piece>): PieceList => {
    const list = pieces({ crossbars: [{ runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] });
    return { ...list, pieces: list.pieces.map((piece) => (piece.label === label ? { ...piece, ...change } : piece)) };
  };

  it('notices a bar cut short, a wrong mitre, a short crossbar, a long one, a missing piece', () => {
    expect(piecesAssemble(spoil('X', {})).fits).toBe(true);
    expect(piecesAssemble(spoil('B', { cut_mm: 898, short_mm: 822 }))).toMatchObject({ fits: false, opening_mm: 2 });
    expect(piecesAssemble(spoil('L', { short_mm: 550 }))).toMatchObject({ fits: false, opening_mm: 6 });
    expect(piecesAssemble(spoil('C1', { cut_mm: 823 }))).toMatchObject({ fits: false, opening_mm: 1 });
    expect(piecesAssemble(spoil('C1', { cut_mm: 830 }))).toMatchObject({ fits: false, tight_mm: 6 });
    const list = pieces({});
    expect(piecesAssemble({ ...list, pieces: list.pieces.slice(1) }).fits).toBe(false);
  });
});
