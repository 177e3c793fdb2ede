/**
 * Ordinary frames (board × lay × size × crossbar): verdict, and the rule that decides it. An alarm that proves nothing by itself; every row was read against common practice
 * (no published source): one thin strip is fine to about half a metre and near one metre asks for more; square stock or a glued pair carries a metre with braces; studs on edge
 * carry large faces with crossbars. The tool's own choices (nail, screw, setback) decide no row.
 */
import { expect, test } from 'vitest';
import { judgeOrdinary, keptRows, ordinaryFrames } from './ordinary-frames.js';

/** Every seventh here; all of them in the long run. */
test.each(ordinaryFrames.map((frame, i) => ({ ...frame, i })).filter(({ i }) => i % 7 === 3))('$row keeps its verdict', async ({ i, ...frame }) => {
  expect(await judgeOrdinary(frame)).toEqual({ line: keptRows()[i], ownFault: [] });
});
