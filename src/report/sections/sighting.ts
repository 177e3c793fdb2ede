import { chanceInWords, formatShare } from '../../base/units-format.js';
import type { Sighting } from '../../place/sighting.js';
import { sightingPicture } from '../drawings/sighting.js';
import type { Picture } from '../drawings/picture.js';
import { heading, paragraph, picture, strong, table, type Block } from '../tree.js';
import type { Telling } from '../telling.js';
import { allOf } from '../words/plural.js';

/**
 * How many boards to sight at the shop: a sentence, a table and a picture; nothing where it was not asked for or does
 * not matter.
 */
export function sightingBlocks({ audit }: Telling): {
  readonly blocks: readonly Block[];
  readonly pictures: readonly Picture[];
} {
  const { sighting } = audit;
  if (sighting === undefined) return { blocks: [], pictures: [] };
  const drawn = sightingPicture(sighting);
  const enough = enoughSighted(sighting);
  const { count } = audit.plan;
  const all = (boards: number): readonly string[] => (count === 1 ? [] : [String(count * boards)]);
  const rows = sighting.rows.map(({ sighted, chance }) => [String(sighted), ...all(sighted), chanceWords(chance)]);
  return {
    blocks: [
      heading(3, 'How many boards to sight'),
      paragraph(
        strong(
          `Sight ${enough.sighted * count}, take ${sighting.pieces * count}${count === 1 ? '' : ` for ${allOf(count)} frames`}: from ${chanceInWords(sighting.by_luck)} to ${chanceInWords(enough.chance)}`,
        ),
        ' with a lifted corner, when each board is read with winding sticks and “sightdown place” says which goes where. A board counts once for each bar that is cut from it.',
      ),
      table(
        [
          { head: count === 1 ? 'Boards sighted' : 'Boards sighted for one frame', align: 'right' },
          ...(count === 1 ? [] : [{ head: `For ${allOf(count)}`, align: 'right' as const }]),
          { head: 'Lifted corner' },
        ],
        [['none', ...(count === 1 ? [] : ['none']), chanceWords(sighting.by_luck)], ...rows],
      ),
      picture(drawn),
      paragraph(
        `Averaged over imagined piles of boards of this kind, chosen as the plan says; the places are the best that small steps find, so the chances are if anything too large. Bow is not counted here.${count === 1 ? '' : ` Reckoned with as many boards for each frame; sorted over ${allOf(count)} frames together they do at least as well.`}`,
      ),
    ],
    pictures: [drawn],
  };
}

/** Shares that nobody can picture are not spelled out. */
const chanceWords = (chance: number): string =>
  chance < 0.001 ? chanceInWords(chance) : `${chanceInWords(chance)} (${formatShare(chance)})`;

/** The fewest boards after which more of them bring little: within a tenth, or one in a thousand, of the best. */
function enoughSighted({ rows }: Sighting): Sighting['rows'][number] {
  const best = Math.min(...rows.map(({ chance }) => chance));
  return rows.find(({ chance }) => chance <= best * 1.1 + 0.001) as Sighting['rows'][number];
}
