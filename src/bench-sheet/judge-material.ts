import { timesInWords } from '../base/times-words.js';
import { formatNumber, formatQuantity } from '../base/units-format.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import { moisturePromise } from './moisture-promise.js';
import { factOf, limitOn, type Promised } from './promised.js';
import { groundOn, readingError, type Sheet } from './sheet.js';

/** How far the weight may be off, as a share (`proposal`): wood of one kind varies about that much. */
export const weight_within = 0.15;
/** Least factor on wall hooks when no rule says (`practice`). */
const usual_hook_factor = 2;

/**
 * Weight against what was reckoned at this stage, hooks against the true weight, moisture against the plan and the
 * room.
 */
export function judgeMaterial(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  return [...weight(promised, sheet), ...hooks(promised, sheet), ...moisture(promised, sheet)];
}

/** What the piece was reckoned to weigh as far as the work had come, kg. */
export function weightAt_kg({ model: { weight: w } }: Pick<Promised, 'model'>, sheet: Pick<Sheet, 'when'>): number {
  if (sheet.when === 'finished') return w.total_kg;
  return w.wood_kg + (sheet.when === 'before-cloth' ? 0 : w.cloth_kg) + (groundOn(sheet as Sheet) ? w.ground_kg : 0);
}

function weight(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  if (sheet.weight_kg === null) return [];
  const expected = weightAt_kg(promised, sheet);
  const off = sheet.weight_kg / expected - 1;
  const within = Math.abs(off) <= weight_within + 1e-9;
  const said = (kg: number): string => formatQuantity(kg, 'kg', promised.plan.units);
  return [
    findingOf({
      rule: 'weight',
      verdict: within ? 'clear' : 'caution',
      fact: 'frame.weight_kg',
      actual: sheet.weight_kg,
      limit: `${said(expected * (1 - weight_within))} to ${said(expected * (1 + weight_within))}`,
      unit: 'kg',
      source: 'proposal',
      say: `It weighs ${said(sheet.weight_kg)}; ${said(expected)} was reckoned${within ? ', which is near enough.' : off > 0 ? ': heavier wood, wet wood, or more on it than the plan says.' : ': lighter wood than the shelf says is often softer too, or something is still missing.'}`,
      do: [
        off > 0
          ? 'Check the moisture of the wood, and choose hooks and wire for the weight you found.'
          : 'Load a spare board and measure its sag: put the stiffness you find on your shelf and audit the plan again.',
      ],
    }),
  ];
}

function hooks(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  const planned = factOf(promised, 'hanging.hook_factor');
  const reckoned_kg = promised.model.weight.total_kg;
  if (sheet.when !== 'finished' || sheet.weight_kg === null || planned === null || sheet.weight_kg <= reckoned_kg)
    return [];
  const actual = (planned * reckoned_kg) / sheet.weight_kg;
  const least = Math.max(1, limitOn(promised, 'hanging.hook_factor') ?? usual_hook_factor);
  const verdict = actual < 1 ? 'stop' : actual < least ? 'caution' : 'clear';
  return [
    findingOf({
      rule: 'hook-factor',
      about: 'hanging',
      verdict,
      fact: 'hanging.hook_factor',
      actual,
      limit: verdict === 'stop' ? 1 : least,
      unit: 'ratio',
      source: 'practice',
      at_least: true,
      say: `At its true weight each hook is rated for ${timesInWords(formatNumber(actual, 2), 'its load')}; at least ${timesInWords(formatNumber(least, 2))} is wanted.`,
      do: ['Take stronger hooks, or more of them.'],
    }),
  ];
}

function moisture(promised: Promised, sheet: Sheet): readonly JudgedFinding[] {
  const read = sheet.moisture_pct;
  if (read === null) return [];
  const { planned_pct: planned, room_pct: room, most_gap_pct: most_gap, most_pct } = moisturePromise(promised);
  const pct = (value: number): string => formatQuantity(value, 'pct', promised.plan.units);
  const wetter = read > planned + readingError.meter_pct;
  const apart = room !== null && Math.abs(read - room) > most_gap + readingError.meter_pct;
  const verdict = wetter || apart ? 'caution' : room === null ? 'unknown' : 'clear';
  const found = `The boards read ${pct(read)}`;
  const said = wetter
    ? `; the plan counts on ${pct(planned)}, so more warp is to come than was reckoned`
    : `; the plan counts on ${pct(planned)}`;
  const wait = factOf(promised, 'lumber.wait_days');
  return [
    findingOf({
      rule: 'moisture',
      verdict,
      fact: 'lumber.moisture_pct',
      actual: read,
      limit: most_pct + readingError.meter_pct,
      unit: 'pct',
      source: 'practice',
      say: `${found}${said}${apart ? `. The room settles them to ${pct(room ?? 0)}, more than ${pct(most_gap)} away` : ''}${verdict === 'clear' ? ', which a meter cannot tell apart or is drier still' : ''}.`,
      do: [
        `Leave the boards open in the room until they settle${wait === null || wait < 0.5 ? '' : ` (${formatQuantity(wait, 'days', promised.plan.units)} for the plan’s moisture, longer for more)`}.`,
        `Or write “moisture: ${formatNumber(read, 3)} %” into the plan and audit it again.`,
      ],
    }),
  ];
}
