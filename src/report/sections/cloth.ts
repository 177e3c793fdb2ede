import { formatNumber, formatQuantity } from '../../base/units-format.js';
import { upToTape } from '../../base/tape.js';
import type { ClothSheet } from '../../mechanics/cloth/cloth-sheet.js';
import { lowestHeard_Hz } from '../../mechanics/cloth/tap-note.js';
import { userText } from '../clean-text.js';
import { clothCut } from '../drawings/cloth-cut.js';
import type { Picture } from '../drawings/picture.js';
import { rollPicture } from '../drawings/roll.js';
import { bullets, heading, paragraph, picture, setApart, strong, type Block, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { aboutInWords } from '../words/about.js';
import { pullInWords } from '../words/force.js';
import { amountInWords, rollLength, supplyName } from '../words/supply.js';
import { waitInWords } from '../words/waiting.js';
import { allOf } from '../words/plural.js';

/** Part 7: how to cut the cloth, where it lies on the roll, how hard to pull it and how to tell. */
export function clothSection(told: Telling): Section {
  const { audit, length } = told;
  const sheet = audit.sheets.cloth;
  const cloth = audit.shelf.cloths[audit.plan.cloth.use];
  const cut = clothCut({
    units: told.units,
    cut_width_mm: sheet.cut.width_mm,
    cut_height_mm: sheet.cut.height_mm,
    folds: sheet.folds,
    along: sheet.roll.along,
  });
  const roll = onTheRoll(told);
  const staple = audit.supplies.lines.find(({ kind }) => kind === 'staple');
  const each = audit.plan.count === 1 ? '' : ' for each frame';
  const blocks: Block[] = [
    ...(sheet.roll.short_mm > 0
      ? [
          setApart(
            paragraph(
              strong(`The roll is ${length(sheet.roll.short_mm)} too narrow for this cloth.`),
              ` ${tooNarrow(told, sheet)}`,
            ),
          ),
        ]
      : []),
    bullets([
      `Cut ${userText(cloth?.name ?? audit.plan.cloth.use, 50)} ${length(sheet.cut.width_mm)} wide and ${length(sheet.cut.height_mm)} high, ${sheet.roll.along === 'either' ? 'either way of the threads' : `long threads along the ${sheet.roll.along}`}: that is the face and ${length(sheet.cut.margin_mm)} more on every side, of which the pliers take ${length(sheet.cut.grip_mm / 2)}.`,
      `From a roll ${length(sheet.roll.width_mm)} wide.${bought(told, sheet.length_if_washed_mm / sheet.roll.length_mm)}`,
      ...turned(told, sheet),
      `Fix it to the ${audit.plan.cloth.fixing.to} with ${sheet.staples} staples${staple === undefined ? '' : ` (${supplyName(staple, told.units)})`}${each}: ${sheet.staples_per_side.top} along each of top and bottom, ${sheet.staples_per_side.left} along each of left and right.`,
    ]),
    picture(cut),
    ...(roll === null ? [] : [picture(roll)]),
    heading(3, 'How hard to pull, and how to tell'),
    bullets(tension(told, sheet)),
  ];
  return { title: 'The cloth', blocks, pictures: roll === null ? [cut] : [cut, roll] };
}

/**
 * What a painter can do about a roll that is too narrow: what turning it would do, what a seam would mean, which cloths
 * on the shelf are wide enough.
 */
function tooNarrow({ audit, length, units }: Telling, sheet: ClothSheet): string {
  const { width_mm, height_mm } = sheet.cut;
  const needed_mm = Math.min(width_mm, height_mm);
  const wide = Object.values(audit.shelf.cloths)
    .filter(({ roll_mm }) => roll_mm >= needed_mm)
    .map(({ name, roll_mm }) => `${userText(name, 50)} (${length(roll_mm)})`);
  return [
    `Turned the other way it would be ${length(Math.max(width_mm, height_mm) - sheet.roll.width_mm)} too narrow.`,
    'A seam is no way out: along it the cloth pulls otherwise than beside it, it stands up under the ground, and it is seen in light from the side.',
    wide.length > 0
      ? `Wide enough on the shelf: ${wide.join(', ')}.`
      : `No cloth on the shelf is wide enough: ask for a roll of ${length(upToTape(needed_mm, units))} or more.`,
    'Or make the face smaller.',
  ].join(' ');
}

/** Most cloths drawn on one picture. */
const mostDrawn = 24;

function onTheRoll({ audit: { supplies }, units }: Telling): Picture | null {
  const layout = supplies.cloths[0]?.layout;
  if (layout === undefined || layout.placed.length === 0) return null;
  const drawn = layout.placed.slice(0, mostDrawn);
  const cloths = drawn.map((p, i) => ({
    label: layout.placed.length === 1 ? 'cloth' : `cloth ${i + 1}`,
    along_mm: p.y_mm,
    across_mm: p.x_mm,
    length_mm: p.along_mm,
    width_mm: p.across_mm,
  }));
  const length_mm = Math.max(...drawn.map((p) => p.y_mm + p.along_mm));
  return rollPicture({ units, roll_width_mm: layout.roll_mm, length_mm, cloths });
}

/** What the cloth would take off the roll if its threads need not run along the longer side. */
function turned({ audit, units, length }: Telling, { cut, roll }: ClothSheet): readonly string[] {
  const [short_mm, long_mm] = [Math.min(cut.width_mm, cut.height_mm), Math.max(cut.width_mm, cut.height_mm)];
  if (audit.plan.count > 1 || roll.along === 'either' || long_mm > roll.width_mm) return [];
  return [
    `Turned, with the long threads along the ${roll.along === 'width' ? 'height' : 'width'}, it would take ${length(upToTape(short_mm, units))} of the roll instead: the threads along the longer side give less, so do it only to save cloth.`,
  ];
}

/** How much to buy off the roll, and what it costs if it is washed first. */
function bought({ audit: { supplies, plan }, units }: Telling, washed_share: number): string {
  const line = supplies.cloths[0];
  if (line === undefined || line.bought_cost === null) return '';
  const frames = plan.count === 1 ? '' : ` for ${allOf(plan.count)} frames together`;
  const { length_mm } = line.layout;
  return ` ${rollLength(length_mm, units)} of it are cut${frames}: buy ${rollLength(line.bought_mm, units)}. If you wash it first, have ${rollLength(length_mm * washed_share, units)} before washing${frames}.`;
}

function weightInWords(g: number, units: Telling['units']): string {
  return units === 'metric' ? `${g} g` : `${g} g (about ${formatNumber(g / 28.349523125, 2)} oz)`;
}

function tension(told: Telling, sheet: ClothSheet): readonly Cell[] {
  const { units, audit, length } = told;
  const { working, peak } = audit.plan.cloth;
  const pull = (n: number): string => formatQuantity(n, 'N/m', units);
  const both = (p: typeof working): string =>
    p.x_N_per_m === p.y_N_per_m
      ? `${pull(p.x_N_per_m)} each way`
      : `${pull(p.x_N_per_m)} along the width and ${pull(p.y_N_per_m)} along the height`;
  const { ground, keys, seasonal } = sheet;
  return [
    `Working pull ${both(working)}, ${pullInWords(Math.max(working.x_N_per_m, working.y_N_per_m), units)}; never more than ${both(peak)}.`,
    ...tap(told, sheet),
    ...(sheet.relax_share > 0.5
      ? [
          [
            strong(
              sheet.relax_share > 0.75
                ? 'The bars bow in so far that the middle of the cloth goes slack.'
                : `Because the bars bow in, the middle of the cloth loses about ${formatQuantity(sheet.relax_share, 'share', units)} of the pull: it sags there.`,
            ),
          ],
        ]
      : sheet.relax_share > 0.005
        ? [
            `Because the bars bow in, the middle loses about ${formatQuantity(sheet.relax_share, 'share', units)} of the pull.`,
          ]
        : []),
    ...sheet.clearances.map((c): Cell => {
      const what =
        c.behind === 'wall' ? 'the wall' : c.behind === 'braces' ? 'the corner braces' : aboutInWords(c.behind);
      return c.left_mm < 0
        ? [strong(`A firm brush pushes the cloth against ${what}.`)]
        : `Under a firm brush ${length(c.left_mm)} of room stays in front of ${what}.`;
    }),
    audit.plan.corners.cut === 'keyed'
      ? `The keys may open each corner by at most ${length(keys.travel_mm)}, ${keys.because === 'ground' ? 'or the ground may crack' : 'or the cloth passes its hardest pull'}.`
      : 'Only keyed corners can be keyed out later; with these, cloth that goes slack is pulled again and stapled anew.',
    `Between the driest and the dampest air of this room the pull may change by roughly ${pull(seasonal.value_N_per_m)} (anything from ${pull(Number(seasonal.low_N_per_m.toPrecision(1)))} to ${pull(Number(seasonal.high_N_per_m.toPrecision(1)))}): only the order of size is known.`,
    ...(ground === null
      ? []
      : [
          `Ground: ${ground.coats} ${ground.coats === 1 ? 'coat' : 'coats'} of ${userText(ground.name, 40)}, ${amountInWords(ground.volume_ml, 'ml', units)} in all${audit.plan.count === 1 ? '' : ` for one frame, ${amountInWords(ground.volume_ml * audit.plan.count, 'ml', units)} for ${allOf(audit.plan.count)}`}; ${waitInWords(ground.dry_h_each)} to dry after each.`,
        ]),
  ];
}

/** How to tell the pull: by ear where the note can be heard, always by a weight. */
function tap({ units, audit, length }: Telling, { tap: { bare, grounded, heard }, push }: ClothSheet): readonly Cell[] {
  const note = ({ low_Hz, high_Hz }: { low_Hz: number; high_Hz: number }): string =>
    `${formatNumber(low_Hz, 2)} to ${formatNumber(high_Hz, 2)} Hz`;
  const weigh = `lay the frame flat and put a weight of ${weightInWords(push.weight_g, units)} on a pad ${length(push.pad_mm)} wide in the middle of the cloth: it should sink about ${length(Number(push.sag_mm.toPrecision(2)))}. More is slacker, less is tighter.`;
  if (!heard && bare.high_Hz >= lowestHeard_Hz)
    return [
      `Tapped, the right note would be ${note(bare)}, at the edge of hearing: nobody hears below about 20 Hz. Surer is a weight: ${weigh}`,
    ];
  if (!heard)
    return [
      `Tapped, the right note would be ${note(bare)}, too low to be heard: nobody hears below about 20 Hz. So tell the pull by a weight: ${weigh}`,
    ];
  const dry =
    audit.plan.ground.coats === 0
      ? ''
      : grounded.low_Hz < lowestHeard_Hz
        ? '; with the ground dry it is too low to be heard'
        : `; with the ground dry, ${note(grounded)}`;
  return [
    `Tap the bare cloth in the middle: a note of ${note(bare)} means about right${dry}. Lower is slacker, higher is tighter.`,
    `Or ${weigh}`,
  ];
}
