import { describe, expect, test } from 'vitest';
import { readFolder } from '../../src/learn/folder.js';
import { shelf } from './invented-studio.js';

const plan = (name: string, count = 1): string => `plan: 1\nname: ${name}\ncount: ${count}\nface: { width: 520 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n`;
const sheet = (rest: string): string => `sheet: 1\n${rest}\n`;
const folder = (files: Readonly<Record<string, string>>) => readFolder(Object.entries(files).map(([file, text]) => ({ file, text })), shelf);

describe('a folder', () => {
  test('tells plans and sheets apart by their first key, whatever the files are called', () => {
    const found = folder({ 'sheet.yaml': plan('Jetty'), 'plan.yaml': sheet('plan: Jetty\nwhen: finished\ncorner-lift: 2 mm'), 'z.yaml': sheet('plan: Jetty\nwhen: before-cloth\ncorner-lift: 1 mm') });
    expect(found.frames.map(({ number, sheets }) => [number, sheets.map(({ file }) => file)])).toEqual([[1, ['z.yaml', 'plan.yaml']]]);
  });

  test('lists plans without sheets, sheets without plans and everything else', () => {
    const found = folder({
      'a.yaml': plan('Jetty'), 'b.yaml': plan('Quay'), 'c.yaml': sheet('plan: Quey\ncorner-lift: 2 mm'), 'd.yaml': sheet('corner-lift: 1 mm'), 'e.yaml': 'shelf: 1\n', 'f.yaml': 'plan: 1\nname: [\n', 'g.yaml': plan('Jetty', 2), 'h.yaml': sheet('plan: Quay\ncorner-lift: 2'),
    });
    expect(found.frames).toEqual([]);
    expect(found.plans_without_sheets).toEqual([{ file: 'a.yaml', name: 'Jetty' }, { file: 'b.yaml', name: 'Quay' }]);
    expect(found.sheets_without_plan.map(({ file, why }) => `${file}: ${why}`)).toEqual(['c.yaml: no plan here is called “Quey”; did you mean “Quay”?', 'd.yaml: it does not say whose it is: write plan: and the name of its plan']);
    expect(found.left.map(({ file }) => file)).toEqual(['e.yaml', 'g.yaml']);
    expect([...new Set(found.problems.map(({ file }) => file))]).toEqual(['f.yaml', 'h.yaml']);
  });

  test('a sheet without a name belongs to the only plan', () => expect(folder({ 'a.yaml': plan('Jetty'), 'b.yaml': sheet('corner-lift: 1 mm') }).frames).toHaveLength(1));

  test('frames by their numbers; two of one number and stage are asked about, and so is a second without one', () => {
    const found = folder({
      'a.yaml': plan('Jetty', 3), 'b1.yaml': sheet('plan: Jetty\nframe: 2\ncorner-lift: 1 mm'), 'b2.yaml': sheet('plan: Jetty\nframe: 2\ncorner-lift: 3 mm'), 'c.yaml': sheet('plan: Jetty\ncorner-lift: 2 mm'), 'd.yaml': sheet('plan: Jetty\ncorner-lift: 4 mm'),
    });
    expect(found.frames.map(({ number, sheets }) => `${number} ${sheets[0]!.file}`)).toEqual(['1 c.yaml', '2 b1.yaml', '3 d.yaml']);
    expect(found.questions.map((question) => question.slice(0, 8))).toEqual(['b2.yaml:', 'd.yaml: ']);
  });

  test('the same sheet twice counts once', () => {
    const found = folder({ 'a.yaml': plan('Jetty'), 'b.yaml': sheet('plan: Jetty\ncorner-lift: 1 mm'), 'c.yaml': sheet('plan: Jetty\ncorner-lift: 1 mm') });
    expect(found.frames).toHaveLength(1);
    expect(found.left).toEqual([{ file: 'c.yaml', why: 'the same, word for word, as b.yaml; it counts once' }]);
  });
});
