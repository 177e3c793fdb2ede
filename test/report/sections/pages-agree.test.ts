import { expect, test } from 'vitest';
import { composeReport } from '../../../src/report/compose.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { auditOf } from '../audits.js';

const page = async (text: string): Promise<string> => writeMarkdown(composeReport(await auditOf(`plan: 1\nname: Slack water\n${text}`)).tree);

/** `4-15/16 in` → 4.9375. */
function inches(words: string): number {
  const [, whole = '0', top = '0', bottom = '1'] = /^(?:(\d+)(?:-|$| ))?(?:(\d+)\/(\d+))?/.exec(words.replace(' in', ''))!;
  return Number(whole) + Number(top) / Number(bottom);
}

test('in inches face and margins add up to the cut cloth, bar of millimetres or not', async () => {
  for (const [bars, width] of [['{ stock: planed-21x45, lay: flat }', '23-7/16 in'], ['{ stock: planed-28x45, lay: edge, lip: 7 mm }', '31-1/8 in'], ['{ stock: square-38x38, lay: flat }', '19-9/16 in']]) {
    const text = await page(`face: { width: ${width}, height: 19-3/16 in }\nbars: ${bars}\n`);
    const [, cut, margin] = /^- Cut .*? ([\d/-]+ in) wide and .*that is the face and ([\d/-]+ in) more on every side/m.exec(text)!;
    expect(inches(cut!)).toBe(inches(width!) + 2 * inches(margin!));
  }
});

test('an inch page lays a pad of whole inches under the weight, and a small opening a smaller pad', async () => {
  expect(await page('face: { width: 31-1/8 in, height: 19-3/16 in }\nbars: { stock: square-38x38, lay: flat }\n')).toContain('on a pad 2 in wide');
  expect(await page('face: { width: 117 mm, height: 117 mm }\nbars: { stock: square-38x38, lay: flat }\n')).toContain('on a pad 41 mm wide');
});

test('a strip that hangs hooks behind the strip on the wall: its bevel looks away from the wall, the other one to it', async () => {
  const text = await page('face: { width: 857 mm, height: 613 mm }\nbars: { stock: square-38x38, lay: flat }\nhang: { by: cleat }\n');
  expect(text).toMatch(/under the top bar, flush with its back, its bevel looking down and away from the wall/);
  expect(text).toMatch(/level to the wall, into what carries it, its bevel looking up and to the wall/);
});

test('a pleat goes where the cloth is fixed', async () => {
  const on = (to: string): Promise<string> => page(`face: { width: 857 mm, height: 613 mm }\nbars: { stock: square-38x38, lay: flat }\ncloth: { fixing: { to: ${to} } }\n`);
  expect(await on('back')).toContain('the pleat lies on the back, never on the edge');
  expect(await on('edge')).not.toContain('lies on the back, never on the edge');
});

test('a note that straddles the lowest heard is not called too low beside a number that is not', async () => {
  const text = await page('face: { width: 733 mm, height: 517 mm }\nbars: { stock: planed-21x45, lay: flat }\ncorners: { cut: keyed }\ncloth: { use: linen-300 }\n');
  expect(text).toMatch(/note would be 20 to 22 Hz, at the edge of hearing/);
});

test('a keyed corner is never to be braced or glued; a butted one has no mitre that opens', async () => {
  const keyed = await page('face: { width: 933 mm, height: 717 mm }\nbars: { stock: planed-21x45, lay: flat }\ncorners: { cut: keyed }\n');
  expect(keyed).toMatch(/\*\*(▲ Caution|✕ Stop)\*\*, Reserve against twisting/);
  expect(keyed).not.toMatch(/Brace the corner|Brace or gusset|Glue and nail it/);
  const butted = await page('face: { width: 613 mm, height: 517 mm }\nbars: { stock: square-38x38, lay: flat }\ncorners: { cut: butt }\n');
  expect(butted).not.toContain('Gap at one end of the mitre as');
});

test('what stands out behind the bars is told: in the list of what was assumed, and where the piece meets the wall', async () => {
  const text = await page('face: { width: 947 mm, height: 683 mm }\nbars: { stock: square-38x38, lay: flat, lip: 5 mm }\ncrossbars: [ { runs: level } ]\n');
  const [, setback, out] = /setback ([\d.]+) mm.*?it then stands ([\d.]+) mm out behind the bars/.exec(text)!;
  expect(out).toBe(setback); // as deep as the bars; a lip in front of them does not draw it back
  expect(text).toContain(`Crossbar 1 stands out ${out} mm behind the bars: they stay that far off the wall.`);
  expect(text).not.toContain('lies flat on the wall');
});

test('the hooks of a wire and of two rings have their place on the wall', async () => {
  const on = (by: string): Promise<string> => page(`face: { width: 947 mm, height: 683 mm }\nbars: { stock: square-38x38, lay: flat }\nhang: { by: ${by}, drop: 120 mm }\n`);
  expect(await on('two-hooks')).toContain('The hooks go into the wall 871 mm apart, level with each other, 120 mm below where the top edge is to come.');
  const wire = await on('wire');
  const [, rise] = /the hook comes (\d+) mm above the rings/.exec(wire)!;
  const [, apart, below] = /The hooks go into the wall (\d+) mm apart, level with each other, ([\d.]+) mm below/.exec(wire)!;
  expect(Number(apart)).toBe(Math.round(871 / 3));
  expect(Number(below) + Number(rise)).toBeCloseTo(120, -0.5);
});

test('the rings that are picked for a plan that names none hold it', async () => {
  for (const crossbar of ['', 'crossbars: [ { runs: level } ]\n', 'crossbars: [ { runs: upright, stock: strip-19x38, lay: flat } ]\n']) {
    const { findings, plan } = await auditOf(`plan: 1\nname: Lock gate\nface: { width: 1853 mm, height: 1547 mm }\nbars: { stock: stud-38x89, lay: edge }\n${crossbar}cloth: { use: linen-300 }\nlumber: { chosen: picked }\n`);
    expect(plan.hang).toMatchObject({ by: 'wire', from: 'inside' });
    expect(findings.filter(({ about }) => about === 'hanging').filter(({ verdict }) => verdict !== 'clear')).toEqual([]);
  }
});
