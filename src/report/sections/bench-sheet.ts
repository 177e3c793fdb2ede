import { lowestHeard_Hz } from '../../mechanics/cloth/tap-note.js';
import { formatNumber } from '../../base/units-format.js';
import { userText } from '../clean-text.js';
import { paragraph, table, type Cell } from '../tree.js';
import { largest, type Section, type Telling } from '../telling.js';

const blank = '. . . . . . . . . .';

function bow(told: Telling): string {
  const most = largest(told, 'bar.inward_bow_mm');
  if (most === null) return 'unknown';
  return Math.abs(most.value) < 0.5 ? 'straight to the eye' : `up to ${told.length(Math.abs(most.value))} with the cloth on`;
}

/** How far a bar may stand out of the plane of its corners. */
function bowOut({ audit, length }: Telling): string {
  const limits = Object.values(audit.settings.bar_bow_limit_mm).filter(Number.isFinite);
  if (limits.length === 0) return 'as little as you can';
  const [least, most] = [Math.min(...limits), Math.max(...limits)];
  return length(least) === length(most) ? `under ${length(least)}` : `under ${length(least)}, long bars ${length(most)}`;
}

/** Last page: what to measure while building, what it should be, blanks to fill in, and the name each reading has in a file. */
export function benchSheetSection(told: Telling): Section {
  const { audit, said, number, length } = told;
  const limit = audit.settings.corner_lift_limit_mm;
  const lift = limit === undefined || !Number.isFinite(limit) ? 'as little as you can' : `under ${length(limit)}`;
  const low = number('cloth.tap_note_low_Hz');
  const high = number('cloth.tap_note_high_Hz');
  const sag = number('cloth.push_sag_mm');
  const rows: (readonly Cell[])[] = [
    ['Moisture of the boards when cut', said('lumber.moisture_pct'), blank, 'moisture'],
    ['Twist of each board, sighted over two straight sticks', audit.plan.lumber.chosen === 'picked' ? 'picked: hardly any' : 'as low as you can choose', blank, 'boards'],
    ['Diagonal, top left to bottom right', said('frame.diagonal_mm'), blank, 'diagonals'],
    ['Diagonal, top right to bottom left', 'the same', blank, 'diagonals'],
    ['Frame on its back on a flat table, three corners pressed down: fourth corner up by', lift, blank, 'corner-lift'],
    ['Which corner that is', 'any', blank, 'lifted'],
    ['No flat table: sticks along the left and right bars, their far ends disagree by', lift, blank, 'winding'],
    ['The same two, cloth on', lift, blank, 'corner-lift, winding'],
    ['Middle of each bar out of the plane of its corners', bowOut(told), blank, 'bow'],
    ['Bars sighted along: bow inward', bow(told), blank, 'inward-bow'],
    ['Note of the tapped cloth', low === null || high === null ? 'unknown' : `${formatNumber(low, 2)} to ${formatNumber(high, 2)} Hz${high < lowestHeard_Hz ? ', too low to hear: use the weight' : ''}`, blank, 'tap'],
    ['A weight of 500 g (about 18 oz) in the middle sinks', sag === null ? 'unknown' : `about ${length(Number(sag.toPrecision(2)))}`, blank, 'push'],
    ['Weight, finished', said('frame.weight_kg'), blank, 'weight'],
  ];
  return {
    title: 'Bench sheet',
    blocks: [
      paragraph(`${userText(audit.plan.name)}. Fill in while you build, one sheet for each frame.`),
      table([{ head: 'Measure' }, { head: 'Should be' }, { head: 'Yours' }, { head: 'In the file' }], rows),
      paragraph('Built by . . . . . . . . . . . . . . . . . . . . on . . . . . . . . . . . . .'),
      paragraph(`To have the readings judged, write them into a text file that starts with sheet: 1 and has a line for each, such as corner-lift: ${told.units === 'metric' ? '4 mm' : '5/32 in'}, and name it after --measured when you audit the plan. A line when: before-cloth, after-cloth, after-ground or finished says how far the work had come; frame: 2 says which of several it is, student: who built it, boards: the marks and readings of its boards, test-joints: corners that were loaded at the bench.`),
    ],
    pictures: [],
  };
}
