import { upToTape } from '../base/tape.js';
import { formatLength } from '../base/units-format.js';
import type { UnitSystem } from '../base/names.js';
import type { RollLayout } from '../cutting/roll/roll.js';
import { userText } from '../report/clean-text.js';
import { rollPicture } from '../report/drawings/roll.js';
import type { Picture } from '../report/drawings/picture.js';
import { boardPictures } from '../report/sections/board-pictures.js';
import { bullets, heading, paragraph, picture, type Block, type Cell } from '../report/tree.js';
import type { Pooled } from './pooled.js';

/** A roll longer than this is told as a list only: on a sheet its cloths would be too small to read. */
const longestDrawn_mm = 12_000;

/** The same picture under another name; what points inside it is renamed with it, so that several fit on one page. */
function renamed({ name, svg, alt }: Picture, to: string): Picture {
  const id = (file: string): string => file.replace(/\.svg$/u, '');
  return {
    name: to,
    svg: svg
      .replaceAll(`"${id(name)}-title`, `"${id(to)}-title`)
      .replaceAll(` ${id(name)}-desc"`, ` ${id(to)}-desc"`)
      .replaceAll(`"${id(name)}-desc`, `"${id(to)}-desc`),
    alt,
  };
}

/** Every board with its pieces; `start` begins the names of the files. */
export function boardBlocks(
  { cut }: Pooled,
  start: string,
): { readonly blocks: readonly Block[]; readonly pictures: readonly Picture[] } {
  const pictures = boardPictures(cut).map((drawn) => renamed(drawn, `${start}${drawn.name}`));
  return { blocks: pictures.map(picture), pictures };
}

/** Every roll of cloth: how much to cut off it and where each cloth lies. */
export function rollBlocks(
  { cut, rolls }: Pooled,
  start: string,
): { readonly blocks: readonly Block[]; readonly pictures: readonly Picture[] } {
  const blocks: Block[] = [];
  const pictures: Picture[] = [];
  rolls.forEach(({ cloth, layout }, i) => {
    if (layout.too_wide.length > 0)
      blocks.push(
        paragraph(
          `Too wide for the roll of ${userText(cloth.name, 60)}, ${formatLength(layout.roll_mm, cut.units)}: ${layout.too_wide.map((name) => userText(name, 40)).join(', ')}. Cloth is never joined: take a wider roll or a smaller face.`,
        ),
      );
    if (layout.placed.length < 2) return;
    blocks.push(
      heading(
        3,
        `${userText(cloth.name, 60)}: ${formatLength(upToTape(layout.length_mm, cut.units), cut.units)} off the roll`,
      ),
      paragraph(sentence(layout, cut.units)),
    );
    if (layout.length_mm <= longestDrawn_mm) {
      const drawn = renamed(
        rollPicture({
          units: cut.units,
          roll_width_mm: layout.roll_mm,
          length_mm: layout.length_mm,
          cloths: layout.placed.map((c) => ({
            label: userText(c.name, 20),
            along_mm: c.y_mm,
            across_mm: c.x_mm,
            length_mm: c.along_mm,
            width_mm: c.across_mm,
          })),
        }),
        `${start}roll${i === 0 ? '' : `-${i + 1}`}.svg`,
      );
      pictures.push(drawn);
      blocks.push(picture(drawn));
    }
    blocks.push(
      bullets(
        layout.placed.map(
          (c): Cell =>
            `${userText(c.name, 40)}: ${formatLength(c.y_mm, cut.units)} along the roll, ${formatLength(c.x_mm, cut.units)} from its edge; cut ${formatLength(c.along_mm, cut.units)} along and ${formatLength(c.across_mm, cut.units)} across.`,
        ),
      ),
    );
  });
  return { blocks, pictures };
}

function sentence(layout: RollLayout, units: UnitSystem): string {
  return layout.proven
    ? 'No shorter length holds all cloths with their long threads along the roll; that was proven.'
    : `The search was cut short: no length below ${formatLength(Math.floor(layout.least_mm), units)} can hold them all.`;
}
