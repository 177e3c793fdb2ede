import { chanceInWords, formatShare } from '../../base/units-format.js';
import type { Sighting } from '../../place/sighting.js';
import { sightingPicture } from '../drawings/sighting.js';
import type { Picture } from '../drawings/picture.js';
import { heading, paragraph, picture, strong, table, type Block } from '../tree.js';
import type { Telling } from '../telling.js';

/** How many boards to sight at the shop: a sentence, a table and a picture; nothing where it was not asked for or does not matter. */
export function sightingBlocks({ audit }: Telling): { readonly blocks: readonly Block[]; readonly pictures: readonly Picture[] } {
  const { sighting } = audit;
  if (sighting === undefined) return { blocks: [], pictures: [] };
  const drawn = sightingPicture(sighting);
  const enough = enoughSighted(sighting);
  const rows = sighting.rows.map(({ sighted, chance }) => [String(sighted), chanceInWords(chance), shareWords(chance)]);
  return {
    blocks: [
      heading(3, 'How many boards to sight'),
      paragraph(strong(`Sight ${enough.sighted}, take ${sighting.pieces}: from ${chanceInWords(sighting.by_luck)} to ${chanceInWords(enough.chance)}`), ' with a lifted corner, when each board is read with winding sticks and “sightdown place” says which goes where.'),
      table([{ head: 'Boards sighted', align: 'right' }, { head: 'Lifted corner' }, { head: '', align: 'right' }], [['none', chanceInWords(sighting.by_luck), formatShare(sighting.by_luck)], ...rows]),
      picture(drawn),
      paragraph('Averaged over imagined piles of boards of this kind, chosen as the plan says; the places are the best that small steps find, so the chances are if anything too large. Bow is not counted here.'),
    ],
    pictures: [drawn],
  };
}

/** Shares that nobody can picture are not spelled out. */
const shareWords = (chance: number): string => (chance < 0.001 ? 'under 0.1 %' : formatShare(chance));

/** The fewest boards after which more of them bring little: within a tenth, or one in a thousand, of the best. */
function enoughSighted({ rows }: Sighting): Sighting['rows'][number] {
  const best = Math.min(...rows.map(({ chance }) => chance));
  return rows.find(({ chance }) => chance <= best * 1.1 + 0.001) as Sighting['rows'][number];
}
