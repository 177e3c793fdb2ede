import { slipAngle } from '../what-if/slips.js';
import { formatLength } from '../base/units-format.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import { factOf, limitOn, type Promised } from './promised.js';
import { clothOn, readingError, type Sheet } from './sheet.js';
import { cornerStiffener } from './stiffen.js';

/**
 * Most that the size of the frame, as its diagonals tell it, may be off, mm (`proposal`): a millimetre in every bar and
 * in the tape.
 */
export const size_off_mm = 3;

/** The two diagonals against each other, and the size they tell against the plan's. */
export function judgeDiagonals(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  if (sheet.diagonals_mm === null) return [];
  const [one, other] = sheet.diagonals_mm;
  return [square(promised, sheet, Math.abs(one - other)), size(promised, Math.sqrt((one ** 2 + other ** 2) / 2))];
}

/** Equal within what the tape shows: clear. Beyond what half a degree in every corner makes: stop. */
function square(promised: Promised, sheet: Sheet, off_mm: number): JudgedFinding {
  const said = (mm: number): string => formatLength(mm, promised.plan.units);
  const shows_mm = limitOn(promised, 'frame.diagonal_difference_mm') ?? 2 * readingError.tape_mm;
  const half_degree_mm = factOf(promised, 'frame.diagonal_difference_mm');
  const most_mm = half_degree_mm === null ? null : Math.max(half_degree_mm, shows_mm);
  const verdict = off_mm <= shows_mm ? 'clear' : most_mm === null ? 'unknown' : off_mm > most_mm ? 'stop' : 'caution';
  const found = `The diagonals differ by ${said(off_mm)}`;
  const say = {
    clear: `${found}; up to ${said(shows_mm)} is within what a tape shows, so the frame is square.`,
    caution: `${found}; more than ${said(shows_mm)} is not the tape but the frame.`,
    stop: `${found}; that is more than ${slipAngle} in every corner (${said(most_mm ?? shows_mm)}) and shows on the wall.`,
    unknown: `${found}; how much ${slipAngle} makes is not known.`,
  }[verdict];
  const shorten = 'Draw the longer diagonal shorter with a clamp or a cord twisted by a stick until both agree';
  const advice = clothOn(sheet)
    ? [
        `Lift the staples near the two far corners, ${lower(shorten)}, glue ${cornerStiffener(promised.plan)}, and fix the cloth again.`,
      ]
    : [
        `${shorten}, and glue ${cornerStiffener(promised.plan)} before you let go.`,
        'If a joint opens as you do it, its mitre is cut wrong: recut it.',
      ];
  return findingOf({
    rule: 'diagonals',
    verdict,
    fact: 'frame.diagonal_difference_mm',
    actual: off_mm,
    limit: verdict === 'stop' ? most_mm : shows_mm,
    unit: 'mm',
    source: 'practice',
    say,
    do: advice,
  });
}

/** Pushing a frame over leaves the mean square of its diagonals as it was, so that tells its size. */
function size(promised: Promised, diagonal_mm: number): JudgedFinding {
  const { plan, model } = promised;
  const said = (mm: number): string => formatLength(mm, plan.units);
  const planned_mm = factOf(promised, 'frame.diagonal_mm');
  const off_mm = planned_mm === null ? null : Math.abs(diagonal_mm - planned_mm);
  const verdict = off_mm === null ? 'unknown' : off_mm <= size_off_mm ? 'clear' : 'caution';
  const w_mm = model.bars.top.section.w_mm;
  const inside_mm = Math.hypot(plan.face.width_mm - 2 * w_mm, plan.face.height_mm - 2 * w_mm);
  const inner =
    Math.abs(diagonal_mm - inside_mm) <= size_off_mm ? ' It fits the inner corners: measure over the outer ones.' : '';
  const found = `Together the diagonals tell of ${said(diagonal_mm)}, the plan of ${planned_mm === null ? 'an unknown length' : said(planned_mm)}`;
  return findingOf({
    rule: 'size',
    verdict,
    fact: 'frame.diagonal_mm',
    actual: off_mm ?? diagonal_mm,
    limit: size_off_mm,
    unit: 'mm',
    source: 'proposal',
    say: `${found}${verdict === 'clear' ? ': the frame has its size.' : `; more than ${said(size_off_mm)} off is not the tape.${inner}`}`,
    do: ['Measure all four bars over their long points; change the plan to what you built and audit it again.'],
  });
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
