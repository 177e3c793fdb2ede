import type { Problem } from './problem.js';

/** Where a problem stands in a file. */
export interface Place {
  readonly file: string;
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly excerpt?: string;
}

/** What a wording may be told; all of it text made for people. */
export interface Details {
  /** What the user wrote, or what is at fault. */
  readonly value?: string;
  /** The name of the thing spoken of: a key, a unit, a shelf section. */
  readonly name?: string;
  /** What would be right. */
  readonly allowed?: string;
  /** The nearest thing that exists. */
  readonly nearest?: string | undefined;
}

interface Wording {
  readonly found: string;
  readonly allowed: string;
  readonly hint: string;
}

/** How a block of this name is written, for those who put one value in its place. */
const blocks: Readonly<Record<string, string>> = {
  face: 'face: { width: 900 mm, height: 650 mm }',
  bars: 'bars: { stock: strip-19x38, lay: flat }',
  crossbars: 'crossbars: [ { runs: upright, at: 1/2 } ]',
  corners: 'corners: { cut: mitre, glue: pva }',
  brace: 'brace: { kind: timber, leg: 200 mm }',
  nails: 'nails: { use: brad-18ga-25, each: 1 }',
  cloth: 'cloth: { use: cotton-duck-340 }',
  ground: 'ground: { coats: 2 }',
  lumber: 'lumber: { chosen: plain, moisture: 12 % }',
  room: 'room: { humidity: 35..60 % }',
  hang: 'hang: { by: two-hooks }',
  spend: 'spend: { limit: 60 }',
  door: 'door: { width: 760 mm, height: 1980 mm }',
  diagonals: 'diagonals: [ 1110 mm, 1112 mm ]',
  push: 'push: { weight: 500 g, sag: 12 mm }',
};

/** What to write where a value is of another kind. */
function kindHint({ name, allowed = '', value = '' }: Details): string {
  const block = Object.hasOwn(blocks, name ?? '') ? blocks[name ?? ''] : undefined;
  if (block !== undefined) return `Write it like this: \`${block}\`.`;
  if (allowed === 'a text') return 'Put it in quotes, or begin it with a letter.';
  if (allowed === 'a number' && /\d/u.test(value)) return 'Write the number alone.';
  if (allowed === 'a whole number') return 'Write a whole number, such as 2.';
  if (allowed.startsWith('a list')) return 'Put it in square brackets, or begin its line with a dash.';
  if (allowed.startsWith('`true`')) return 'Write `true` or `false`, without quotation marks.';
  if (allowed.includes('a block of keys'))
    return `Write its parts in braces, as in \`${name ?? 'key'}: { key: value, key: value }\`.`;
  return example(allowed, name);
}

/** What to write, taken from what is allowed: the first of the words in backticks. */
function example(allowed: string, name: string | undefined): string {
  const first = /`([^`]+)`/u.exec(allowed)?.[1];
  if (first === undefined) return `Write ${allowed === '' ? 'another value' : allowed} here.`;
  return /^[\w.-]+$/u.test(first) && name !== undefined && /^[a-z-]+$/u.test(name)
    ? `Write one of these, for example \`${name}: ${first}\`.`
    : `Write for example \`${first}\`.`;
}

/** What to do about a key nobody knows: often a comma or a colon went astray. */
function keyHint({ value = '', nearest }: Details): string {
  if (/^\d/u.test(value)) return 'A comma ends a value: write a point for the decimals, 47.5 and not 47,5.';
  if (/^[a-z][a-z-]*:\S/u.test(value)) return 'Put a space after the colon.';
  return orNearest(nearest, `Write one of the keys that are allowed here, or delete \`${value}\`: nothing reads it.`);
}

const separate =
  'Give each key a line of its own, indented like its neighbours, or put all of them into braces with commas between: `face: { width: 900 mm, height: 650 mm }`.';

/** What a YAML reader finds wrong, by how its message begins, in words for people who do not know YAML. */
const yamlFaults: readonly (readonly [begins: RegExp, found: string, hint: string])[] = [
  [/^Flow map in block/u, 'a `{` further up that is still open', 'Close it with `}` where its last value ends.'],
  [/^Flow sequence in block/u, 'a `[` further up that is still open', 'Close it with `]` where its last value ends.'],
  [
    /^Block collections are not allowed/u,
    'two keys with no comma between them',
    'Inside braces put a comma after each value.',
  ],
  [
    /^Missing closing/u,
    'a quotation mark further up that is never closed',
    'Close it, or leave the quotation marks out.',
  ],
  [/^Nested mappings|^Implicit keys/u, 'a key where none can stand', `${separate} A key ends in a colon.`],
  [/^All mapping items must/u, 'a line that is not indented like its neighbours', separate],
  [
    /^Unexpected .*"[}\]]"/u,
    'a closing bracket that nothing opened',
    'Delete this bracket, or write the one that opens it further up.',
  ],
];

function yamlFault(message: string): Wording {
  const known = yamlFaults.find(([begins]) => begins.test(message));
  return {
    found: known?.[1] ?? message,
    allowed: 'well-formed YAML',
    hint: known?.[2] ?? 'Check colons, quotes, brackets and indentation here and on the line above.',
  };
}

const orNearest = (nearest: string | undefined, otherwise: string): string =>
  nearest === undefined ? otherwise : `Did you mean \`${nearest}\`?`;

/** Every sentence the readers of plans and shelves can say, by code. */
const wordings = {
  // The file as a text
  'empty-file': () => ({
    found: 'an empty file',
    allowed: 'a YAML text',
    hint: 'Start from `plan: 1` and the four lines of the smallest plan.',
  }),
  'not-text': () => ({
    found: 'bytes that are no text',
    allowed: 'a YAML text in UTF-8',
    hint: 'Open the file in a text editor and save it as plain text, UTF-8.',
  }),
  'too-large': (d) => ({
    found: `a file of ${d.value}`,
    allowed: `at most ${d.allowed}`,
    hint: 'Check that this is the right file.',
  }),
  'too-deep': (d) => ({
    found: `${d.value} levels inside each other`,
    allowed: `at most ${d.allowed} levels`,
    hint: 'Nothing here needs such nesting: look for a bracket or dash that was never closed.',
  }),
  'too-many-aliases': () => ({
    found: 'aliases (`*name`) that blow the file up',
    allowed: 'a handful of aliases',
    hint: 'Write the repeated parts out.',
  }),
  'too-many-parts': (d) => ({
    found: `more than ${d.value} values`,
    allowed: 'a file one person could have written',
    hint: 'Check that this is the right file.',
  }),
  'too-many-words': (d) => ({
    found: `more than ${d.value} words and marks`,
    allowed: 'a file one person could have written',
    hint: 'Check that this is the right file.',
  }),
  'alias-loop': (d) => ({
    found: `\`${d.value}\`, which contains itself`,
    allowed: 'an alias of something finished before it',
    hint: 'Write the part out instead of pointing at it.',
  }),
  'unknown-alias': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'an alias (`*name`) of an anchor (`&name`) further up',
    hint: 'Put quotes around a text that starts with `*`.',
  }),
  'forbidden-key': (d) => ({
    found: `the key \`${d.value}\``,
    allowed: 'keys without a special meaning',
    hint: 'Write another name for it, such as `entry-1`.',
  }),
  'duplicate-key': (d) => ({
    found: `\`${d.value}\` a second time`,
    allowed: 'each key once',
    hint: /^\d/u.test(d.value ?? '') ? keyHint(d) : 'Keep one of the two.',
  }),
  'key-not-text': () => ({
    found: 'a key that is not a single word',
    allowed: 'plain keys',
    hint: 'Write `key: value`.',
  }),
  'tab-indent': () => ({
    found: 'a tab at the start of a line',
    allowed: 'spaces',
    hint: 'Replace tabs by two spaces each.',
  }),
  'several-documents': () => ({
    found: 'a second document after `---`',
    allowed: 'one document in a file',
    hint: 'Move the second one into a file of its own.',
  }),
  'yaml-version': (d) => ({
    found: `\`${d.value}\` above the text`,
    allowed: 'YAML 1.2, in which `yes`, `no` and `on` are plain words',
    hint: 'Take this line away: everything else may stay as it is.',
  }),
  tag: (d) => ({
    found: `the tag \`${d.value}\``,
    allowed: 'plain values',
    hint: 'Remove the tag; put quotes around a text that starts with `!`.',
  }),
  'bad-yaml': (d) => yamlFault(d.value ?? 'a line YAML cannot read'),
  'more-problems': (d) => ({
    found: `${d.value} more problems`,
    allowed: 'none',
    hint: 'Put the ones above right first.',
  }),
  // The shape of the document
  'not-a-map': (d) => ({
    found: d.value ?? 'something else',
    allowed: 'lines of `key: value`',
    hint: 'Start from the smallest plan and add to it.',
  }),
  'later-format': (d) => ({
    found: `\`${d.name}: ${d.value}\``,
    allowed: `\`${d.name}: 1\``,
    hint: 'This file was written for a later version of the tool: update the tool.',
  }),
  'not-this-format': (d) => ({
    found: d.value ?? 'another kind of file',
    allowed: `a file that begins with \`${d.name}: 1\``,
    hint: `Check that this is the right file; the first line of every ${d.name} is \`${d.name}: 1\`.`,
  }),
  'unknown-key': (d) => ({ found: `\`${d.value}\``, allowed: d.allowed ?? 'known keys', hint: keyHint(d) }),
  missing: (d) => ({ found: `no \`${d.name}\``, allowed: d.allowed ?? 'a value', hint: `Add \`${d.name}:\` here.` }),
  'left-empty': (d) => ({
    found: `nothing after \`${d.name}:\``,
    allowed: d.allowed ?? 'a value',
    hint: 'Fill it in, or remove the line to take the default.',
  }),
  'wrong-kind': (d) => ({
    found: d.value ?? 'something else',
    allowed: d.allowed ?? 'another kind of value',
    hint: kindHint(d),
  }),
  'not-one-of': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? '',
    hint: orNearest(
      d.nearest,
      (d.allowed ?? '').endsWith('a block of keys') ? kindHint(d) : example(d.allowed ?? '', d.name),
    ),
  }),
  'not-finite': (d) => ({
    found: d.value ?? 'no number',
    allowed: 'a plain finite number',
    hint: 'Write the number out.',
  }),
  'not-decimal': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'a number in tens',
    hint: 'Write the number as people count.',
  }),
  'out-of-range': (d) => ({
    found: d.value ?? '',
    allowed: d.allowed ?? '',
    hint: /[a-z%]/iu.test(d.value ?? '')
      ? `Write ${d.allowed ?? 'a smaller amount'}; look whether the unit is the one you meant.`
      : `Write ${d.allowed ?? 'a smaller number'}.`,
  }),
  'too-many': (d) => ({
    found: d.value ?? 'too many',
    allowed: d.allowed ?? '',
    hint: /^0 /u.test(d.value ?? '')
      ? 'Add at least one, or leave the key out.'
      : `Keep to ${d.allowed ?? 'fewer'}: delete the rest.`,
  }),
  'bad-text': (d) => ({
    found: d.value ?? '',
    allowed: d.allowed ?? '',
    hint: 'Shorten it, and keep to letters, figures and ordinary signs.',
  }),
  'bad-key-name': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'letters, figures, dots and dashes, at most 60',
    hint: 'Give the entry a plain name.',
  }),
  // Quantities
  'no-unit': (d) => ({
    found: `\`${d.value}\` without a unit`,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write the unit after the number.',
  }),
  'other-unit': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: example(d.allowed ?? '', undefined),
  }),
  'decimal-comma': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write a point for the decimals: 1.2, not 1,2.',
  }),
  'not-a-quantity': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write the number, a space and the unit.',
  }),
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
  // A bench sheet against itself
  'not-two-diagonals': (d) => ({
    found: `${d.value} under \`diagonals\``,
    allowed: 'two lengths, corner to corner each way, such as `[1110 mm, 1112 mm]`',
    hint: 'Measure the other one too.',
  }),
  'no-cloth-yet': (d) => ({
    found: `\`${d.name}\` with \`when: before-cloth\``,
    allowed: 'a reading that needs no cloth',
    hint: 'Write `when: after-cloth`, or remove the reading.',
  }),
  'corner-without-lift': () => ({
    found: '`lifted` without a lift',
    allowed: '`corner-lift` or `winding` beside it',
    hint: 'Say by how much that corner stands up.',
  }),
  'nothing-read': () => ({
    found: 'a sheet without a reading',
    allowed: 'at least one, such as `corner-lift: 4 mm`',
    hint: 'Fill in what you measured; the rest may stay out.',
  }),
  // A pile against itself
  'mark-twice': (d) => ({
    found: `a second board marked \`${d.value}\``,
    allowed: 'each mark once',
    hint: 'Chalk another letter on one of them.',
  }),
  'one-for-several': (d) => ({
    found: `one \`${d.name}\` for ${d.value} boards`,
    allowed: 'boards that nobody read or marked, counted together',
    hint: 'Give the board that has it a line of its own, and count the others.',
  }),
  'knot-beyond-board': (d) => ({
    found: `a knot at \`${d.value}\``,
    allowed: `a place on the board, up to ${d.allowed}`,
    hint: 'Measure from the marked end.',
  }),
  'over-beyond-board': (d) => ({
    found: `a reading over \`${d.value}\``,
    allowed: `no more than the board’s length, ${d.allowed}`,
    hint: 'That is right for a piece cut off since; otherwise check both numbers.',
  }),
  // A plan against a pile
  'board-not-in-pile': (d) => ({
    found: `board \`${d.value}\`, which is not in “${d.name}”`,
    allowed: `a mark of the pile: ${d.allowed}`,
    hint: 'The piece is cut from another board, so its readings no longer hold: chalk the right mark, put the board back into the pile, or run `sightdown place` anew.',
  }),
  'no-sound-wood-there': (d) => ({
    found: `a piece that begins at ${d.value} on board \`${d.name}\``,
    allowed: 'a place of sound wood on that board, clear of its knots',
    hint: 'The piece is cut elsewhere: measure from the marked end, or run `sightdown place` anew.',
  }),
  // A workshop
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
  'session-twice': (d) => ({
    found: `a session on ${d.value} that begins before another one ends`,
    allowed: 'sessions one after the other',
    hint: 'Give each the hour at which it begins, such as `at: 18:30`, or put them together into a longer one.',
  }),
  'no-saw-with': (d) => ({
    found: `\`kind: none\` with ${d.name}`,
    allowed: '`kind: none` alone, where the shop cuts the pieces',
    hint: 'Remove it, or say which saw there is.',
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
export function problemAt(
  code: ProblemCode,
  place: Place,
  details: Details = {},
  severity: Problem['severity'] = 'error',
): Problem {
  const word: (details: Details) => Wording = wordings[code];
  return { code, severity, ...place, ...word({ name: place.path.split('.').at(-1) ?? '', ...details }) };
}

/** All codes, for tests and documentation. */
export const problemCodes = Object.keys(wordings) as readonly ProblemCode[];

/** What a user wrote, safe to print: one line, at most 60 characters, control characters shown as `?`. */
export function quoted(value: unknown): string {
  const text =
    typeof value === 'string'
      ? value
      : value === undefined
        ? 'nothing'
        : Array.isArray(value)
          ? 'a list'
          : typeof value === 'object' && value !== null
            ? 'a block'
            : String(value);
  const line = text.replace(/\s+/g, ' ').replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g, '?');
  return line.length > 60 ? `${line.slice(0, 57)}...` : line;
}
