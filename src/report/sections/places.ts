import { chanceInWords } from '../../base/units-format.js';
import { paragraph, strong, type Block } from '../tree.js';
import type { Telling } from '../telling.js';

/** Whether the measured boards lie where they belong, and which to swap; nothing when fewer than two were measured. */
export function placesBlocks({ audit, length }: Telling): readonly Block[] {
  const found = audit.sheets.places;
  if (found === null) return [];
  const { boards, swaps, now_mm, then_mm, chance_now, chance_then } = found;
  if (swaps.length === 0)
    return [
      paragraph(`The ${boards} measured boards lie in good places: swapping them would bring nothing one could see.`),
    ];
  const words = swaps.map(([a, b]) => `${a} and ${b}`.replaceAll('crossbar-', 'crossbar ')).join(', then ');
  return [
    paragraph(
      strong(`Swap ${words}`),
      `: lift ${length(now_mm)} → ${length(then_mm)}, lifted corner ${chanceInWords(chance_now)} → ${chanceInWords(chance_then)}. A board keeps its twist however it is turned; only the places of these ${boards} measured boards change.`,
    ),
  ];
}
