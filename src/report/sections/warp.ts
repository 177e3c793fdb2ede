import { capital } from '../../base/capital.js';
import { formatNumber, formatQuantity } from '../../base/units-format.js';
import { timesInWords } from '../../base/times-words.js';
import { chanceGoes, chanceInWords } from '../../base/chance-words.js';
import { causeInWords, noWarpWords } from '../../base/warp-words.js';
import type { JointGive } from '../../model/frame-shape.js';
import type { Remedy, RemedyWay } from '../../risk/remedies.js';
import type { WarpStory } from '../../risk/story.js';
import { shelfNumber } from '../../shelf/shelf-number.js';
import { liftChance } from '../drawings/lift-chance.js';
import { propeller } from '../drawings/propeller.js';
import type { Picture } from '../drawings/picture.js';
import { placesBlocks } from './places.js';
import { bullets, heading, paragraph, picture, setApart, strong, table, type Block, type Cell } from '../tree.js';
import { boardsStandOn, jointStandsOn } from '../words/own-numbers.js';
import type { Section, Telling } from '../telling.js';

/** Part 3: the risk of warp in plain words, what causes it, what halves it, and the reserve against twisting. */
export function warpSection(told: Telling): Section {
  const pictures: Picture[] = [];
  const show = (made: Picture | null): readonly Block[] => {
    if (made === null) return [];
    pictures.push(made);
    return [picture(made)];
  };
  const blocks: Block[] = [...lift(told, show), ...reserve(told, show)];
  return { title: 'Will it warp or twist?', blocks, pictures };
}

type Show = (made: Picture | null) => readonly Block[];

function lift(told: Telling, show: Show): readonly Block[] {
  const { audit } = told;
  const { story, reason } = audit.sheets.warp;
  if (story === null)
    return [setApart(paragraph(strong('The chance of a lifted corner is unknown.'), ` ${noWarpWords[reason]}`))];
  const limit = told.length(story.limit_mm);
  return [
    setApart(
      paragraph(
        strong(
          `${capital(chanceInWords(story.chance))} frames built like this will stand more than ${limit} off the wall at one corner.`,
        ),
      ),
    ),
    paragraph(boardsStandOn(audit)),
    ...pastCritical(told, story),
    ...placesBlocks(told),
    paragraph(
      `${told.number('warp.corner_lift_p90_mm') === null ? '' : `Nine in ten stay under ${told.length(story.p90_mm)}. `}Lay the finished frame on a flat table, press three corners down and look under the fourth: that gap is what is meant.`,
    ),
    ...show(
      liftChance({
        units: told.units,
        mean_mm: story.unpulled.mean,
        sd_mm: story.unpulled.sd,
        growth: story.growth,
        limit_mm: story.limit_mm,
        chance: story.chance,
        ...(told.number('warp.corner_lift_p90_mm') === null ? {} : { p90_mm: story.p90_mm }),
      }),
    ),
    ...causes(story),
    heading(3, 'What halves it'),
    bullets(halving(told, story)),
  ];
}

/** Pull over critical pull from which the soft board deserves a word of its own. */
const near_critical = 0.67;

/**
 * Near and past the pull at which the flat frame gives way: how far it turns, with average boards and with soft ones.
 */
function pastCritical(told: Telling, story: WarpStory): readonly Block[] {
  if (story.growth.pull_share < near_critical) return [];
  const [soft, average] = [
    told.number('frame.lift_past_critical_working_mm'),
    told.number('frame.lift_past_critical_working_average_mm'),
  ];
  const far = (mm: number | null): string =>
    mm === null ? 'it folds up' : `one corner would stand about ${told.length(mm)} off the wall`;
  const turned =
    average !== 0
      ? `The working pull is ${timesInWords(formatNumber(story.growth.pull_share, 2), 'what the flat frame holds')}: however straight its boards, with average ones ${far(average)}, and with boards as soft as one in twenty ${far(soft)}.`
      : soft !== 0
        ? `The working pull is ${formatNumber(story.growth.pull_share, 2)} of what the flat frame holds with average boards. With boards as soft as one in twenty it is past that, and ${far(soft)}.`
        : `The working pull is ${formatNumber(story.growth.pull_share, 2)} of what the flat frame holds, so every twist in its boards is magnified.`;
  return [
    paragraph(
      `${turned} With boards that soft ${chanceGoes(story.chance_soft)} past the limit. Cloth that stretches holds it back a little.`,
    ),
  ];
}

function causes({ causes: list }: WarpStory): readonly Block[] {
  if (list.length === 0) return [];
  const rows = list
    .slice(0, 6)
    .map((cause): readonly Cell[] => [
      capital(causeInWords(cause)),
      cause.share < 0.01 ? 'under 1 %' : `${Math.round(cause.share * 100)} %`,
    ]);
  return [
    heading(3, 'Where the doubt comes from'),
    table([{ head: 'Cause' }, { head: 'Share', align: 'right' }], rows),
  ];
}

/** What to do with the boards, as advice without a full stop, and the same as a thing done. */
const advice: Readonly<Record<RemedyWay, string>> = {
  dry: 'Let the boards dry to the room before choosing them',
  pick: 'Pick the boards: sight along each and check it with winding sticks',
  'dry-and-pick':
    'Let the boards dry to the room before choosing them, and pick them: sight along each and check it with winding sticks',
};
const done: Readonly<Record<RemedyWay, string>> = {
  dry: 'Boards dried first',
  pick: 'Boards picked',
  'dry-and-pick': 'Boards dried first and picked',
};

/** Chances below this need no halving. */
const little = 0.005;

function halving(told: Telling, story: WarpStory): readonly Cell[] {
  const { halves, remedies, chance } = story;
  const by = (mm: number, chance: number): string =>
    `nine in ten then stay under ${told.length(mm)}; ${chanceGoes(chance)} past the limit.`;
  // Where the same was tried as a change of the plan, the advice stands there.
  const there = told.audit.changes.length > 0;
  const words = ({ way }: Remedy): string => (there ? done : advice)[way];
  const boards: Cell[] =
    halves === null
      ? [
          chance < little ? 'There is little left to halve.' : 'Nothing done with the boards alone halves it.',
          ...remedies.map((r) => `${words(r)}: ${by(r.lift_p90_mm, r.chance)}`),
        ]
      : [[strong(words(halves)), `: ${by(halves.lift_p90_mm, halves.chance)}`]];
  const changed = told.audit.changes.some((c) => c.lift_chance !== null && c.lift_chance <= chance / 2);
  return [
    ...boards,
    ...(chance < little || !changed
      ? []
      : ['Changes to the frame that halve it stand with their chances under “What to change”.']),
  ];
}

function reserve(told: Telling, show: Show): readonly Block[] {
  const { audit, units } = told;
  const { stability } = audit.solution;
  const now = told.number('frame.twist_reserve');
  const critical = told.number('frame.critical_pull_N_per_m');
  const shape =
    stability.mode_words === null
      ? null
      : propeller({ units, lines: stability.mode_shape, words: stability.mode_words });
  if (now === null)
    return [
      heading(3, 'Reserve against twisting'),
      paragraph(`Unknown. ${told.each('frame.twist_reserve')[0]?.reason ?? ''}`),
    ];
  const { peak } = audit.model;
  const pull = formatQuantity(Math.max(peak.x, peak.y) * 1000, 'N/m', units);
  return [
    heading(3, 'Reserve against twisting'),
    paragraph(
      'Stretched cloth squeezes the bars along their length. Pulled hard enough, a flat frame gives way: ',
      stability.mode === 'sideways'
        ? 'here a bar or crossbar bows sideways first'
        : 'one pair of opposite corners comes forward and the other goes back, like a propeller',
      `${stability.mode_words === null || stability.mode_words === 'propeller' ? '' : ` (${stability.mode_words})`}.`,
      critical === null
        ? ''
        : ` With average boards that happens at a pull of about ${formatQuantity(critical, 'N/m', units)}.`,
    ),
    paragraph(
      strong(`The reserve is ${formatNumber(now, 2)}`),
      now < 1
        ? `: with boards as soft as one in twenty, the flat frame gives way at ${formatNumber(now, 2)} of the hardest pull of the plan (${pull}). It does not hold.`
        : `: with boards as soft as one in twenty, the hardest pull of the plan (${pull}) could grow ${formatNumber(now, 2)} times before the flat frame gives way.`,
    ),
    ...show(shape),
    ...second(told),
    ...softJoints(told, now),
  ];
}

function second({
  audit: {
    solution: { stability },
  },
}: Telling): readonly Block[] {
  const { load_factor, second_factor, second_mode_words } = stability;
  if (load_factor === null || second_factor === null || second_mode_words === null) return [];
  const ratio = second_factor / load_factor;
  if (!(ratio < 1.5)) return [];
  return [
    paragraph(
      `A second way to give way is close behind, at ${timesInWords(formatNumber(ratio, 2), 'that pull')}: ${second_mode_words}.`,
    ),
  ];
}

/** The reserve with soft joints beside the one with the joints as planned, and what the difference tells. */
function softJoints(told: Telling, now: number): readonly Block[] {
  const soft = told.number('frame.twist_reserve_give8');
  if (soft === null) return [];
  const lost = now > 0 ? 1 - soft / now : 0;
  const finding = told.audit.findings.find((f) => f.fact === 'frame.twist_reserve');
  const limit = typeof finding?.limit === 'number' ? finding.limit : null;
  const below = limit !== null && now >= limit && soft < limit;
  const meaning = below
    ? `With soft joints it would fall below the ${formatNumber(limit, 2)} that the rules ask for: this plan leans on its joints, so glue them full and brace them.`
    : lost > 0.3
      ? 'Much of the strength sits in the joints, so their making matters: glue them full, clamp them, and do not rely on nails alone.'
      : lost > 0.1
        ? 'Some of the strength sits in the joints, but the bars carry most of it.'
        : 'Little hangs on the joints: the bars carry it.';
  const joint = jointStandsOn(told.audit);
  const load =
    joint.own || !(below || lost > 0.3)
      ? ''
      : ' The reserve hangs on the joint: glue a test corner beside the frame and load it (sightdown measure joint --help says how).';
  return [
    paragraph(
      `${joint.words} How stiff they turn out nobody knows before they are glued. If every joint gave twice as much as taken here, and at least ${formatNumber(softGive(told), 2)} bar-widths of extra bar (${softened(told)}), the reserve would be ${formatNumber(soft, 2)} instead of ${formatNumber(now, 2)}. ${meaning}${load}`,
    ),
  ];
}

const softGive = ({ audit: { model } }: Telling): number => shelfNumber(model.shelf, 'second-give');

/** What the softer joints are, in words: `corners 12 instead of 6, crossbar ends 40 instead of 20`. */
function softened({
  audit: {
    model: { shape, shape_soft },
  },
}: Telling): string {
  const corner = 'top-left';
  const pair = (what: string, own: JointGive | undefined, soft: JointGive | undefined): string[] =>
    own === undefined || soft === undefined ? [] : [`${what} ${inWidths(soft)} instead of ${inWidths(own)}`];
  return [
    ...pair('corners', shape.corner_give[corner], shape_soft.corner_give[corner]),
    ...pair('crossbar ends', shape.crossbars[0]?.give, shape_soft.crossbars[0]?.give),
    ...pair('brace ends', shape.braces[0]?.give, shape_soft.braces[0]?.give),
    ...(shape.corner_plate_Nmm_per_rad[corner] > 0 ? ['corner plates half as stiff'] : []),
  ].join(', ');
}

const inWidths = ({ plane, out, twist }: JointGive): string =>
  plane === out && out === twist
    ? formatNumber(plane)
    : `${formatNumber(plane)} in the plane, ${formatNumber(out)} out of it and ${formatNumber(twist)} in twist`;
