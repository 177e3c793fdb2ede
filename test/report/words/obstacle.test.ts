import { expect, test } from 'vitest';
import { composeReport } from '../../../src/report/compose.js';
import { auditData } from '../../../src/report/json.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { obstacleInWords } from '../../../src/report/words/obstacle.js';
import { auditOf } from '../audits.js';

test('what is in the way is named by the part it belongs to', () => {
  expect(obstacleInWords({ kind: 'brace', of: 'top-left' })).toBe('the foot of the top left brace');
  expect(obstacleInWords({ kind: 'crossbar-screw', of: 'crossbar-2' })).toBe('a screw of crossbar 2');
  expect(obstacleInWords({ kind: 'ring', of: 'left' })).toBe('the hanging point on the left bar');
  expect(obstacleInWords({ kind: 'side-bars', of: 'frame' })).toBe('the side bars');
});

test('page and JSON say alike what the hanging points were moved off, what is in the way and what stands out', async () => {
  const moved = await auditOf('plan: 1\nname: Landing\nface: { width: 1140 mm, height: 690 mm }\nbars: { stock: square-38x38, lay: flat }\ncorners: { brace: { kind: timber, leg: 170 mm, stock: strip-19x38, lay: edge } }\nhang: { by: two-hooks, from: inside }\n');
  expect(writeMarkdown(composeReport(moved).tree)).toContain('there the foot of the top left brace would be in the way of the rings');
  expect(auditData(moved)).toMatchObject({ sheets: { hanging: { points: { moved_off: 'the foot of the top left brace', meets: [] } } } });
  const met = await auditOf('plan: 1\nname: Landing\nface: { width: 910 mm, height: 730 mm }\nbars: { stock: square-38x38, lay: flat }\ncrossbars: [ { runs: upright, at: 2/5, stock: strip-19x38, lay: flat, setback: 30 mm } ]\nhang: { by: wire, from: back, drop: 200 mm, slack: 100 mm, hooks: 1 }\n');
  expect(writeMarkdown(composeReport(met).tree)).toContain('In the way of ring or wire: crossbar 1, which stands out 11 mm behind the bars.');
  expect(auditData(met)).toMatchObject({ sheets: { hanging: { points: { moved_off: null, meets: ['crossbar 1'] }, stands_out_mm: 11 } } });
});
