import type { FileShape } from '../../index.js';
import { leavesOf, type Leaf } from './schema.js';

/** A part of the bench beside the frame. */
export const groups = [
  'The frame',
  'Bars',
  'Corners',
  'Crossbars',
  'Cloth and ground',
  'Choosing the wood',
  'The room',
  'Hanging',
  'More',
] as const;
export type Group = (typeof groups)[number];

/** How one thing a plan can say is asked for. */
export interface Control {
  readonly leaf: Leaf;
  readonly group: Group;
  readonly label: string;
  /** What each choice is called; a choice without words is called by its own name. */
  readonly words: Readonly<Record<string, string>>;
  /** Folded away until it is asked for. */
  readonly rare: boolean;
  /** Shown with a picture of each choice. */
  readonly drawn: boolean;
  /** What it is where the plan says nothing and the tool assumes nothing either. */
  readonly absent: string | null;
  /** Shown only when the plan says (or assumes) one of these there. */
  readonly when: { readonly path: string; readonly not: readonly string[] } | null;
  /** Whether a bare value one step up means this. */
  readonly bare: boolean;
}

type Row = readonly [
  path: string,
  group: Group,
  label: string,
  more?: Partial<Pick<Control, 'words' | 'rare' | 'drawn' | 'absent' | 'when' | 'bare'>>,
];
const rare = { rare: true } as const;
const plied = { when: { path: 'bars.plies', not: ['1', 'one ply'] } } as const;
const braced = { when: { path: 'corners.brace.kind', not: ['none'] } } as const;
const lays = { flat: 'Flat, wide side to the cloth', edge: 'On edge, wide side off the wall' };

/**
 * The controls, one line each. Whatever the plan's schema has besides turns up under “More” (or folded away in the
 * group of its block), named by its own description.
 */
const rows: readonly Row[] = [
  ['name', 'The frame', 'Name'],
  ['face.width', 'The frame', 'Width, outside'],
  ['face.height', 'The frame', 'Height, outside'],
  ['count', 'The frame', 'How many alike', rare],
  ['maker', 'The frame', 'Made by', rare],
  ['student', 'The frame', 'Made by, in a class', rare],
  ['spend.limit', 'The frame', 'Most it may cost', rare],
  ['door.width', 'The frame', 'Smallest door: width', rare],
  ['door.height', 'The frame', 'Smallest door: height', rare],
  ['bars.stock', 'Bars', 'Board'],
  ['bars.lay', 'Bars', 'How it lies', { drawn: true, words: lays }],
  ['bars.plies', 'Bars', 'Boards to each bar', { drawn: true }],
  [
    'bars.stack',
    'Bars',
    'Where they lie',
    { drawn: true, words: { 'side-by-side': 'Side by side', 'front-to-back': 'One behind the other' }, ...plied },
  ],
  [
    'bars.bond',
    'Bars',
    'What holds them',
    { words: { none: 'Nothing', screws: 'Screws', glue: 'Glue', 'glue+screws': 'Glue and screws' }, ...plied },
  ],
  [
    'bars.pairing',
    'Bars',
    'Their bows',
    { words: { opposed: 'Set against each other', unsorted: 'As they come', matched: 'Alike' }, ...plied },
  ],
  ['bars.lip', 'Bars', 'Raised edge at the front', rare],
  [
    'ply-screws',
    'Bars',
    'Screws through the boards',
    { ...rare, words: { set: 'As set or as usual', none: 'None' }, ...plied },
  ],
  ['ply-screws.use', 'Bars', 'Which screw', { ...rare, ...plied }],
  ['ply-screws.every', 'Bars', 'A screw every', { ...rare, ...plied }],
  ['ply-screws.pilot', 'Bars', 'Lead hole', { ...rare, ...plied }],
  [
    'corners.cut',
    'Corners',
    'Cut',
    { drawn: true, words: { mitre: 'Mitre', butt: 'Butt', 'half-lap': 'Half lap', keyed: 'Slotted, with keys' } },
  ],
  ['corners.glue', 'Corners', 'Glue', { words: { none: 'No glue' } }],
  [
    'corners.brace.kind',
    'Corners',
    'Brace',
    {
      drawn: true,
      absent: 'none',
      words: { none: 'None', timber: 'A strip across', 'ply-gusset': 'Plywood corner', 'steel-angle': 'Steel angle' },
    },
  ],
  ['corners.brace.leg', 'Corners', 'Brace, from the corner', braced],
  ['corners.brace.stock', 'Corners', 'Brace, board', braced],
  ['corners.brace.lay', 'Corners', 'Brace, how it lies', { rare: true, words: lays, ...braced }],
  ['corners.brace.give', 'Corners', 'Brace ends give', { rare: true, ...braced }],
  ['corners.nails', 'Corners', 'Nails', { ...rare, words: { set: 'As set or as usual', none: 'None' } }],
  ['corners.nails.use', 'Corners', 'Which nail', rare],
  ['corners.nails.each', 'Corners', 'Nails in each corner', rare],
  ['corners.give', 'Corners', 'The corner gives', rare],
  ['corners.give.plane', 'Corners', 'The corner gives: within the face', rare],
  ['corners.give.out', 'Corners', 'The corner gives: towards you and away', rare],
  ['corners.give.twist', 'Corners', 'The corner gives: about the bar', rare],
  ['corners.brace.give.plane', 'Corners', 'Brace ends give: within the face', { rare: true, ...braced }],
  ['corners.brace.give.out', 'Corners', 'Brace ends give: towards you and away', { rare: true, ...braced }],
  ['corners.brace.give.twist', 'Corners', 'Brace ends give: about the brace', { rare: true, ...braced }],
  ['crossbars', 'Crossbars', 'Crossbars'],
  ['cloth.use', 'Cloth and ground', 'Cloth'],
  ['cloth.pull.working', 'Cloth and ground', 'Pull when finished', { bare: true }],
  ['cloth.pull.peak', 'Cloth and ground', 'Pull while stretching', rare],
  ['cloth.pull.working.x', 'Cloth and ground', 'Pull when finished: along the width', rare],
  ['cloth.pull.working.y', 'Cloth and ground', 'Pull when finished: along the height', rare],
  ['cloth.pull.peak.x', 'Cloth and ground', 'Pull while stretching: along the width', rare],
  ['cloth.pull.peak.y', 'Cloth and ground', 'Pull while stretching: along the height', rare],
  ['cloth.fixing.to', 'Cloth and ground', 'Fixed to', { words: { back: 'The back', edge: 'The outer edge' } }],
  ['cloth.fixing.every', 'Cloth and ground', 'A staple every', rare],
  ['cloth.fixing.turn', 'Cloth and ground', 'Cloth beyond the staples', rare],
  ['cloth.roll', 'Cloth and ground', 'Width of the roll', rare],
  ['ground.coats', 'Cloth and ground', 'Coats of ground'],
  [
    'lumber.chosen',
    'Choosing the wood',
    'How boards are chosen',
    { words: { unsorted: 'As they come', plain: 'A glance along each', picked: 'Sighted and checked for twist' } },
  ],
  ['lumber.moisture', 'Choosing the wood', 'Moisture of the wood'],
  ['lumber.knots', 'Choosing the wood', 'Knots', { words: { none: 'None', few: 'Few', many: 'Many' } }],
  [
    'lumber.rough-faces',
    'Choosing the wood',
    'Rough faces',
    { ...rare, words: { inward: 'Inward', outward: 'Outward' } },
  ],
  ['boards', 'Choosing the wood', 'Boards that were measured', rare],
  ['room.humidity', 'The room', 'Humidity over the year'],
  ['room.temperature', 'The room', 'Temperature'],
  [
    'hang.by',
    'Hanging',
    'Hung by',
    {
      drawn: true,
      words: { wire: 'A wire', 'two-hooks': 'Two hooks', 'd-rings': 'Two rings', cleat: 'A cleat', none: 'Not at all' },
    },
  ],
  ['hang.hooks', 'Hanging', 'Hooks in the wall'],
  ['hang.drop', 'Hanging', 'Rings, from the top'],
  [
    'hang.from',
    'Hanging',
    'Rings are screwed into',
    { ...rare, words: { inside: 'The inside of the bars', back: 'Their back' } },
  ],
  ['hang.slack', 'Hanging', 'Slack of the wire', rare],
];

const usual = { words: {}, rare: false, drawn: false, absent: null, when: null, bare: false } as const;

/**
 * A control for everything a plan can say: those of the table first, in its order, then what the schema has besides.
 */
export function controlsOf(shape: FileShape): readonly Control[] {
  const leaves = leavesOf(shape);
  const known = rows.flatMap(([path, group, label, more]) => {
    const leaf = leaves.find((one) => one.path === path);
    return leaf === undefined ? [] : [{ ...usual, ...more, leaf, group, label }];
  });
  const parts = known.map(({ leaf }) => leaf.path);
  const others = leaves
    .filter(({ path }) => !parts.includes(path))
    .map((leaf): Control => ({ ...usual, leaf, group: groupOf(leaf.path, known), label: labelOf(leaf), rare: true }));
  return [...known, ...others];
}

/** The group that most of a block stands in. */
function groupOf(path: string, known: readonly Control[]): Group {
  const block = path.split('.')[0] as string;
  return known.find(({ leaf }) => leaf.path.split('.')[0] === block && path.includes('.'))?.group ?? 'More';
}

/** What a thing is called that the table has no words for. */
export function labelOf({ path, description }: Leaf): string {
  const said = description.replace(/ \(.*$/u, '').split(/[;:]/u)[0] ?? '';
  const name = path.split('.').slice(-2).join(', ').replaceAll('-', ' ');
  return said !== '' && said.length <= 60 ? said : name;
}
