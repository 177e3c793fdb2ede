import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chartPicture } from '../../src/chart/chart-picture.js';
import { chartSizes, type Chart } from '../../src/chart/chart.js';
import { rulesFolder } from '../../src/cli/files.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { packRoll } from '../../src/cutting/roll/roll.js';
import { clothSheet } from '../../src/mechanics/cloth/cloth-sheet.js';
import { fasteningSheet } from '../../src/mechanics/fasteners/fastening-sheet.js';
import { hangingSheet } from '../../src/sheets/sheets.js';
import { buildModel } from '../../src/model/build-model.js';
import type { Model } from '../../src/model/model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { barSection } from '../../src/report/drawings/bar-section.js';
import { clothCut } from '../../src/report/drawings/cloth-cut.js';
import { cornerBuild } from '../../src/report/drawings/corner-build.js';
import { foldedCorner } from '../../src/report/drawings/folded-corner.js';
import { frontView } from '../../src/report/drawings/front-view.js';
import { hanging } from '../../src/report/drawings/hanging.js';
import { liftChance } from '../../src/report/drawings/lift-chance.js';
import type { Picture } from '../../src/report/drawings/picture.js';
import { propeller } from '../../src/report/drawings/propeller.js';
import { rollPicture } from '../../src/report/drawings/roll.js';
import { sightingPicture } from '../../src/report/drawings/sighting.js';
import { boardPictures } from '../../src/report/sections/board-pictures.js';
import { cornerBuildOf } from '../../src/report/sections/corner-data.js';
import { stapleOrder } from '../../src/report/drawings/staple-order.js';
import { barSectionOf, frontViewOf, hangingPictureOf } from '../../src/report/sections/picture-data.js';
import { rankPicture } from '../../src/learn/rank-picture.js';
import { testJointPicture } from '../../src/report/drawings/test-joint.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { solveModel } from '../../src/solve/solve-model.js';

/** One picture with what is special about it; null where there is nothing to show. */
export interface Shown {
  readonly caption: string;
  readonly picture: Picture | null;
}

/** One kind of picture in its variants. */
export interface Group {
  readonly title: string;
  readonly shown: readonly Shown[];
}

const read = readShelf(readFileSync(join(rulesFolder, 'shelf.yaml'), 'utf8'), 'shelf.yaml');
if (!read.ok) throw new Error('the shipped shelf must load');
const shelf = read.value;

/** A plan of the Gullmark Street Studio from its size, its stock and further lines. */
function modelOf(face: string, bars: string, more: readonly string[] = []): Model {
  const [width, height] = face.split(' by ');
  const text = ['plan: 1', 'name: Sheet', `face: { width: ${width}, height: ${height} }`, `bars: { ${bars} }`, ...more].join('\n');
  const plan = readPlanWith(text, 'plan.yaml', shelf);
  if (!plan.ok) throw new Error(`${text}\n${JSON.stringify(plan.problems)}`);
  return buildModel(plan.value, shelf);
}

const drawn = (model: Model) => ({ plan: model.plan, model, shelf });
const flat = 'stock: strip-19x38, lay: flat';
const doubled = 'stock: strip-19x38, lay: edge, plies: 2';
const stout = 'stock: stud-38x64, lay: edge';
const upright = (at: string): string => `  - { runs: upright, at: ${at}, stock: strip-19x38, lay: flat }`;
const level = (at: string): string => `  - { runs: level, at: ${at}, stock: board-19x64, lay: flat }`;
const crossbars = (...list: readonly string[]): readonly string[] => ['crossbars:', ...list];
const timber = 'brace: { kind: timber, leg: 220 mm, stock: strip-19x38, lay: flat }';
const gusset = 'brace: { kind: ply-gusset, leg: 8 in }';
const angle = 'brace: { kind: steel-angle, leg: 100 mm }';
const corners = (parts: string): readonly string[] => [`corners: { ${parts} }`];

/** Each caption with the plan it is drawn from. */
type Plans = readonly (readonly [caption: string, model: Model])[];
const show = (plans: Plans, draw: (model: Model) => Picture | null): readonly Shown[] => plans.map(([caption, model]) => ({ caption, picture: draw(model) }));

const fronts: Plans = [
  ['square, no crossbar', modelOf('500 mm by 500 mm', flat)],
  ['oblong level, one crossbar, timber braces', modelOf('1200 mm by 900 mm', doubled, [...crossbars(upright('1/2')), ...corners(`cut: mitre, ${timber}`)])],
  ['oblong upright, one crossbar', modelOf('650 mm by 1100 mm', flat, [...crossbars(level('1/2')), ...corners('cut: butt')])],
  ['two crossbars that cross, inches, gussets', modelOf('53-3/8 in by 38-1/4 in', stout, [...crossbars(upright('1/2'), level('1/3')), ...corners(gusset)])],
  ['three crossbars, half-lapped, steel angles', modelOf('1500 mm by 1000 mm', doubled, [...crossbars(upright('1/3'), upright('2/3'), level('1/2')), ...corners(`cut: half-lap, ${angle}`)])],
  ['three uprights, inches', modelOf('69-1/4 in by 28-5/8 in', flat, crossbars(upright('1/4'), upright('1/2'), upright('3/4')))],
  ['very long, level', modelOf('3200 mm by 500 mm', stout, crossbars(upright('1/3'), upright('2/3')))],
  ['very long, upright, inches', modelOf('17-3/8 in by 81-1/2 in', stout, crossbars(level('1/3'), level('2/3')))],
  ['very small, inches', modelOf('6-3/8 in by 8-1/4 in', flat)],
];

const sections: Plans = [
  ['one board lying flat', modelOf('600 mm by 500 mm', flat)],
  ['one board on edge, inches', modelOf('23-1/4 in by 18-7/8 in', 'stock: strip-19x38, lay: edge')],
  ['two side by side, glued and screwed', modelOf('900 mm by 650 mm', doubled)],
  ['three front to back, screwed, lip', modelOf('900 mm by 650 mm', 'stock: board-19x64, lay: flat, plies: 3, stack: front-to-back, bond: screws, lip: 6 mm')],
  ['four side by side, loose, inches', modelOf('37-5/8 in by 29-1/4 in', 'stock: strip-19x38, lay: edge, plies: 4, bond: none')],
  ['two front to back, glued, cloth on the edge', modelOf('900 mm by 650 mm', 'stock: square-38x38, lay: flat, plies: 2, stack: front-to-back, bond: glue', ['cloth: { fixing: { to: edge, turn: 60 mm } }'])],
  ['a tall bar with a lip, inches', modelOf('58-1/4 in by 37-3/8 in', 'stock: stud-38x89, lay: edge, lip: 1/4 in')],
];

const builds: Plans = [
  ['mitre, glue, one brad', modelOf('900 mm by 650 mm', flat)],
  ['mitre, no glue, two nails, inches', modelOf('34-3/8 in by 22-5/8 in', stout, corners('cut: mitre, glue: none, nails: { use: brad-18ga-25, each: 2 }'))],
  ['butt, glue, timber brace', modelOf('1200 mm by 900 mm', stout, corners(`cut: butt, ${timber}`))],
  ['half-lap, glue, no nails', modelOf('900 mm by 650 mm', 'stock: board-19x64, lay: flat', corners('cut: half-lap, nails: none'))],
  ['half-lap, nails, gusset, inches', modelOf('46-1/4 in by 33-5/8 in', stout, corners(`cut: half-lap, nails: { use: brad-18ga-25, each: 2 }, ${gusset}`))],
  ['butt, steel angle', modelOf('900 mm by 650 mm', stout, corners(`cut: butt, ${angle}`))],
  ['plies screwed side by side', modelOf('900 mm by 650 mm', doubled)],
  ['plies screwed front to back, timber brace', modelOf('1200 mm by 900 mm', 'stock: board-19x64, lay: flat, plies: 2, stack: front-to-back', corners(timber))],
];

const lifts: readonly (readonly [string, Parameters<typeof liftChance>[0]])[] = [
  ['narrow: hardly any', { units: 'metric', mean_mm: 0, sd_mm: 0.45, limit_mm: 4.3, chance: 0.0001 }],
  ['wide: most of them, inches', { units: 'inch', mean_mm: 0, sd_mm: 55, limit_mm: 7, chance: 0.9 }],
  ['with a mean to one side', { units: 'metric', mean_mm: 4, sd_mm: 3, limit_mm: 6, chance: 0.2529 }],
  ['a mean beyond the limit, inches', { units: 'inch', mean_mm: -14, sd_mm: 4, limit_mm: 6.35, chance: 0.972 }],
];

const movements: Plans = [
  ['plain', modelOf('900 mm by 650 mm', flat)],
  ['an upright frame laid down, inches', modelOf('21-1/4 in by 57-3/8 in', flat)],
  ['crossbars that cross', modelOf('1500 mm by 1000 mm', doubled, crossbars(upright('1/3'), level('1/2')))],
  ['one crossbar', modelOf('1400 mm by 1200 mm', 'stock: stud-38x89, lay: edge', crossbars('  - { runs: upright, at: 1/2, stock: planed-21x45, lay: edge }'))],
  ['very long, level', modelOf('3200 mm by 500 mm', stout)],
  ['square, steel angles', modelOf('900 mm by 900 mm', 'stock: square-38x38, lay: flat, plies: 2, stack: front-to-back, bond: screws', corners(`glue: none, ${angle}`))],
];

const hangings: Plans = [
  ['wire, two hooks, rings inside', modelOf('900 mm by 650 mm', doubled, ['hang: { by: wire, drop: 160 mm, from: inside, hooks: 2 }'])],
  ['wire, one hook, rings on the back, inches', modelOf('29-3/8 in by 38-5/8 in', stout, ['hang: { by: wire, drop: 8 in, from: back, hooks: 1 }'])],
  ['two hooks, no wire', modelOf('1200 mm by 900 mm', stout, ['hang: { by: two-hooks, drop: 100 mm }'])],
  ['very long, wire, one hook', modelOf('2400 mm by 600 mm', stout, ['hang: { by: wire, drop: 150 mm, from: back, hooks: 1 }'])],
  ['tall, wire, two hooks, leaning, inches', modelOf('17-1/4 in by 58-3/8 in', flat, ['hang: { by: wire, drop: 20 in, from: back, hooks: 2 }'])],
  ['strap hangers, an upright in the middle', modelOf('900 mm by 650 mm', doubled, [...crossbars(upright('1/2')), 'hang: { by: d-rings, drop: 150 mm }'])],
  ['a cleat, half-laps', modelOf('700 mm by 1000 mm', 'stock: board-19x64, lay: flat', [...corners('cut: half-lap, nails: none'), 'hang: { by: cleat, drop: 150 mm }'])],
  ['very small', modelOf('150 mm by 100 mm', flat)],
];

const boards: Plans = [
  ['few boards', modelOf('600 mm by 500 mm', flat)],
  ['very short pieces', modelOf('150 mm by 100 mm', flat)],
  ['many pieces, inches', modelOf('37-5/8 in by 29-1/4 in', doubled, [...crossbars(upright('1/2'), level('1/2')), ...corners('brace: { kind: timber, leg: 8 in, stock: strip-19x38, lay: flat }')])],
  ['several frames', modelOf('700 mm by 450 mm', flat, ['count: 4'])],
];

const cloths: Plans = [
  ['level, fixed to the back', modelOf('900 mm by 650 mm', doubled)],
  ['upright, fixed to the edge, inches', modelOf('20 in by 48 in', stout, ['cloth: { fixing: { to: edge, turn: 2 in } }'])],
  ['square', modelOf('500 mm by 500 mm', flat)],
  ['very long', modelOf('3200 mm by 500 mm', stout)],
  ['very small', modelOf('150 mm by 100 mm', flat)],
];

const rolls: Plans = [
  ['one cloth', modelOf('900 mm by 650 mm', doubled)],
  ['one long cloth', modelOf('3400 mm by 400 mm', stout)],
  ['one long cloth, upright, inches', modelOf('15 in by 90 in', stout)],
  ['several, metric', modelOf('700 mm by 450 mm', flat, ['count: 5'])],
  ['several upright, inches', modelOf('16 in by 24 in', flat, ['count: 7'])],
];

function clothPicture(model: Model): Picture {
  const sheet = clothSheet(model, solveModel(model));
  return clothCut({ units: model.plan.units, cut_width_mm: sheet.cut.width_mm, cut_height_mm: sheet.cut.height_mm, folds: sheet.folds, along: sheet.roll.along });
}

function staplesOf(model: Model): Picture {
  const { face } = model.plan;
  return stapleOrder({ width_mm: face.width_mm, height_mm: face.height_mm, bar_w_mm: model.bars.top.section.w_mm, order: clothSheet(model, solveModel(model)).order });
}

function rollOf(model: Model): Picture {
  const { cut, roll } = clothSheet(model, solveModel(model));
  const [along_mm, across_mm] = roll.along === 'height' ? [cut.height_mm, cut.width_mm] : [cut.width_mm, cut.height_mm];
  const laid = packRoll(Array.from({ length: model.plan.count }, (_, i) => ({ name: `cloth ${i + 1}`, along_mm, across_mm, turnable: roll.along === 'either' })), roll.width_mm);
  return rollPicture({
    units: model.plan.units, roll_width_mm: roll.width_mm, length_mm: laid.length_mm,
    cloths: laid.placed.map((p) => ({ label: p.name, along_mm: p.y_mm, across_mm: p.x_mm, length_mm: p.along_mm, width_mm: p.across_mm })),
  });
}

function movementOf([caption, model]: Plans[number]): Shown {
  const { stability } = solveModel(model);
  const words = stability.mode_words ?? 'nothing gives way';
  return { caption: `${caption}: ${words}`, picture: propeller({ units: model.plan.units, lines: stability.mode_shape, words }) };
}

function hangingOf(model: Model): Picture | null {
  const state = hangingSheet(model);
  return state === null ? null : hanging(hangingPictureOf(drawn(model), state));
}

/** Chances made up for the look of it: the more boards are read, the fewer corners lift. */
const sighted = { pieces: 4, by_luck: 0.31, rows: [[4, 0.18], [6, 0.07], [9, 0.012], [14, 0.0004]].map(([n, chance]) => ({ sighted: n as number, chance: chance as number, error: 0 })) };

/** A wall chart with figures made up for the look of it: stouter bars, crossbars and braces reach further; one kind reaches nowhere. */
function chartOf(units: Chart['units'], keys: readonly string[]): Picture {
  const sizes = chartSizes(units);
  const stepped = (mm: number): number => Math.min(sizes.most_mm, Math.round(mm / sizes.step_mm) * sizes.step_mm);
  const kinds = keys.flatMap((key) => (['flat', 'edge'] as const).flatMap((lay) => ([1, 2] as const).map((plies) => ({ stock: shelf.lumber[key], lay, plies }))));
  const rows = kinds.map(({ stock, lay, plies }, k): Chart['rows'][number] => {
    if (stock === undefined) throw new Error(`no ${keys.join(' or ')} on the shelf`);
    const builds = ([0, 1, 2] as const).flatMap((crossbars) => [false, true].map((braced) => ({ stock: stock.key, lay, plies, crossbars, braced })));
    const entries = (['square', 'oblong'] as const).flatMap((shape) => builds.map((build) => {
      const reach = 14 * stock.width_mm ** 0.9 * plies ** 0.7 * (1 + 0.35 * build.crossbars) * (build.braced ? 1.4 : 1) * (shape === 'oblong' ? 1.15 : 1);
      return { build, shape, clear_mm: k === 0 && !build.braced ? null : stepped(reach), no_stop_mm: stepped(reach * 1.3) };
    }));
    return { stock, lay, plies, entries };
  });
  return chartPicture({ shelf_name: shelf.name, ruleset_name: 'Studio baseline', units, sizes, rows });
}

/** Every kind of picture that is made, each in the variants that differ most. */
export const groups = (): readonly Group[] => [
  { title: 'The frame from the front', shown: show(fronts, (model) => frontView(frontViewOf(drawn(model)))) },
  { title: 'Section through a bar', shown: show(sections, (model) => barSection(barSectionOf(drawn(model)))) },
  { title: 'How a corner is built', shown: show(builds, (model) => cornerBuild(cornerBuildOf(drawn(model), fasteningSheet(model)))) },
  { title: 'Chance of a lifted corner', shown: lifts.map(([caption, given]) => ({ caption, picture: liftChance(given) })) },
  { title: 'What sighting boards brings', shown: [{ caption: 'made-up chances', picture: sightingPicture(sighted) }] },
  { title: 'How the frame gives way', shown: movements.map(movementOf) },
  { title: 'How the piece hangs', shown: show(hangings, hangingOf) },
  { title: 'How to cut the boards', shown: boards.flatMap(([caption, model]) => boardPictures(cutPlan([model.plan], shelf)).slice(0, 1).map((picture) => ({ caption, picture }))) },
  { title: 'The cloth as cut', shown: show(cloths, clothPicture) },
  { title: 'The order of the staples', shown: show(cloths, staplesOf) },
  { title: 'How a corner of the cloth is folded', shown: (['back', 'edge'] as const).map((to) => ({ caption: `fixed to the ${to}`, picture: foldedCorner(to) })) },
  { title: 'The cloth on the roll', shown: show(rolls, rollOf) },
  {
    title: 'Where readings fell in what was promised',
    shown: [
      { caption: 'honest, made up', picture: rankPicture(Array.from({ length: 240 }, (_, i) => [((i * 37) % 240) / 240, ((i * 37) % 240) / 240 + 0.02])) },
      { caption: 'too many at the top', picture: rankPicture(Array.from({ length: 60 }, (_, i) => [Math.sqrt(i / 60), Math.sqrt(i / 60)])) },
      { caption: 'no reading', picture: rankPicture([]) },
    ],
  },
  { title: 'Loading a test corner', shown: [{ caption: 'in the plane', picture: testJointPicture('plane') }, { caption: 'at right angles', picture: testJointPicture('out') }] },
  {
    title: 'The wall chart',
    shown: [
      { caption: 'two stocks, figures made up', picture: chartOf('metric', ['strip-19x38', 'stud-38x64']) },
      { caption: 'four stocks, figures made up, inches', picture: chartOf('inch', ['strip-19x38', 'board-19x64', 'board-19x89', 'stud-38x89']) },
    ],
  },
];
