import { formatLength, formatNumber, formatQuantity } from '../../base/units-format.js';
import type { FasteningLine } from '../../mechanics/fasteners/fastening-sheet.js';
import type { GlueSheet } from '../../mechanics/glue/glue-sheet.js';
import { userText } from '../clean-text.js';
import { cornerBuild } from '../drawings/corner-build.js';
import {
  bullets,
  heading,
  paragraph,
  picture,
  strong,
  table,
  type Block,
  type Cell,
  type Column,
  type Inline,
} from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { aboutsInWords } from '../words/about.js';
import { forceInWords, pressureInWords } from '../words/force.js';
import { forWhat, wayInWords } from '../../order-of-work/fastening-words.js';
import { glueAdvice } from '../words/glue.js';
import { placesInWords } from '../words/places.js';
import { amountInWords, numberFor, withLength } from '../words/supply.js';
import { waitInWords } from '../words/waiting.js';
import { cornerBuildOf } from './corner-data.js';
import { allOf } from '../words/plural.js';

/** Part 6: which drill, which screw, how deep, how many and where; and the glue. */
export function fasteningsSection(told: Telling): Section {
  const { fastenings: lines, glue } = told.audit.sheets;
  const corner = cornerBuild(cornerBuildOf(told.audit, lines));
  const blocks: Block[] = [
    ...(lines.length === 0
      ? [paragraph('This plan uses no screws and no nails.')]
      : [
          table(
            fasteningColumns(told.audit.plan.count),
            lines.map((line) => fasteningRow(told, line)),
          ),
          ...lines.flatMap((line) => details(told, line)),
        ]),
    picture(corner),
    ...(glue === null ? [paragraph('Nothing is glued.')] : glueBlocks(told, glue)),
  ];
  return { title: 'Screws, nails and glue', blocks, pictures: [corner] };
}

/** Heads of the list of fastenings for so many frames. */
export const fasteningColumns = (frames: number): readonly Column[] => [
  { head: 'For' },
  { head: 'Pick up' },
  { head: numberFor(frames), align: 'right' },
  { head: 'First drill' },
  { head: 'Then drill' },
  { head: 'Depth', align: 'right' },
];

/** One line of the list of fastenings. */
export function fasteningRow(told: Telling, line: FasteningLine): readonly Cell[] {
  return [
    forWhat(line),
    withLength(line.fastening, line.length_mm, told.units),
    String(line.count * told.audit.plan.count),
    line.clearance === null ? 'none' : drill(told, line.clearance.label, line.clearance.diameter_mm),
    line.pilot_mm === null ? 'none' : drill(told, line.pilot_label, line.pilot_mm),
    line.pilot_mm === null ? '' : told.length(line.pilot_depth_mm),
  ];
}

function details(told: Telling, line: FasteningLine): readonly Block[] {
  const { where, from, note } = wayInWords(line.way, told.units);
  const tip = tipWords(told, line);
  const holes = [
    ...(line.clearance === null
      ? []
      : [
          `${drill(told, line.clearance.label, line.clearance.diameter_mm)} through the ${onSteel(told, line) ? 'steel, unless its own holes are as wide' : 'first piece'}`,
        ]),
    ...(line.pilot_mm === null
      ? []
      : [
          `${drill(told, line.pilot_label, line.pilot_mm)} where it bites, ${told.length(line.pilot_depth_mm)} deep from the surface`,
        ]),
    ...(line.countersink_mm === null ? [] : [`sink the head, ${told.length(line.countersink_mm)} wide`]),
  ];
  return [
    heading(3, forWhat(line)),
    bullets([
      line.role === 'clamp'
        ? 'They only hold the joint until the glue has set; from then on the glue carries.'
        : 'They carry the load themselves: leave none out.',
      `Where: ${where}. Drive from ${from}.`,
      ...places(told, line),
      holes.length === 0 ? 'No hole is drilled first.' : `Drill: ${holes.join('; ')}.`,
      ...(line.pilot_too_wide
        ? [[strong('The hole in the plan is too wide for this fastening: it would hold little or nothing.')]]
        : []),
      ...(tip === null ? [] : [[tip]]),
      ...(note === '' ? [] : [note]),
    ]),
  ];
}

const onSteel = ({ audit }: Telling, { name }: FasteningLine): boolean =>
  name === 'brace-screws' && audit.plan.corners.brace?.kind === 'steel-angle';

/**
 * A drill as printed on it, or its millimetres where none of that size is on hand; one in inches with its millimetres
 * for who measures in those.
 */
function drill({ units, length }: Telling, label: string | null, diameter_mm: number): string {
  const own = label === null ? `${Math.round(diameter_mm * 100) / 100} mm` : userText(label, 20);
  return units === 'metric' && /(?:in|")$/u.test(own) ? `${own} (${length(diameter_mm)})` : own;
}

/** Wood left beyond the tip; null where there is plenty. */
function tipWords({ units, length }: Telling, { exit_mm, exit_sixteenths }: FasteningLine): Inline | null {
  if (exit_mm === null) return null;
  if (exit_mm < 0) return strong(`The tip comes out by ${length(-exit_mm)}.`);
  const sixteenths =
    units === 'metric' || exit_sixteenths === null || exit_sixteenths > 96
      ? ''
      : ` (at least ${formatLength(exit_sixteenths * 1.5875, units)})`;
  return `${length(exit_mm)} of wood stays beyond the tip${sixteenths}.`;
}

/** Pieces with the same places share a line; measured from the long point or the end. */
function places(told: Telling, line: FasteningLine): readonly Cell[] {
  if (line.name === 'crossbar-screws')
    return line.rows.map(
      ({ piece, places_mm }): Cell =>
        `Where ${aboutsInWords([piece])} meets the bars: ${placesInWords(places_mm, told.units)} from the nearer outside corner.`,
    );
  const same = new Map<string, string[]>();
  for (const { piece, places_mm } of line.rows) {
    const words = placesInWords(places_mm, told.units);
    same.set(words, [...(same.get(words) ?? []), piece]);
  }
  return [...same].map(
    ([words, pieces]) =>
      `Places, measured ${line.name === 'ply-screws' ? 'from the left or the lower end' : 'from the long point or the end'}, ${aboutsInWords(pieces)}: ${words}.`,
  );
}

function clampsInWords({ clamps_count: n, clamps_on }: GlueSheet): string {
  return clamps_on === 'corners'
    ? 'one clamp at each corner'
    : n === 1
      ? 'one clamp in the middle of the bar'
      : `${n} clamps along the longest bar`;
}

/** Where the pressure that glue makers ask for is more than hands can give, what counts instead. */
function pressureWarning({ units, audit }: Telling, { pressure_MPa, force, clamps_on }: GlueSheet): readonly Cell[] {
  if (force.in_reach) return [];
  const screws =
    audit.plan.bars.bond === 'glue+screws' && clamps_on === 'plies' ? '; the screws between them help' : '';
  return [
    `Glue makers ask for ${pressureInWords(pressure_MPa.low, pressure_MPa.high, units)} of the joint. Here that is ${forceInWords(Number(force.low_N.toPrecision(2)), units)} and more at each clamp, and a clamp tightened by hand gives about ${forceInWords(force.by_hand_N, units)}: ${force.clamps_needed} clamps would reach it. So do not chase the number: plane the faces until they close under a light hand, lay a stiff straight batten under the clamps, set as many as you have${screws}, and look for the thin bead everywhere.`,
  ];
}

function glueBlocks(told: Telling, glue: GlueSheet): readonly Block[] {
  const { units, audit } = told;
  return [
    heading(3, 'Glue'),
    bullets([
      `${userText(glue.glue.name, 50)}: ${amountInWords(glue.amount_ml, 'ml', units)} for one frame${audit.plan.count === 1 ? '' : `, ${amountInWords(glue.amount_ml * audit.plan.count, 'ml', units)} for ${allOf(audit.plan.count)}`}.`,
      `Close each joint within ${formatNumber(glue.open_min, 2)} minutes; ${clampsInWords(glue)}. Tighten them snug and evenly${glue.clamps_count > 2 && glue.clamps_on === 'plies' ? ', the middle ones first' : ''}, until a thin bead of glue shows all along, and then no further.`,
      ...pressureWarning(told, glue),
      `In clamps ${waitInWords(glue.clamp_min / 60)}; to be handled after ${waitInWords(glue.handle_h)}; full strength after ${waitInWords(glue.cure_h)}.`,
      ...(glue.warm_enough
        ? []
        : [
            [
              strong(
                `This room is too cold for the glue: it wants at least ${formatQuantity(glue.least_temperature_C, 'C', units)}.`,
              ),
            ],
          ]),
      ...glueAdvice(glue, audit.plan),
    ]),
  ];
}
