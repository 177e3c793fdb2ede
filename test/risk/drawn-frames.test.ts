import { expect, test } from 'vitest';
import { block_frames, drawnFrames } from '../../src/risk/drawn-frames.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';

const blocksOf = (seed: number, columns: number, frames: number, wanted: number) => {
  const blockOf = drawnFrames(seed, columns, frames);
  return Array.from({ length: wanted }, (_, block) => {
    const { draws, lengths } = blockOf(block);
    return { draws: [...draws], lengths: [...lengths] };
  });
};

test('frames are cut from the one stream of their seed, whether it is kept, grown or too long to keep, and whoever asked before', () => {
  const straight = new Float64Array(3 * block_frames * 6);
  normalDeviates(7)(straight);
  const expected = Array.from({ length: 3 }, (_, block) => {
    const draws = [...straight.subarray(block * block_frames * 6, (block + 1) * block_frames * 6)];
    return { draws, lengths: Array.from({ length: block_frames }, (_n, n) => Math.hypot(...draws.slice(6 * n, 6 * n + 6))) };
  });
  const near = expected.map(({ draws, lengths }) => ({ draws, lengths: lengths.map((length) => expect.closeTo(length, 12)) }));
  expect(blocksOf(7, 6, 2 * block_frames, 2)).toEqual(near.slice(0, 2));
  expect(blocksOf(7, 6, 3 * block_frames - 5, 3)).toEqual(near);
  expect(blocksOf(8, 6, 3 * block_frames, 1)).not.toEqual(near.slice(0, 1));
  expect(blocksOf(7, 6, 200_000, 3)).toEqual(near);
  expect(blocksOf(7, 10, 400, 2)[1]?.draws[0]).toBe(straight[block_frames * 10]);
  expect(blocksOf(7, 6, 3 * block_frames, 3)).toEqual(near);
});
