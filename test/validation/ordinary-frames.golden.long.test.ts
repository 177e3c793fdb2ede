/** All ordinary frames of `ordinary-frames.golden.md`; `UPDATE_GOLDEN=1` keeps what they say now, to be read line by line. */
import { expect, test } from 'vitest';
import { judgeOrdinary, keepRows, keptRows, ordinaryFrames } from './ordinary-frames.js';

test('ordinary frames keep their verdicts, and none is decided by what the tool chose by itself', async () => {
  const judged = [];
  for (const frame of ordinaryFrames) judged.push(await judgeOrdinary(frame));
  expect(judged.flatMap(({ ownFault }) => ownFault)).toEqual([]);
  const lines = judged.map(({ line }) => line);
  if (process.env['UPDATE_GOLDEN'] !== undefined) keepRows(lines);
  expect(lines).toEqual(keptRows());
}, 240_000);
