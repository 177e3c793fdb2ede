import type { FactPath } from '../facts/fact.js';
import { barNames, type BarName } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import { barRisk } from '../risk/closed-form.js';
import type { FrameAsRead } from './frame-as-read.js';
import { findingOf, type JudgedFinding } from './make-finding.js';
import { factOf, finite, limitOn, type Promised } from './promised.js';
import { clothOn, readingError, type Sheet } from './sheet.js';

/** Most a bar may be drawn in, as a share of its length, when no rule says (`proposal`). */
const usual_inward_share = 1 / 400;

interface Way {
  readonly rule: 'bar-bow' | 'inward-bow';
  readonly fact: FactPath;
  readonly where: string;
  readonly limit_mm: number | null;
  /** What pull and natural warp together were expected to stay under in nine frames of ten; null when unknown. */
  readonly expected_mm: number | null;
  readonly advice: string;
}

/**
 * Bars sighted along, out of the plane and in it: within what pull and natural warp together were expected to make, and
 * within the ruleset's limit.
 */
export function judgeBows(promised: Promised, sheet: Sheet, frame: FrameAsRead): readonly JudgedFinding[] {
  const cloth = clothOn(sheet);
  return barNames.flatMap((bar) => [
    ...judge(promised, bar, sheet.bow_mm[bar], outOfPlane(promised, cloth, frame.terms, bar)),
    ...judge(promised, bar, sheet.inward_bow_mm[bar], inPlane(promised, cloth, frame.terms, bar)),
  ]);
}

function outOfPlane(promised: Promised, cloth: boolean, terms: FrameAsRead['terms'], bar: BarName): Way {
  const natural_mm = cloth ? factOf(promised, 'bar.natural_bow_p90_mm', bar) : bare(terms, bar, 'bow');
  return {
    rule: 'bar-bow',
    fact: 'bar.natural_bow_p90_mm',
    where: 'out of the plane of its corners',
    limit_mm: finite(promised.settings.bar_bow_limit_mm[bar]),
    expected_mm: sum(natural_mm, cloth ? factOf(promised, 'bar.dish_mm', bar) : 0),
    advice: cloth
      ? 'Ease the cloth, clamp the bar flat and glue a crossbar to it while it is held.'
      : 'Exchange the bar for a straighter board, or glue a second ply to it that bows the other way.',
  };
}

function inPlane(promised: Promised, cloth: boolean, terms: FrameAsRead['terms'], bar: BarName): Way {
  const natural_mm = cloth ? factOf(promised, 'bar.natural_crook_p90_mm', bar) : bare(terms, bar, 'crook');
  const span_mm = promised.model.bars[bar].span_mm;
  return {
    rule: 'inward-bow',
    fact: 'bar.inward_bow_mm',
    where: 'out of straight in the plane of the cloth',
    limit_mm: limitOn(promised, 'bar.inward_bow_long_term_mm', bar) ?? span_mm * usual_inward_share,
    expected_mm: sum(natural_mm, cloth ? factOf(promised, 'bar.inward_bow_mm', bar) : 0),
    advice: cloth
      ? 'Check the pull by its note; if it is right, ease the cloth and set a crossbar against the middle of the bar.'
      : 'Turn the bar so that it bows outward, or exchange it for a straighter board.',
  };
}

/** Expected without cloth. */
const bare = (terms: FrameAsRead['terms'], bar: BarName, way: 'bow' | 'crook'): number | null =>
  terms === null ? null : barRisk(terms, way)[bar].p90_mm;

/**
 * Good up to here with the cloth on, mm: what was expected with the reading error, never more than the limit; null when
 * either is not known.
 */
export function bowPromise(promised: Promised, bar: BarName, rule: Way['rule']): number | null {
  return allowed((rule === 'bar-bow' ? outOfPlane : inPlane)(promised, true, null, bar));
}

const allowed = ({ limit_mm, expected_mm }: Way): number | null =>
  limit_mm === null || expected_mm === null ? null : Math.min(limit_mm, expected_mm + readingError.string_mm);

const sum = (natural_mm: number | null, elastic_mm: number | null): number | null =>
  natural_mm === null || elastic_mm === null ? null : natural_mm + Math.abs(elastic_mm);

function judge(
  { plan: { units } }: Promised,
  bar: BarName,
  read_mm: number | undefined,
  way: Way,
): readonly JudgedFinding[] {
  const { rule, fact, where, limit_mm, advice } = way;
  if (read_mm === undefined) return [];
  const said = (mm: number): string => formatLength(mm, units);
  const size_mm = Math.abs(read_mm);
  const allowed_mm = allowed(way);
  const beyondLimit = limit_mm !== null && size_mm > limit_mm;
  const verdict = beyondLimit
    ? 'caution'
    : allowed_mm === null
      ? 'unknown'
      : size_mm > allowed_mm
        ? 'caution'
        : 'clear';
  const found = `The middle of the ${bar} bar stands ${said(size_mm)} ${where}`;
  const say = beyondLimit
    ? `${found}; ${said(limit_mm)} is the limit.`
    : verdict === 'unknown'
      ? `${found}; what was to be expected is not known.`
      : verdict === 'caution'
        ? `${found}; under the limit of ${said(limit_mm ?? size_mm)}, but more than the ${said(allowed_mm ?? size_mm)} that was to be expected, reading error included.`
        : `${found}, as promised.`;
  return [
    findingOf({
      rule,
      about: bar,
      verdict,
      fact,
      actual: read_mm,
      limit: beyondLimit ? limit_mm : allowed_mm,
      unit: 'mm',
      source: 'proposal',
      say,
      do: [advice],
    }),
  ];
}
