import { formatLength } from '../base/units-format.js';
import type { Diagnosis } from './diagnose.js';
import type { FrameAsRead } from './frame-as-read.js';
import { liftPromise } from './lift-promise.js';
import { likelyCauses } from './likely-causes.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import type { Promised } from './promised.js';
import { clothOn, readingError, type Sheet } from './sheet.js';

/** What a lifted corner says, and why it stands up when it is more than was promised. */
export interface LiftJudged {
  readonly findings: readonly JudgedFinding[];
  readonly diagnosis: Diagnosis | null;
}

/** How many cures a finding carries; the report lists all causes. */
const cures_told = 2;

/**
 * Corner lift off the table and over the sticks. Promised is the smaller of the ruleset's limit and what nine in ten
 * such frames stay under (plus the
 * reading error); beyond the limit is a stop, between the two a caution, and without a number to hold it against it is
 * unknown.
 */
export function judgeLift(promised: Promised, sheet: Sheet, frame: FrameAsRead): LiftJudged {
  const { limit_mm, p90_mm, table_mm, sticks_mm } = liftPromise(
    promised,
    frame.terms !== null && clothOn(sheet) ? 'cloth-on' : frame.terms,
  );
  const readings = [
    {
      rule: 'corner-lift',
      mm: sheet.corner_lift_mm,
      error_mm: readingError.table_mm,
      how: 'Off the table',
      allowed_mm: table_mm,
    },
    {
      rule: 'winding',
      mm: sheet.winding_mm,
      error_mm: readingError.stick_mm,
      how: 'Over the sticks',
      allowed_mm: sticks_mm,
    },
  ].flatMap(({ mm, ...reading }) => (mm === null ? [] : [{ mm, ...reading }]));
  const beyond = readings.filter(({ mm, allowed_mm }) =>
    allowed_mm === null ? limit_mm === null || mm > limit_mm || frame.influence === null : mm > allowed_mm,
  );
  const worst_mm = beyond.length === 0 ? null : Math.max(...beyond.map(({ mm }) => mm));
  const diagnosis = worst_mm === null || worst_mm === 0 ? null : likelyCauses(promised, sheet, frame, worst_mm);
  const cures = diagnosis === null ? ['Measure again once the plan says what to expect.'] : advice(diagnosis);
  const told = beyond[0]?.rule;
  const findings = readings.map(({ rule, mm, how, allowed_mm, error_mm }): JudgedFinding => {
    const verdict =
      limit_mm !== null && mm > limit_mm
        ? 'stop'
        : allowed_mm === null
          ? 'unknown'
          : mm > allowed_mm
            ? 'caution'
            : 'clear';
    return findingOf({
      rule,
      verdict,
      fact: 'warp.corner_lift_p90_mm',
      actual: mm,
      limit: verdict === 'stop' ? limit_mm : allowed_mm,
      unit: 'mm',
      source: 'proposal',
      say: sentence(promised, how, { mm, limit_mm, p90_mm, error_mm }),
      do: [
        ...(verdict === 'stop' ? [clothOn(sheet) ? 'Do not hang it as it is.' : 'Do not put the cloth on yet.'] : []),
        ...(rule === told ? cures : ['As for the other reading of the lift.']),
      ],
    });
  });
  return { findings, diagnosis };
}

interface Held {
  readonly mm: number;
  readonly limit_mm: number | null;
  readonly p90_mm: number | null;
  readonly error_mm: number;
}

function sentence({ plan: { units } }: Promised, how: string, { mm, limit_mm, p90_mm, error_mm }: Held): string {
  const said = (length_mm: number): string => formatLength(length_mm, units);
  const found = `${how} the fourth corner stands up ${said(mm)}`;
  if (limit_mm !== null && mm > limit_mm) {
    const expected =
      p90_mm === null
        ? ''
        : mm > p90_mm
          ? `, and nine in ten such frames were expected under ${said(p90_mm)}`
          : `; no surprise, as one in ten such frames was expected above ${said(p90_mm)}`;
    return `${found}; more than ${said(limit_mm)} shows on the wall${expected}.`;
  }
  if (limit_mm === null) return `${found}; the ruleset sets no limit to hold it against.`;
  if (p90_mm === null)
    return `${found}, under the limit of ${said(limit_mm)}; but how much was to be expected cannot be told, because at working pull this flat frame does not hold.`;
  if (mm > p90_mm + error_mm)
    return `${found}; that is still under the limit of ${said(limit_mm)}, but nine in ten such frames were expected under ${said(p90_mm)}.`;
  return `${found}, as promised: nine in ten such frames stay under ${said(p90_mm)}, and ${said(limit_mm)} is the limit.`;
}

function advice({ causes }: Diagnosis): readonly string[] {
  const cures = causes
    .filter(({ cure, part_mm }) => cure !== '' && (part_mm === null || part_mm > 0))
    .map(({ cure }) => cure);
  return [...new Set(cures)].slice(0, cures_told);
}
