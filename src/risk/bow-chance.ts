import { crossLine, type BarLines, type Crossing } from './bar-lines.js';
import { nine_in_ten, type StationRisk } from './closed-form.js';
import { lineDensity, lineTail, lineTip } from './line-tail.js';
import { foldedQuantile, passedSize, type Exceeding } from './normal.js';

/**
 * Directions over half a turn. With two normals the mean over them converges at once; what a third and more bring is
 * small, and is spread over the same directions.
 */
const directions = 64;

/**
 * Multiples of the square roots of these fill a space of many normals evenly (R. D. Richtmyer, 1951; memory). Enough
 * for a bar whose every station between its ends moves by itself.
 */
const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47];

/** Of a P90: far below what is told of it. */
const near_enough = 1e-9;

const ends: Crossing = { low: 0, high: 0, low_mm: 1, high_mm: 1 };

/**
 * Chance that the largest departure anywhere along a bar passes the limit, and its density there, per mm: the mean over
 * lines through the space of its normals, along each of which it is known exactly.
 */
export function bowBeyond(bar: BarLines, limit_mm: number, count = directions): Exceeding {
  if (bar.still_mm > limit_mm) return { chance: 1, density: 0 };
  const lines = linesOf(bar.rank, count);
  let chance = 0;
  let density = 0;
  for (let i = 0; i < count; i++) {
    crossLine(bar, limit_mm, lines, i * bar.rank, ends);
    if (ends.low >= ends.high) {
      chance += 1;
      continue;
    }
    const above = lineTip(ends.high);
    const below = lineTip(ends.low);
    chance += lineTail(ends.high, above) + lineTail(-ends.low, below);
    density += lineDensity(ends.high, above) / ends.high_mm + lineDensity(ends.low, below) / ends.low_mm;
  }
  return { chance: chance / count, density: density / count };
}

/** Nine bars in ten depart nowhere by more than this, mm; never less than at the one station where they depart most. */
export function bowP90(bar: BarLines, worst: StationRisk, count = directions): number {
  const least = worst.p90_mm;
  return bar.heights.length === 0
    ? least
    : passedSize(1 - nine_in_ten, (limit_mm) => bowBeyond(bar, limit_mm, count), {
        least,
        first: least,
        step: least,
        near: near_enough,
      });
}

const known = new Map<string, Float64Array>();

/** For each line its direction in the first two normals, evenly over half a turn, and where it lies in the others. */
function linesOf(rank: number, count: number): Float64Array {
  const name = `${rank} ${count}`;
  const before = known.get(name);
  if (before !== undefined) return before;
  const lines = new Float64Array(rank * count);
  for (let i = 0; i < count; i++) {
    const angle = (Math.PI * (i + 0.5)) / count;
    lines[i * rank] = Math.cos(angle);
    lines[i * rank + 1] = Math.sin(angle);
    for (let k = 2; k < rank; k++) {
      const place = ((i + 0.5) * Math.sqrt(primes[k - 2] as number)) % 1;
      lines[i * rank + k] = Math.sign(place - 0.5) * foldedQuantile(0, 1, Math.abs(2 * place - 1));
    }
  }
  known.set(name, lines);
  return lines;
}
