import { barNames } from '../../base/names.js';
import { formatNumber, formatQuantity } from '../../base/units-format.js';
import type { LiftPromise } from '../../bench-sheet/lift-promise.js';
import { lowestHeard_Hz, type TapBand } from '../../mechanics/cloth/tap-note.js';
import { userText } from '../clean-text.js';
import { paragraph, table, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';

const blank = '. . . . . . . . . .';

/**
 * How far the middle of the bars may stand off with the cloth on, each as its reading is judged; bars alike are told
 * once.
 */
function bowsUpTo({ audit, length }: Telling, rule: 'bar-bow' | 'inward-bow'): string {
  const most = barNames.map((bar) => audit.sheets.promises.bow_mm[rule][bar]);
  if (most.some((mm) => mm === null)) return 'as little as you can';
  const said = new Map<string, string[]>();
  barNames.forEach((bar, i) => {
    const words = length(most[i] ?? 0);
    said.set(words, [...(said.get(words) ?? []), bar]);
  });
  return `up to ${[...said].map(([words, bars]) => (said.size === 1 ? words : `${words} (${bars.join(', ')})`)).join('; ')}`;
}

/** The note of the tapped cloth, bare and with its ground. */
function notes({ audit }: Telling): string {
  const {
    tap: { bare, grounded },
  } = audit.sheets.cloth;
  const band = ({ low_Hz, high_Hz }: TapBand): string => `${formatNumber(low_Hz, 2)} to ${formatNumber(high_Hz, 2)} Hz`;
  const ground = audit.plan.ground.coats === 0 ? '' : `; with the ground dry, ${band(grounded)}`;
  return `${band(bare)}${ground}${bare.high_Hz < lowestHeard_Hz ? ', too low to hear: use the weight' : ''}`;
}

/** What a meter may read when the boards are cut; the order of work waits for it, and a reading is held against it. */
function moistureToCut({ audit, units }: Telling): string {
  const { most_pct, room_pct } = audit.sheets.promises.moisture;
  const best =
    room_pct !== null && room_pct < most_pct - 0.5
      ? `, best near the ${formatQuantity(room_pct, 'pct', units)} of the room`
      : '';
  return `up to ${formatQuantity(most_pct, 'pct', units)}${best}`;
}

/** What the main readings should be, in words; the card of the bench and the sheet say the same. */
export function shouldBe(
  told: Telling,
): Readonly<
  Record<
    'moisture' | 'diagonal' | 'lift' | 'lift_sticks' | 'lift_stretched' | 'lift_stretched_sticks' | 'weight',
    string
  >
> {
  const { audit, said, length } = told;
  const { lift_bare: bare, lift_stretched: stretched } = audit.sheets.promises;
  const upTo = (most_mm: number | null, { limit_mm }: LiftPromise): string =>
    limit_mm === null
      ? 'as little as you can'
      : most_mm === null || most_mm >= limit_mm
        ? `up to ${length(limit_mm)}`
        : `up to ${length(most_mm)}; more than ${length(limit_mm)} shows on the wall`;
  return {
    moisture: moistureToCut(told),
    diagonal: said('frame.diagonal_mm'),
    weight: said('frame.weight_kg'),
    lift: upTo(bare.table_mm, bare),
    lift_sticks: upTo(bare.sticks_mm, bare),
    lift_stretched: upTo(stretched.table_mm, stretched),
    lift_stretched_sticks: upTo(stretched.sticks_mm, stretched),
  };
}

/** What to measure while building, what it should be, blanks to fill in, and the name each reading has in a file. */
export function benchSheetSection(told: Telling): Section {
  const { audit, number, length } = told;
  const { moisture, diagonal, lift, lift_sticks, lift_stretched, lift_stretched_sticks, weight } = shouldBe(told);
  const sag = number('cloth.push_sag_mm');
  const rows: (readonly Cell[])[] = [
    ['Moisture of the boards when cut', moisture, blank, 'moisture'],
    [
      'Twist of each board, sighted over two straight sticks',
      audit.plan.lumber.chosen === 'picked' ? 'picked: hardly any' : 'as low as you can choose',
      blank,
      'boards',
    ],
    ['Diagonal, top left to bottom right', diagonal, blank, 'diagonals'],
    ['Diagonal, top right to bottom left', 'the same', blank, 'diagonals'],
    ['Frame on its back on a flat table, three corners pressed down: fourth corner up by', lift, blank, 'corner-lift'],
    ['Which corner that is', 'any', blank, 'lifted'],
    ['No flat table: sticks along the left and right bars, their far ends disagree by', lift_sticks, blank, 'winding'],
    ['The same off the table, cloth on', lift_stretched, blank, 'corner-lift'],
    ['The same over the sticks, cloth on', lift_stretched_sticks, blank, 'winding'],
    ['Middle of each bar out of the plane of its corners, cloth on', bowsUpTo(told, 'bar-bow'), blank, 'bow'],
    ['Bars sighted along, cloth on: middle out of straight', bowsUpTo(told, 'inward-bow'), blank, 'inward-bow'],
    ['Note of the tapped cloth', notes(told), blank, 'tap'],
    [
      'A weight of 500 g (about 18 oz) in the middle sinks',
      sag === null ? 'unknown' : `about ${length(Number(sag.toPrecision(2)))}`,
      blank,
      'push',
    ],
    ['Weight, finished', weight, blank, 'weight'],
  ];
  return {
    title: 'Bench sheet',
    blocks: [
      paragraph(`${userText(audit.plan.name)}. Fill in while you build, one sheet for each frame.`),
      table([{ head: 'Measure' }, { head: 'Should be' }, { head: 'Yours' }, { head: 'In the file' }], rows),
      paragraph('Built by . . . . . . . . . . . . . . . . . . . . on . . . . . . . . . . . . .'),
      paragraph(
        `To have the readings judged, write them into a text file that starts with sheet: 1 and has a line for each, such as corner-lift: ${told.units === 'metric' ? '4 mm' : '5/32 in'}, and name it after --measured when you audit the plan. A line when: before-cloth, after-cloth, after-ground or finished says how far the work had come; frame: 2 says which of several it is, student: who built it, boards: the marks and readings of its boards, test-joints: corners that were loaded at the bench.`,
      ),
    ],
    pictures: [],
  };
}
