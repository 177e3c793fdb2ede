import { describe, expect, test } from 'vitest';
import { files, imports, roomOf, texts } from './sources.js';

/** Which folder may import which, and why; files at the top (`audit`, `bench` …) stand by themselves. A folder may always import itself. What is not written here is not allowed. */
const borders: Readonly<Record<string, { readonly may: readonly string[]; readonly why: string }>> = {
  base: { may: [], why: 'Leaves: units, problems, names. They know nothing of frames.' },
  frame3d: { may: [], why: 'A frame solver that could be published alone: no wood, no cloth, no paintings.' },
  shelf: { may: ['base'], why: 'What is in the shop, whatever is planned.' },
  fit: { may: ['base', 'shelf'], why: 'Which nail, screw or setback fits a place: asked by plans for their defaults and by the mechanics for what they do.' },
  plan: { may: ['base', 'shelf', 'fit'], why: 'A plan is checked against a shelf and knows nothing of what becomes of it.' },
  pile: { may: ['base', 'shelf', 'plan', 'mechanics'], why: 'The boards in hand, read; what becomes of them is another stage.' },
  shop: { may: ['order-of-work', 'base', 'model', 'mechanics', 'findings'], why: 'The workshop, read, and what its tools make hard in a plan.' },
  timetable: { may: ['order-of-work', 'base', 'plan', 'shelf', 'shop', 'model', 'mechanics', 'cutting', 'cost', 'report'], why: 'Who does what when, from plans and a workshop; a page of its own.' },
  model: { may: ['base', 'plan', 'shelf', 'fit'], why: 'Plan and shelf made into geometry and sections; not solved yet.' },
  mechanics: { may: ['base', 'plan', 'shelf', 'fit', 'model'], why: 'Formulas of wood, cloth, fasteners and hanging on a model and its solution.' },
  'order-of-work': { may: ['base', 'plan', 'shelf', 'fit', 'model', 'mechanics'], why: 'The steps at the bench, in words, with their waits and cautions.' },
  measure: { may: ['base', 'shelf', 'fit', 'model', 'mechanics'], why: 'Readings made into numbers of the shelf, with what may be wrong with them in words.' },
  solve: { may: ['base', 'frame3d', 'model', 'mechanics'], why: 'The only stage that runs the frame solver.' },
  risk: { may: ['base', 'plan', 'shelf', 'fit', 'model', 'mechanics'], why: 'Chances from the solved frame; it never solves anything.' },
  cutting: { may: ['base', 'plan', 'shelf', 'fit', 'model', 'mechanics'], why: 'Pieces and boards.' },
  cost: { may: ['base', 'plan', 'shelf', 'fit', 'model', 'mechanics', 'cutting'], why: 'Adds up what the other subjects count.' },
  facts: { may: ['base', 'plan', 'shelf', 'fit', 'model', 'mechanics', 'risk', 'what-if', 'cutting', 'cost'], why: 'Facts are what rules may ask for.' },
  place: { may: ['measure', 'base', 'plan', 'shelf', 'pile', 'model', 'mechanics', 'solve', 'risk', 'cutting', 'bench'], why: 'Which board goes where, from solved frames and a pile; the frames of several plans are solved here.' },
  findings: { may: ['base'], why: 'The shape of a judgement, known to rules and report.' },
  rules: { may: ['base', 'facts', 'findings'], why: 'Rules see facts only, never mechanics: a teacher can test them with numbers.' },
  'what-if': { may: ['base', 'shelf', 'fit', 'model', 'mechanics', 'risk'], why: 'What errors at the bench do to a frame already solved.' },
  'bench-sheet': { may: ['measure', 'base', 'plan', 'shelf', 'fit', 'model', 'mechanics', 'solve', 'risk', 'facts', 'findings', 'what-if'], why: 'Readings become findings beside those of the rules; the frame is solved again at the pull that was read.' },
  sheets: { may: ['order-of-work', 'base', 'plan', 'shelf', 'model', 'mechanics', 'risk', 'cutting', 'place', 'what-if', 'bench-sheet'], why: 'What the pages tell beyond facts and findings, worked out before a page is written.' },
  'place-page': { may: ['base', 'plan', 'shelf', 'pile', 'model', 'cutting', 'risk', 'place', 'report'], why: 'A placing on paper: it works nothing out.' },
  report: { may: ['measure', 'order-of-work', 'base', 'plan', 'shelf', 'place', 'model', 'mechanics', 'risk', 'cutting', 'cost', 'facts', 'findings', 'bench-sheet', 'sheets'], why: 'A report never sees rules, only findings.' },
  learn: { may: ['measure', 'base', 'plan', 'shelf', 'pile', 'model', 'mechanics', 'solve', 'risk', 'what-if', 'bench-sheet', 'report'], why: 'Sheets of finished frames against their promises, and what they say of the shelf’s numbers; sheets name boards of a pile; a page of its own.' },
  page: { may: ['index'], why: 'The page in a browser uses what any other program can: the public list.' },
  bench: { may: ['order-of-work', 'base', 'shelf', 'model', 'mechanics', 'facts', 'rules'], why: 'What a plan is judged with: known before any plan is.' },
  suggest: { may: ['base', 'plan', 'shelf', 'model', 'mechanics', 'solve', 'cutting', 'cost', 'facts', 'findings', 'rules', 'report', 'bench'], why: 'A search over plans; the full audit that confirms an answer is handed to it.' },
  audit: { may: ['base', 'plan', 'shelf', 'shop', 'model', 'solve', 'place', 'cost', 'facts', 'findings', 'sheets', 'rules', 'report', 'suggest', 'bench'], why: 'The pipeline, one stage after the other.' },
  schemas: { may: ['base', 'plan', 'shelf', 'pile', 'facts', 'findings', 'rules'], why: 'What files may say, for editors: made of the schemas they are read with.' },
  'suggest-plans': { may: ['plan', 'suggest', 'audit', 'bench'], why: 'The search with the pipeline as its judge.' },
  chart: { may: ['base', 'plan', 'shelf', 'facts', 'rules', 'report', 'suggest', 'bench'], why: 'Asks the search’s examiner of one size after another; works nothing out itself.' },
  class: { may: ['base', 'plan', 'shelf', 'model', 'cutting', 'cost', 'facts', 'findings', 'report'], why: 'Finished audits side by side, their cutting pooled; it audits nothing.' },
  highs: { may: ['cutting'], why: 'The integer program, which the library never reaches by itself.' },
  index: {
    may: [
      'measure', 'base', 'frame3d', 'plan', 'shelf', 'pile', 'model', 'mechanics', 'solve', 'place', 'place-page', 'cutting', 'cost', 'facts', 'findings', 'rules', 'suggest', 'report', 'bench-sheet',
      'learn', 'shop', 'order-of-work', 'sheets', 'timetable', 'chart', 'class', 'bench', 'audit', 'suggest-plans', 'schemas',
    ],
    why: 'The public list: names alone, whatever stage they come from, and never the command.',
  },
  cli: {
    may: [
      'measure', 'order-of-work', 'base', 'shelf', 'fit', 'plan', 'pile', 'model', 'mechanics', 'cutting', 'cost', 'facts', 'place', 'findings', 'rules', 'bench-sheet', 'place-page', 'report', 'learn', 'shop', 'timetable',
      'suggest', 'chart', 'class', 'bench', 'audit', 'suggest-plans', 'schemas', 'highs',
    ],
    why: 'The edge: it may call any stage, but solves, samples and draws nothing itself, and knows nothing of the page.',
  },
};

describe('folders import only what lies before them', () => {
  test.each(Object.entries(borders))('%s', (folder, { may, why }) => {
    const wrong = imports.filter(({ file, to }) => roomOf(file) === folder && to !== null && roomOf(to) !== folder && !may.includes(roomOf(to)));
    expect(wrong.map(({ file, target }) => `${file} imports ${target}. ${why}`)).toEqual([]);
  });
});

/** Rooms inside a folder: which may import which, and what each is for. What stands beside them in the folder itself is its doors and its words. */
const inside: Readonly<Record<string, { readonly may: readonly string[]; readonly why: string }>> = {
  'rules/judge': { may: [], why: 'A condition put to the engine: facts as a table, unknowns settled first.' },
  'rules/say': { may: ['rules/judge'], why: 'Limits, rules and findings in words.' },
  'rules/read': { may: ['rules/say'], why: 'Files into a ruleset: read, checked word by word, laid over each other.' },
  'rules/check': { may: ['rules/judge', 'rules/say', 'rules/read'], why: 'What can be said of a ruleset without a plan.' },
  'cutting/pieces': { may: [], why: 'What a frame is cut into.' },
  'cutting/boards': { may: ['cutting/pieces'], why: 'Which boards to take and what to cut from each, at proven least cost.' },
  'cutting/roll': { may: ['cutting/pieces'], why: 'Cloths on their roll.' },
};

test.each(Object.entries(inside))('the room %s imports only what lies before it', (room, { may, why }) => {
  const inner = (file: string): string | undefined => Object.keys(inside).find((one) => file.startsWith(`${one}/`));
  const wrong = imports.filter(({ file, to }) => inner(file) === room && to !== null && inner(to) !== undefined && inner(to) !== room && !may.includes(inner(to)!));
  expect(wrong.map(({ file, target }) => `${file} imports ${target}. ${why}`)).toEqual([]);
});

test('a folder that has rooms has no others', () => {
  const parted = new Set(Object.keys(inside).map((room) => room.split('/')[0]!));
  const rooms = new Set(files.filter((file) => parted.has(roomOf(file)) && file.split('/').length > 2).map((file) => file.split('/').slice(0, 2).join('/')));
  expect([...rooms].sort()).toEqual(Object.keys(inside).sort());
});

test('facts of one subject never import those of another', () => {
  const subjects = imports.filter(({ file }) => file === 'facts/groups.ts').map(({ to }) => to);
  expect(subjects.length).toBeGreaterThan(9);
  const wrong = imports.filter(({ file, to }) => subjects.includes(file) && subjects.includes(to));
  expect(wrong).toEqual([]);
});

/** What a report may take from the stages before it and run: words, constants, look-ups and the curve of a picture. Whatever is worked out of a plan stands in `sheets`, finished before a page is written. */
const runsInReport: Readonly<Record<string, string>> = {
  'mechanics/cloth/tap-note.js': 'a constant: the lowest note that is heard',
  'mechanics/occupancy/occupant.js': 'a look-up: whether something is among what is in the way',
  'mechanics/hanging/cleat.js': 'a constant: the length of a strip',
  'order-of-work/fastening-words.js': 'words',
  'cost/board-lines.js': 'a constant: how many boards are brought to pick from',
  'cost/supplies.js': 'a look-up: which lines of a bill have invented prices',
  'cost/packs.js': 'whole cents',
  'cutting/csv.js': 'how a table is written as CSV',
  'shelf/shelf-number.js': 'a look-up',
  'shelf/measured-words.js': 'words',
  'shelf/in-system.js': 'a look-up: what the shop sells in the plan’s own system',
  'model/joint-give.js': 'a look-up: the entry of the shelf that a joint stands on',
  'risk/lift-curve.js': 'the curve that a picture draws, from its own numbers',
};

test('a report works nothing out of a plan: the audit is finished before it', () => {
  const stages = ['mechanics', 'order-of-work', 'measure', 'risk', 'solve', 'cutting', 'cost', 'place', 'what-if', 'bench-sheet', 'model', 'shelf', 'sheets', 'plan', 'fit'];
  const taken = files.filter((file) => file.startsWith('report/')).flatMap((file) =>
    [...(texts.get(file) as string).matchAll(/^import (?!type)([^;]*?) from '(?:\.\.\/)+([\w/-]+\.js)';/gm)]
      .filter(([, , target]) => stages.includes(target!.split('/')[0]!)).map(([, , target]) => target as string));
  expect([...new Set(taken)].sort()).toEqual(Object.keys(runsInReport).sort());
});

/** Strings of a source that read as English: a space and a lower-case word outside of what is filled in. What is thrown is for who mends a bug, and may. */
function english(text: string): readonly string[] {
  const tokens = text.matchAll(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g);
  return [...tokens].flatMap(({ 0: token, index }) => {
    const said = token.startsWith('/') ? '' : token.slice(1, -1).replace(/\$\{[^}]*\}?/g, '');
    return / /.test(said) && /\b[a-z]{2,}\b/.test(said) && !/Error\(\s*$/.test(text.slice(0, index)) ? [token] : [];
  });
}

test.each(['mechanics', 'risk'])('%s gives codes and numbers and writes no English: it is made where it is said, in the units of the plan', (room) => {
  const own = files.filter((file) => roomOf(file) === room);
  expect(own.flatMap((file) => english(texts.get(file) as string).map((said) => `${file}: ${said}`))).toEqual([]);
  const words = imports.filter(({ file, to }) => own.includes(file) && to !== null && /(-words|units-format|capital|messages)\.ts$/.test(to));
  expect(words.map(({ file, to }) => `${file} imports ${to}`)).toEqual([]);
});

test('English is noticed in sentences, half sentences and templates, not in codes, comments and errors', () => {
  expect(['piece: \'each corner\'', '`the foot of ${name}`', '`${mm} mm`', 'say("Drive it")'].map((text) => english(text).length)).toEqual([1, 1, 1, 1]);
  expect(['piece: \'each-corner\'', '`${group} ${from} ${part}`', '/* the foot of it */', '// it\'s the foot', 'throw new Error(`no foot of ${name}`)'].flatMap(english)).toEqual([]);
});

test('only the command touches files, the clock and the terminal', () => {
  const outside = files.filter((file) => !file.startsWith('cli/') && file !== 'cli.ts');
  const touching = outside.filter((file) => /from 'node:|\bprocess\.|\bconsole\.|Date\.now\(|new Date\(|performance\.now\(|Math\.random\(/.test(texts.get(file) as string));
  expect(touching).toEqual([]);
});

test('only one file imports the rule engine', () => {
  expect([...new Set(imports.filter(({ target }) => target === 'json-rules-engine').map(({ file }) => file))]).toEqual(['rules/judge/engine.ts']);
});

test('every folder and every file at the top has its borders written down', () => {
  expect([...new Set(files.map(roomOf))].filter((room) => !(room in borders))).toEqual([]);
  expect(Object.keys(borders).filter((room) => !files.some((file) => roomOf(file) === room))).toEqual([]);
});

test('an import leads to a file that is there', () => {
  expect(imports.filter(({ target, to }) => target.startsWith('.') && to === null && !target.endsWith('.css')).map(({ file, target }) => `${file} imports ${target}`)).toEqual([]);
});
