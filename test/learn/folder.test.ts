import { describe, expect, test } from 'vitest';
import { readFolder } from '../../src/learn/folder.js';
import { learn } from '../../src/learn/learn.js';
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

describe('boards of a pile', () => {
  const pile = 'pile: 1\nboards:\n  - { mark: A, stock: strip-19x38, length: 2400 mm, twist: 1.3 deg/m, bow: 6 mm }\n  - { mark: B, stock: strip-19x38, length: 2400 mm, twist: -0.4 deg/m }\n  - { stock: strip-19x38, length: 2400 mm }\n';
  const named = 'plan: Jetty\nboards: [ { for: top, mark: A }, { for: left, mark: B, twist: 0.2 deg/m }, { for: right, mark: K } ]';
  const boardsOf = (files: Readonly<Record<string, string>>) => folder(files).frames[0]!.sheets[0]!.sheet.boards;
  const per_m = Math.PI / 180;

  test('a sheet that names them by their marks takes their twist; what it says itself counts before that, and what no pile has is asked about', () => {
    const found = folder({ 'a.yaml': plan('Jetty'), 'b.yaml': sheet(named), 'c.yaml': pile });
    const boards = found.frames[0]!.sheets[0]!.sheet.boards;
    expect(boards.map(({ twist_rad_per_m }) => twist_rad_per_m === null ? null : twist_rad_per_m / per_m)).toEqual([expect.closeTo(1.3, 9), expect.closeTo(0.2, 9), null]);
    expect(boards[0]!.bow_per_m).toBeNull();
    expect(found.left).toEqual([]);
    expect(found.questions).toEqual(['b.yaml: board K: in no pile that was given, so nothing of it counts. Is the mark right?']);
  });

  test('without a pile they are asked about, and nothing of them counts', () => {
    const found = folder({ 'a.yaml': plan('Jetty'), 'b.yaml': sheet(named) });
    expect(found.questions).toHaveLength(1);
    expect(found.questions[0]).toMatch(/^b\.yaml: it names boards A, K of a pile, and no pile was given.*--pile\.$/u);
  });

  test('a plan that places the same board there gives all three of its readings', () => {
    const boards = boardsOf({ 'a.yaml': `${plan('Jetty')}boards: [ { for: top, board: A, twist: 1.3 deg/m, bow: -0.004 /m, crook: 0.001 /m } ]\n`, 'b.yaml': sheet(named) });
    expect(boards[0]).toMatchObject({ bow_per_m: -0.004, crook_per_m: 0.001 });
  });

  test('two piles that say different things of one mark are asked about', () => {
    const found = folder({ 'a.yaml': plan('Jetty'), 'b.yaml': sheet('plan: Jetty\nboards: [ { for: top, mark: A } ]'), 'c.yaml': pile, 'd.yaml': pile.replace('1.3', '1.1') });
    expect(found.questions[0]).toContain('board A is in more than one pile (c.yaml, d.yaml)');
    expect(found.frames[0]!.sheets[0]!.sheet.boards[0]!.twist_rad_per_m).toBeNull();
  });

  test('a board that two sheets of its frame name counts once', () => {
    const found = learn([{ file: 'a.yaml', text: plan('Jetty') }, { file: 'p.yaml', text: pile }, ...['before-cloth', 'after-cloth'].map((when) => ({ file: `${when}.yaml`, text: sheet(`plan: Jetty\nwhen: ${when}\ncorner-lift: 1 mm\nboards: [ { for: top, mark: A }, { for: left, mark: B } ]`) }))], shelf);
    expect(found.entries.find(({ what }) => what === 'twist')).toMatchObject({ boards: 2, from: 1 });
  });
});
