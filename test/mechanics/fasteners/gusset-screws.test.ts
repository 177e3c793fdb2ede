import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fasteningSheet } from '../../../src/mechanics/fasteners/fastening-sheet.js';
import { buildModel } from '../../../src/model/build-model.js';
import { readPlanWith } from '../../../src/plan/read-plan.js';
import { readShelf } from '../../../src/shelf/read-shelf.js';

const shelf = readShelf(readFileSync(new URL('../../../rules/shelf.yaml', import.meta.url), 'utf8'), 'shelf.yaml');
if (!shelf.ok) throw new Error('the shipped shelf must load');

// A gusset with legs L from the crossing of the centre lines, on bars of width w, ends on the middle of a bar L from the outer corner:
// its slanted edge runs from (w/2 + L, 0) to (0, w/2 + L), and at y = w/2 that is x = L.
test.each([['stud-38x64', 38, 120, 2], ['stud-38x64', 38, 203, 3], ['board-19x64', 64, 150, 2], ['strip-19x38', 38, 90, 1]])('the screws of a gusset on %s, leg %d … lie on it, clear of the mitre and of its slanted edge', (stock, w_mm, leg_mm, screws) => {
  const lay = stock === 'stud-38x64' ? 'edge' : 'flat';
  const plan = readPlanWith(`plan: 1\nname: Gusset\nface: { width: 1100 mm, height: 800 mm }\nbars: { stock: ${stock}, lay: ${lay} }\ncorners: { brace: { kind: ply-gusset, leg: ${leg_mm} mm } }\n`, 'plan.yaml', shelf.value);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  const model = buildModel(plan.value, shelf.value);
  expect(model.bars.top.section.w_mm).toBe(w_mm);
  const places = fasteningSheet(model).find(({ name }) => name === 'brace-screws')?.rows[0]?.places_mm ?? [];
  expect(places.length).toBe(screws);
  for (const [i, mm] of places.slice(1).entries()) expect(mm - (places[i] ?? 0)).toBeGreaterThan(10 * 3.5 - 1);
  expect(Math.min(...places)).toBeGreaterThan(w_mm);
  // square to the slanted edge a screw keeps this over √2
  expect((leg_mm - Math.max(...places)) / Math.SQRT2).toBeGreaterThan(5);
});
