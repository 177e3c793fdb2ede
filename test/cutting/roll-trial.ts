import type { PlacedCloth, RollPiece } from '../../src/cutting/roll/piece.js';

/**
 * Shortest length by trying every place: each piece at every sum of the others' widths and lengths, both ways when it may turn.
 * Slow and without cleverness, so that it shares no idea with the code it checks. For at most five small pieces.
 */
export function shortestByTrial(pieces: readonly RollPiece[], roll_mm: number): number {
  let best = pieces.reduce((sum, p) => sum + Math.max(p.along_mm, p.across_mm), 0) + 1;
  const laid: { x: number; y: number; w: number; h: number }[] = [];
  const sumsWithout = (skip: number, size: (p: RollPiece) => number[]): number[] => {
    let sums = [0];
    pieces.forEach((p, i) => { if (i !== skip) sums = [...new Set(sums.flatMap((s) => [s, ...size(p).map((z) => s + z)]))]; });
    return sums;
  };
  const tryFrom = (i: number, end: number): void => {
    if (i === pieces.length) { best = Math.min(best, end); return; }
    const p = pieces[i] as RollPiece;
    const both = (q: RollPiece): number[] => (q.turnable ? [q.along_mm, q.across_mm] : [q.along_mm]);
    const across = (q: RollPiece): number[] => (q.turnable ? [q.along_mm, q.across_mm] : [q.across_mm]);
    const ways = p.turnable ? [[p.across_mm, p.along_mm], [p.along_mm, p.across_mm]] : [[p.across_mm, p.along_mm]];
    for (const [w, h] of ways as [number, number][]) {
      for (const x of sumsWithout(i, across)) {
        if (x + w > roll_mm) continue;
        for (const y of sumsWithout(i, both)) {
          if (y + h >= best) continue;
          if (laid.some((b) => x < b.x + b.w && b.x < x + w && y < b.y + b.h && b.y < y + h)) continue;
          laid.push({ x, y, w, h });
          tryFrom(i + 1, Math.max(end, y + h));
          laid.pop();
        }
      }
    }
  };
  tryFrom(0, 0);
  return best;
}

/** Pairs of pieces that overlap, and pieces that leave the roll, by name. */
export function overlaps(placed: readonly PlacedCloth[], roll_mm: number): string[] {
  const out = placed.filter((p) => p.x_mm < -1e-6 || p.y_mm < -1e-6 || p.x_mm + p.across_mm > roll_mm + 1e-6).map((p) => `${p.name} leaves the roll`);
  const pairs = placed.flatMap((p, i) =>
    placed.slice(i + 1).filter((q) => p.x_mm < q.x_mm + q.across_mm - 1e-6 && q.x_mm < p.x_mm + p.across_mm - 1e-6 && p.y_mm < q.y_mm + q.along_mm - 1e-6 && q.y_mm < p.y_mm + p.along_mm - 1e-6).map((q) => `${p.name} over ${q.name}`));
  return [...out, ...pairs];
}
