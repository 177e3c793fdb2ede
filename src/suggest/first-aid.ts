import { findFact } from '../facts/find-fact.js';
import type { Audit, Change } from '../report/audit-view.js';
import type { Edit } from './edit.js';

/** The five changes that practice reaches for first, each made to this plan alone. What the plan has already is left away. */
export function firstAid(audit: Audit): Edit[] {
  const { plan } = audit;
  const { bars } = plan;
  const edits: Edit[] = [];
  if (bars.plies < 3 && bars.stack === 'side-by-side')
    edits.push({ words: bars.plies === 1 ? 'Glue a second board to each bar.' : 'Glue one more board to each bar.', bars: { plies: bars.plies + 1, bond: 'glue+screws', pairing: 'opposed' } });
  const stock = audit.model.bars.top.stock;
  if (bars.lay === 'flat' && stock.width_mm > stock.thickness_mm) edits.push({ words: 'Turn the bars on edge.', bars: { lay: 'edge' } });
  edits.push(...moreCrossbars(audit));
  if (plan.corners.brace === null) {
    const leg_mm = Math.round(Math.min(plan.face.width_mm, plan.face.height_mm) / 4 / 10) * 10;
    edits.push({ words: 'Glue a wooden brace across each corner.', brace: { kind: 'timber', leg_mm, stock: bars.stock, lay: 'flat' } });
  }
  if (plan.lumber.chosen !== 'picked') edits.push({ words: 'Pick the boards: sight down each one and check it with winding sticks.', chosen: 'picked' });
  const gap = findFact(audit.facts, 'lumber.moisture_gap_pct', 'frame');
  if (gap !== null && gap > 1) edits.push({ words: 'Let the boards settle in the room before you cut.', moisture_pct: plan.lumber.moisture_pct - gap });
  return edits;
}

/** One more crossbar: across the long way first, then a second one crossing it. */
function moreCrossbars({ plan, model }: Audit): Edit[] {
  const oblong = plan.face.width_mm >= plan.face.height_mm;
  const [along, across] = oblong ? (['upright', 'level'] as const) : (['level', 'upright'] as const);
  const has = (runs: string): boolean => plan.crossbars.some((c) => c.runs === runs);
  const runs = !has(along) ? along : !has(across) ? across : null;
  if (runs === null || Math.min(plan.face.width_mm, plan.face.height_mm) < 4 * model.bars.top.section.w_mm) return [];
  const { stock, lay } = plan.bars;
  const crossbar = { runs, at: 0.5, stock, lay, plies: 1, setback_mm: 5, give: null } as const;
  return [{ words: plan.crossbars.length === 0 ? `Add a crossbar across the middle (${runs}).` : `Add a second crossbar (${runs}), half-lapped where they cross.`, crossbars: [...plan.crossbars, crossbar] }];
}

/** What a change did, from the audit of the changed plan. */
export function asChange(words: string, audit: Audit): Change {
  const number = (path: string): number | null => findFact(audit.facts, path, null);
  return {
    words,
    verdict: audit.verdict,
    twist_reserve: number('frame.twist_reserve'),
    lift_chance: number('warp.corner_lift_chance'),
    cost: number('cutting.total_cost'),
    weight_kg: number('frame.weight_kg'),
  };
}
