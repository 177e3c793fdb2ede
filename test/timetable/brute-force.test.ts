import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadHighs } from '../../src/highs.js';
import type { Problem } from '../../src/timetable/calendar.js';
import { schedule, type Schedule } from '../../src/timetable/schedule.js';
import { toyFrames, toyProblem, toyShop } from './small-problems.js';
import { runs } from '../effort.js';

/** Every start of every piece, minute by minute, with a plain count of what is taken; the least number of sessions. Knows none of the bounds. */
function byTryingAll({ sessions, capacity, frames }: Problem): number | null {
  const all = frames.flatMap((pieces, f) => pieces.map((piece, k) => ({ f, k, piece })));
  const possible = (count: number): boolean => {
    const placed: { readonly resource: number; readonly units: number; readonly from: number; readonly to: number }[] = [];
    const free = (start: number, spans: (typeof all)[number]['piece']['spans']): boolean => spans.every(({ resource, units, length_min }) => {
      for (let m = start; m < start + length_min; m++) {
        const s = sessions.findIndex(({ start_min, length_min: length }) => m >= start_min && m < start_min + length);
        if (s >= 0 && placed.reduce((sum, p) => sum + (p.resource === resource && p.from <= m && m < p.to ? p.units : 0), units) > capacity[resource]![s]!) return false;
      }
      return true;
    });
    const visit = (i: number, ready: number): boolean => {
      const one = all[i];
      if (one === undefined) return true;
      const { piece, k } = one;
      for (const { start_min, length_min } of sessions.slice(0, count))
        for (let start = Math.max(start_min, k === 0 ? 0 : ready); start + piece.minutes <= start_min + length_min; start++) {
          if (!free(start, piece.spans)) continue;
          placed.push(...piece.spans.map(({ resource, units, length_min: length }) => ({ resource, units, from: start, to: start + length })));
          if (visit(i + 1, start + piece.minutes + piece.wait_min)) return true;
          placed.length -= piece.spans.length;
        }
      return false;
    };
    return visit(0, 0);
  };
  for (let count = 1; count <= sessions.length; count++) if (possible(count)) return count;
  return null;
}

/** The same question as an integer program: one yes or no for each piece and each minute at which it could begin. */
async function byIntegerProgram({ sessions, capacity, frames }: Problem, count: number): Promise<boolean> {
  const minutes = sessions.slice(0, count).flatMap(({ start_min, length_min }) => Array.from({ length: length_min }, (_, i) => start_min + i));
  const end = (m: number): number => sessions.find(({ start_min, length_min }) => m >= start_min && m < start_min + length_min)!.start_min + sessions[0]!.length_min;
  const name = (f: number, k: number, m: number): string => `x_${f}_${k}_${m}`;
  const starts = frames.map((pieces) => pieces.map((piece) => minutes.filter((m) => m + piece.minutes <= end(m))));
  if (starts.some((list) => list.some((one) => one.length === 0))) return false;
  const lines = ['Minimize', ' none: 0 x_0_0_0', 'Subject To'];
  frames.forEach((pieces, f) => pieces.forEach((_, k) => lines.push(` once_${f}_${k}: ${starts[f]![k]!.map((m) => name(f, k, m)).join(' + ')} = 1`)));
  frames.forEach((pieces, f) => pieces.slice(1).forEach((_, j) => {
    // A piece that has begun by m had the one before it begun by m less its length and wait.
    const k = j + 1;
    const lag = pieces[j]!.minutes + pieces[j]!.wait_min;
    for (const m of starts[f]![k]!) {
      const before = starts[f]![j]!.filter((t) => t + lag <= m);
      lines.push(` order_${f}_${k}_${m}: ${[...starts[f]![k]!.filter((t) => t <= m).map((t) => name(f, k, t)), ...before.map((t) => `- ${name(f, j, t)}`)].join(' + ').replaceAll('+ -', '-')} <= 0`);
    }
  }));
  capacity.forEach((room, r) => {
    if (room[0] === Infinity) return;
    for (const m of minutes) {
      const terms = frames.flatMap((pieces, f) => pieces.flatMap((piece, k) => piece.spans.filter(({ resource }) => resource === r).flatMap(({ units, length_min }) => starts[f]![k]!.filter((t) => t <= m && m < t + length_min).map((t) => `${units} ${name(f, k, t)}`))));
      if (terms.length > 0) lines.push(` room_${r}_${m}: ${terms.join(' + ')} <= ${room[0]}`);
    }
  });
  lines.push('Binary', ` ${frames.flatMap((pieces, f) => pieces.flatMap((_, k) => starts[f]![k]!.map((m) => name(f, k, m)))).join(' ')}`, 'End');
  const solver = (await loadHighs())!;
  const { Status } = solver.solve(lines.join('\n'), { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false });
  expect(['Optimal', 'Infeasible']).toContain(Status);
  return Status === 'Optimal';
}

/** Nothing is taken twice, nothing begins before its wait is over, everything lies inside sessions. */
function check({ sessions, capacity, frames }: Problem, { starts, sessions: count }: Schedule): void {
  if (starts === null) return;
  frames.forEach((pieces, f) => pieces.forEach((piece, k) => {
    const start = starts[f]![k]!;
    const session = sessions.findIndex(({ start_min, length_min }) => start >= start_min && start + piece.minutes <= start_min + length_min);
    expect(session).toBeGreaterThanOrEqual(0);
    expect(session).toBeLessThan(count!);
    if (k > 0) expect(start).toBeGreaterThanOrEqual(starts[f]![k - 1]! + pieces[k - 1]!.minutes + pieces[k - 1]!.wait_min);
  }));
  sessions.forEach(({ start_min, length_min }, s) => {
    for (let m = start_min; m < start_min + length_min; m++)
      capacity.forEach((room, r) => expect(frames.reduce((sum, pieces, f) => sum + pieces.reduce((all, { spans }, k) => all + spans.reduce((n, span) => n + (span.resource === r && starts[f]![k]! <= m && m < starts[f]![k]! + span.length_min ? span.units : 0), 0), 0), 0)).toBeLessThanOrEqual(room[s]!));
  });
}

test('up to four frames: the least number of sessions is the one found by trying every start of every piece', () => {
  fc.assert(fc.property(toyFrames(1, 4), toyShop, fc.integer({ min: 2, max: 4 }), (frames, shop, count) => {
    const problem = toyProblem(frames, shop, count);
    const solved = schedule(problem);
    check(problem, solved);
    expect(solved.proven).toBe(true);
    expect(solved.sessions).toBe(byTryingAll(problem));
    expect(solved.bound).toBe(solved.sessions ?? count + 1);
  }), { numRuns: runs(80, 1 / 4) });
});

test('eight frames: an integer program finds a schedule in as many sessions, and none in one less', async () => {
  await fc.assert(fc.asyncProperty(toyFrames(8, 8), toyShop, async (frames, shop) => {
    const problem = toyProblem(frames, shop, 14);
    const solved = schedule(problem);
    check(problem, solved);
    expect(solved.proven).toBe(true);
    if (solved.sessions === null) return;
    expect(await byIntegerProgram(problem, solved.sessions)).toBe(true);
    if (solved.sessions > 1) expect(await byIntegerProgram(problem, solved.sessions - 1)).toBe(false);
  }), { numRuns: 3 });
}, 60_000);
