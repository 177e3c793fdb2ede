import { sameDecimals } from '../../base/same-decimals.js';
import { bullets, heading, paragraph, strong, table, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';

/**
 * What small slips at the bench would do, which reading would tell most, and whether the piece can be carried out; null
 * when the audit kept no settings.
 */
export function whatIfSection({ audit, small }: Telling): Section | null {
  const { slips, readings, door, lifting } = audit.sheets.what_if;
  const amount = (mm: number | null): string => (mm === null ? 'unknown' : mm === 0 ? 'nothing' : small(mm));
  const rows = slips.map((slip): readonly Cell[] => [
    slip.slip,
    amount(slip.gap_mm),
    amount(slip.diagonal_difference_mm),
    amount(slip.corner_lift_mm),
  ]);
  return {
    title: 'What if I am a little off?',
    blocks: [
      table(
        [
          { head: 'If only this is off' },
          { head: 'Joint open', align: 'right' },
          { head: 'Diagonals differ', align: 'right' },
          { head: 'Corner stands up', align: 'right' },
        ],
        sameDecimals(rows),
      ),
      bullets(slips.map(({ slip, say }): Cell => [strong(`${slip}.`), ` ${say}`])),
      heading(3, 'What to measure first'),
      bullets(readings.say),
      heading(3, 'Out of the studio'),
      paragraph(`${door.say} ${lifting.say}`),
    ],
    pictures: [],
  };
}
