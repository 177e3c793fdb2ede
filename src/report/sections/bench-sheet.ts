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

/** Last page: what to measure while building, what it should be, and blanks to fill in. */
export function benchSheetSection(told: Telling): Section {
  const { audit, said, number, length } = told;
  const limit = audit.settings?.corner_lift_limit_mm;
  const low = number('cloth.tap_note_low_Hz');
  const high = number('cloth.tap_note_high_Hz');
  const rows: (readonly Cell[])[] = [
    ['Moisture of the boards when cut', said('lumber.moisture_pct'), blank],
    ['Twist of each board, sighted over two straight sticks', audit.plan.lumber.chosen === 'picked' ? 'picked: hardly any' : 'as low as you can choose', blank],
    ['Diagonal, top left to bottom right', said('frame.diagonal_mm'), blank],
    ['Diagonal, top right to bottom left', 'the same', blank],
    ['Bars sighted along: bow inward', bow(told), blank],
    ['Frame on a flat table, fourth corner up by', limit === undefined || !Number.isFinite(limit) ? 'as little as you can' : `under ${length(limit)}`, blank],
    ['The same, cloth on', limit === undefined || !Number.isFinite(limit) ? 'as little as you can' : `under ${length(limit)}`, blank],
    ['Note of the tapped cloth', low === null || high === null ? 'unknown' : `${formatNumber(low, 2)} to ${formatNumber(high, 2)} Hz`, blank],
    ['A weight of 500 g (about 18 oz) in the middle sinks', said('cloth.push_sag_mm'), blank],
    ['Weight, finished', said('frame.weight_kg'), blank],
  ];
  return {
    title: 'Bench sheet',
    blocks: [
      paragraph(`${userText(audit.plan.name)}. Fill in while you build, one sheet for each frame.`),
      table([{ head: 'Measure' }, { head: 'Should be' }, { head: 'Yours' }], rows),
      paragraph('Built by . . . . . . . . . . . . . . . . . . . . on . . . . . . . . . . . . .'),
    ],
    pictures: [],
  };
}
