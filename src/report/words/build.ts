import type { Plan } from '../../plan/plan.js';
import { userText } from '../clean-text.js';

const joined: Readonly<Record<Plan['bars']['bond'], string>> = { 'none': 'loose on each other', 'screws': 'screwed together', 'glue': 'glued together', 'glue+screws': 'glued and screwed together' };

/** How the bars are built, in half a sentence: `two strip-19x38 on edge, glued together, side by side`. */
export function barsInWords({ bars }: Plan): string {
  const stock = userText(bars.stock, 40);
  const lay = bars.lay === 'edge' ? 'on edge' : 'lying flat';
  if (bars.plies === 1) return `one ${stock} ${lay}`;
  return `${['no', 'one', 'two', 'three', 'four'][bars.plies] ?? bars.plies} ${stock} ${lay}, ${bars.stack.replaceAll('-', ' ')}, ${joined[bars.bond]}`;
}

/** What a plan builds, in one line: bars, corners, crossbars. */
export function frameInWords(plan: Plan): string {
  const runs = (way: 'upright' | 'level'): readonly string[] => {
    const n = plan.crossbars.filter((one) => one.runs === way).length;
    return n === 0 ? [] : [`${n} ${way} ${n === 1 ? 'crossbar' : 'crossbars'}`];
  };
  const crossbars = [...runs('upright'), ...runs('level')];
  return [`bars of ${barsInWords(plan)}`, `corners ${cornersInWords(plan)}`, crossbars.length === 0 ? 'no crossbar' : crossbars.join(' and ')].join('; ');
}

/** Which way the corners are made, in half a sentence. */
export function cornersInWords({ corners }: Plan): string {
  const parts = [
    { 'mitre': 'mitred', 'butt': 'butted', 'half-lap': 'half-lapped', 'keyed': 'keyed: tongue in slot, dry' }[corners.cut],
    corners.glue === null ? 'no glue' : `glued with ${userText(corners.glue, 40)}`,
    corners.nails === null ? 'no nails' : `${corners.nails.each} x ${userText(corners.nails.use, 40)}`,
    ...(corners.brace === null ? [] : [{ 'timber': 'timber braces', 'ply-gusset': 'plywood gussets', 'steel-angle': 'steel angles' }[corners.brace.kind]]),
  ];
  return parts.join(', ');
}
