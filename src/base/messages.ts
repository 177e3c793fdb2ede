import { fileWordings } from './file-messages.js';
import { orNearest, worder, type Details, type Wording } from './wording.js';

/** Every sentence the readers of plans and shelves can say, by code. */
const wordings = {
  ...fileWordings,
  // A plan against itself
  'peak-below-working': (d) => ({
    found: `a peak of ${d.value}`,
    allowed: `at least the working pull, ${d.allowed}`,
    hint: 'The peak is the pull while stretching: give the larger number there.',
  }),
  'half-a-pull': (d) => ({
    found: `a pull with only \`${d.name}\``,
    allowed: 'both `x` (along the width) and `y` (along the height)',
    hint: 'Give the other one too, or a single number for both.',
  }),
  'two-kinds-of-pull': () => ({
    found: '`x` and `y` beside `working` and `peak`',
    allowed: '`{ working, peak }` or `{ x, y }`',
    hint: 'Put x and y inside working or peak.',
  }),
  'turned-range': (d) => ({ found: d.value ?? '', allowed: 'the lower number first', hint: 'Swap the two numbers.' }),
  'ply-beyond-plies': (d) => ({
    found: `ply ${d.value}`,
    allowed: `a ply from 1 to ${d.allowed}, as \`plies\` says`,
    hint: 'Raise `plies`, or measure the boards you will use.',
  }),
  'no-such-crossbar': (d) => ({
    found: `a board for ${d.value}`,
    allowed:
      d.allowed === '0'
        ? 'the bars: the plan has no crossbars'
        : `a bar, or a crossbar from crossbar-1 to crossbar-${d.allowed}`,
    hint: 'Count the crossbars in the order in which the plan names them.',
  }),
  'board-twice': (d) => ({
    found: `a second board for ${d.value}`,
    allowed: 'one board for each bar and ply',
    hint: 'Keep one, or give the other its own `ply`.',
  }),
  'bow-without-over': (d) => ({
    found: `a ${d.name} without the length it was read over`,
    allowed: '`over: 2400 mm` beside it',
    hint: 'Add the length of the board between the reading points as `over`.',
  }),
  'at-outside': (d) => ({
    found: `a crossbar at ${d.value}`,
    allowed: 'a place between the two ends, such as `1/2` or `400 mm`',
    hint: 'Count from the left for an upright, from the bottom for a level one.',
  }),
  'leg-too-short': (d) => ({
    found: `a brace leg of ${d.value}`,
    allowed: `more than ${d.allowed}`,
    hint: 'Lengthen the leg: a brace this near the corner lies inside the joint and holds nothing.',
  }),
  'ply-screws-missing': (d) => ({
    found: `no ply screws with the bond ${d.value}`,
    allowed: 'screws, or a bond without them',
    hint: 'Write `bond: glue`, or leave `ply-screws` out.',
  }),
  'one-of-two-hooks': () => ({
    found: 'two hooks, of which there is one',
    allowed: '`hooks: 2`',
    hint: 'Leave `hooks` out, or hang it by a wire.',
  }),
  'leg-too-long': (d) => ({
    found: `a brace leg of ${d.value}`,
    allowed: `less than ${d.allowed}, half of the shorter bar`,
    hint: 'Shorten the leg, so that two braces fit on one bar.',
  }),
  'screws-without-bond': (d) => ({
    found: `\`ply-screws\` with \`bond: ${d.value}\``,
    allowed: '`bond: screws` or `bond: glue+screws`',
    hint: 'Change the bond, or remove `ply-screws`.',
  }),
  'screws-without-plies': () => ({
    found: '`ply-screws` on bars of one ply',
    allowed: 'two plies or more',
    hint: 'They are left out; raise `bars.plies` to use them.',
  }),
  'drop-too-deep': (d) => ({
    found: `a hanging point ${d.value} down`,
    allowed: `less than ${d.allowed}, the height of the face`,
    hint: 'Give the distance from the top of the frame to its rings.',
  }),
  'wire-above-frame': (d) => ({
    found: `a slack of ${d.value}`,
    allowed: `less than the drop, ${d.allowed}`,
    hint: 'The wire would show above the frame: lower the rings or tighten the wire.',
  }),
  // A plan against the shelf
  'nominal-name': (d) => ({
    found: `\`${d.value}\`, a shop’s name for a size`,
    allowed: `keys of the shelf: ${d.allowed}`,
    hint: `Taken as \`${d.name}\`; write that key, so that nobody has to guess.`,
  }),
  'unknown-on-shelf': (d) => ({
    found: `\`${d.value}\``,
    allowed: `${d.name} on the shelf: ${d.allowed}`,
    hint: orNearest(d.nearest, 'Pick one of these, or add it to your own shelf file.'),
  }),
  'no-opening': (d) => ({
    found: `bars ${d.value} wide`,
    allowed: `less than ${d.allowed}, half of the shorter side of the face`,
    hint: 'The bars would fill the face: pick a narrower bar or a larger face.',
  }),
  'crossbar-on-bar': (d) => ({
    found: `${d.name} at ${d.value} from the edge`,
    allowed: `between ${d.allowed}`,
    hint: 'It would lie on the side bar: move it towards the middle.',
  }),
  'crossbars-overlap': (d) => ({
    found: `${d.name} only ${d.value} apart`,
    allowed: `at least ${d.allowed} between their middles`,
    hint: 'Move them apart, or leave one out.',
  }),
  'setback-too-deep': (d) => ({
    found: `a setback of ${d.value}`,
    allowed: `less than ${d.allowed}, the depth of the bars`,
    hint: 'The crossbar would hang behind the bars: reduce the setback.',
  }),
  'keyed-stays-dry': (d) => ({
    found: `${d.name} on a keyed corner`,
    allowed: 'tongue and slot left dry, so that the keys can open them',
    hint: 'Leave it out, or cut the corners as a mitre.',
  }),
  'crossbar-stands-out': (d) => ({
    found: `${d.name}, which stands out ${d.value} behind the bars`,
    allowed: 'its back no further than the back of the bars',
    hint: 'Reduce the setback or lay it flat; the frame will not lie against the wall.',
  }),
  'brace-meets-crossbar': (d) => ({
    found: `${d.name}, ${d.value} from the corner`,
    allowed: `further than the brace leg, ${d.allowed}`,
    hint: 'Brace and crossbar would meet: shorten the leg or move the crossbar.',
  }),
  'no-screw-fits': (d) => ({
    found: `plies ${d.value} thick`,
    allowed: 'plies that a screw of the shelf goes through',
    hint: 'Name a long enough screw under `ply-screws`, or glue without screws.',
  }),
  // Days and hours
  'not-a-day': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a day of the calendar',
    hint: 'Write it like 2027-01-12.',
  }),
  'not-a-time': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'hours and minutes',
    hint: 'Write it like 18:30.',
  }),
  // A shelf against itself
  'both-G': () => ({ found: '`G` beside `E-over-G`', allowed: 'one of the two', hint: 'Keep the one you know.' }),
  'impossible-screw': (d) => ({
    found: d.value ?? '',
    allowed: d.allowed ?? '',
    hint: 'Measure the screw again: the bottom of the thread is thinner than the smooth part, the head wider.',
  }),
  'other-unit-of-proposal': (d) => ({
    found: `\`${d.value}\``,
    allowed: `\`${d.allowed}\``,
    hint: `Write the number in ${d.allowed ?? 'this unit'}.`,
  }),
  'unknown-proposal': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a known number',
    hint: orNearest(d.nearest, 'Nothing reads a number of this name: remove it.'),
  }),
  'unknown-source': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'a key of rules/sources.yaml',
    hint: orNearest(d.nearest, 'Use `practice`, `proposal` or `measured`, or add the source to the list.'),
  }),
  'unknown-source-field': (d) => ({
    found: `a source for \`${d.value}\``,
    allowed: `a number of this entry: ${d.allowed}`,
    hint: orNearest(
      d.nearest,
      'Write the name of one of these numbers, or delete the line: the entry has no such number.',
    ),
  }),
} satisfies Record<string, (details: Details) => Wording>;

/** Every code a reader of plans, shelves and sources can report. */
export type ProblemCode = keyof typeof wordings;

/** A problem of the given kind at a place, worded. */
export const problemAt = worder<ProblemCode, Details>(wordings);

/** All codes, for tests and documentation. */
export const problemCodes = Object.keys(wordings) as readonly ProblemCode[];
