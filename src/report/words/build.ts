import { countInWords } from '../../base/count-words.js';
import { formatLength } from '../../base/units-format.js';
import type { Plan } from '../../plan/plan.js';
import { shelfIn } from '../../shelf/in-system.js';
import type { Audit } from '../audit-view.js';
import { userText } from '../clean-text.js';
import { plural } from './plural.js';
import { stockName } from './stock.js';

/** What a frame is told from: the plan, and the shelf its keys are looked up on. */
type Built = Pick<Audit, 'plan' | 'shelf'>;

const joined: Readonly<Record<Plan['bars']['bond'], string>> = {
  none: 'loose on each other',
  screws: 'screwed together',
  glue: 'glued together',
  'glue+screws': 'glued and screwed together',
};

/**
 * So many pieces of a stock by size and kind, as a shop says it: `two 19 × 38 mm strips`, `one 20 × 40 mm board
 * (oak-trim)`.
 */
function stockInWords(n: number, key: string, { plan, shelf }: Built): string {
  const stock = shelfIn(shelf, plan.units).lumber[key];
  if (stock === undefined) return `${countInWords(n)} ${userText(key, 40)}`;
  return `${countInWords(n)} ${stockName(key, stock, plan.units, n)}`;
}

/** So many nails by length and kind: `one 25 mm brad`. */
export function nailsInWords(n: number, key: string, { plan, shelf }: Built): string {
  const nail = shelf.nails[key];
  if (nail === undefined) return `${countInWords(n)} ${userText(key, 40)}`;
  return `${countInWords(n)} ${formatLength(nail.length_mm, plan.units)} ${plural(/^(brad|pin|nail)-/u.exec(key)?.[1] ?? 'nail', n)}`;
}

/** How the bars are built, in half a sentence: `two 19 × 38 mm strips on edge, side by side, glued together`. */
export function barsInWords(built: Built): string {
  const { bars } = built.plan;
  const stock = stockInWords(bars.plies, bars.stock, built);
  const lay = bars.lay === 'edge' ? 'on edge' : 'lying flat';
  if (bars.plies === 1) return `${stock} ${lay}`;
  return `${stock} ${lay}, ${bars.stack.replaceAll('-', ' ')}, ${joined[bars.bond]}`;
}

/** What a plan builds, in one line: bars, corners, crossbars. */
export function frameInWords(built: Built): string {
  const runs = (way: 'upright' | 'level'): readonly string[] => {
    const n = built.plan.crossbars.filter((one) => one.runs === way).length;
    return n === 0 ? [] : [`${n} ${way} ${plural('crossbar', n)}`];
  };
  const crossbars = [...runs('upright'), ...runs('level')];
  return [
    `bars of ${barsInWords(built)}`,
    `corners ${cornersInWords(built)}`,
    crossbars.length === 0 ? 'no crossbar' : crossbars.join(' and '),
  ].join('; ');
}

/**
 * Which way the corners are made, in half a sentence: `mitred, glued with white PVA wood glue, one 25 mm brad each`.
 */
export function cornersInWords(built: Built): string {
  const { corners } = built.plan;
  const parts = [
    { mitre: 'mitred', butt: 'butted', 'half-lap': 'half-lapped', keyed: 'keyed: tongue in slot, dry' }[corners.cut],
    corners.glue === null
      ? 'no glue'
      : `glued with ${userText(built.shelf.glues[corners.glue]?.name ?? corners.glue, 40)}`,
    corners.nails === null ? 'no nails' : `${nailsInWords(corners.nails.each, corners.nails.use, built)} in each`,
    ...(corners.brace === null
      ? []
      : [
          { timber: 'timber braces', 'ply-gusset': 'plywood gussets', 'steel-angle': 'steel angles' }[
            corners.brace.kind
          ],
        ]),
  ];
  return parts.join(', ');
}
