import { chanceInWords, formatShare } from '../../base/units-format.js';
import type { Sighting } from '../../place/sighting.js';
import { broken, caption, lineStep } from './caption.js';
import { ink, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Picture } from './picture.js';
import { line, outline, rectangle } from './strokes.js';

const left = 16;
const tall = 120;
const top = 26;
const wide = 48;
const apart = 68;

/** The chance of a lifted corner against the number of boards sighted: a column for each, heights to scale. */
export function sightingPicture({ pieces, by_luck, rows }: Sighting): Picture {
  const columns = [
    { name: 'none', chance: by_luck },
    ...rows.map(({ sighted, chance }) => ({ name: String(sighted), chance })),
  ];
  const most = Math.max(...columns.map(({ chance }) => chance), 1e-9);
  const bottom = top + tall;
  const x = (i: number): number => left + i * apart;
  const y = (chance: number): number => bottom - (tall * chance) / most;
  const lines = broken([
    `Boards sighted for one frame, of which ${pieces} are taken.`,
    'Column: chance of a lifted corner.',
  ]);
  const content = drawing({
    marks: [
      ...columns.map(({ chance }, i) =>
        outline(rectangle(x(i), y(chance), wide, bottom - y(chance)), { fill: woodFill, width: weight.thin }),
      ),
      line(
        [
          { x: left, y: bottom },
          { x: x(columns.length - 1) + wide, y: bottom },
        ],
        { width: weight.edge, colour: ink },
      ),
    ],
    labels: [
      ...columns.flatMap(({ name, chance }, i) => [
        {
          text: chance < 0.001 ? '< 0.1 %' : formatShare(chance),
          size: textSize.small,
          spots: [{ x: x(i) + wide / 2, y: y(chance) - 9, anchor: 'middle' }] as const,
        },
        {
          text: name,
          size: textSize.small,
          spots: [{ x: x(i) + wide / 2, y: bottom + 11, anchor: 'middle' }] as const,
        },
      ]),
    ],
  });
  const alt = `Chance of a lifted corner against the number of boards sighted: ${columns.map(({ name, chance }) => `${name}: ${chanceInWords(chance)}`).join('; ')}.`;
  return finishPicture(
    { name: 'sighting.svg', title: 'How many boards to sight', alt },
    bottom + 30 + lineStep * lines.length,
    together(content, caption(lines, bottom + 30)),
  );
}
