import { describe, expect, it } from 'vitest';
import { handOfSticks } from '../../../src/measure/hand-of-sticks.js';

type Vector = readonly [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const add = (a: Vector, b: Vector, k: number): Vector => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const scaled = (v: Vector, k: number): Vector => add([0, 0, 0], v, k);

/** Which end of the far stick somebody sees high who looks along `view` at a board along x that turns by `angle` from one stick to the other by the right-hand rule about x. */
function seenHigh(view: 1 | -1, angle: number): 'left' | 'right' {
  const along: Vector = [1, 0, 0];
  const up: Vector = [0, 0, 1];
  const toTheRight = cross(scaled(along, view), up);
  // Walking along the view, the board turns by the angle about +x where the view is +x, and back by it about +x where it is −x.
  const turned = add(scaled(toTheRight, Math.cos(angle)), cross(along, toTheRight), Math.sin(view * angle));
  return turned[2] > 0 ? 'right' : 'left';
}

describe('the hand of a twist from winding sticks', () => {
  it.each([1, -1] as const)('is that of the right-hand rule, from either end (%d)', (view) => {
    expect(handOfSticks(seenHigh(view, 0.02))).toBe('right');
    expect(handOfSticks(seenHigh(view, -0.02))).toBe('left');
  });

  it('has none where the sticks agree', () => {
    expect(handOfSticks('level')).toBeNull();
  });
});
