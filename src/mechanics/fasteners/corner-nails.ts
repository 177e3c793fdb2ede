import type { Model } from '../../model/model.js';
import { nailLateral_N } from './design-load.js';
import { ndsDistances } from './distances.js';
import { nailHoles } from './hole-plan.js';
import type { PlannedFastening } from './planned-fastening.js';

/**
 * Where a nail driven square through the outer edge crosses a mitre, mm from the corner along that edge (and so deep into the nail's length): half its length,
 * but at least ten diameters from the end and at most the middle of the mitre. `w_mm` is the width of the bar.
 */
export function mitreNailPlace_mm(w_mm: number, nail: { readonly diameter_mm: number; readonly length_mm: number }): number {
  return Math.min(w_mm / 2, Math.max(nail.length_mm / 2, 10 * nail.diameter_mm));
}

/** Wood before the joint and beyond the tip, by the cut of the corner. */
export function cornerNailPath(cut: 'mitre' | 'butt' | 'half-lap', w_mm: number, d_mm: number, span_mm: number, nail: { readonly diameter_mm: number; readonly length_mm: number }) {
  if (cut === 'half-lap') return { through_mm: d_mm / 2, exit_mm: d_mm - nail.length_mm, end_mm: w_mm / 2 };
  const place = cut === 'mitre' ? mitreNailPlace_mm(w_mm, nail) : w_mm;
  return { through_mm: place, exit_mm: span_mm - (nail.length_mm - place), end_mm: cut === 'mitre' ? place : w_mm / 2 };
}

/** The nails across the corners; null when the plan has none. In a mitre and a butt joint they run into end grain and hold sideways only. */
export function planCornerNails(model: Model): PlannedFastening | null {
  const { plan, shelf, bars } = model;
  const nails = plan.corners.nails;
  const nail = nails ? shelf.nails[nails.use] : undefined;
  if (!nails || !nail || nails.each < 1) return null;
  const { w_mm, d_mm } = bars.top.section;
  const { cut } = plan.corners;
  const path = cornerNailPath(cut, w_mm, d_mm, Math.min(bars.top.span_mm, bars.left.span_mm), nail);
  const G = bars.top.stock.species.specific_gravity;
  const penetration_mm = Math.max(0, Math.min(nail.length_mm - path.through_mm, cut === 'half-lap' ? d_mm / 2 : Infinity));
  const bored = ndsDistances(nail.diameter_mm, true);
  const across_mm = cut === 'half-lap' ? w_mm : d_mm;
  const along = nails.each > 1 ? (across_mm / nails.each) * (bored.along_grain_mm / bored.across_grain_mm) : Math.min(bars.top.span_mm, bars.left.span_mm);
  return {
    name: 'corner-nails',
    kind: 'nail',
    key: nail.key,
    label: nail.name,
    shank_mm: nail.diameter_mm,
    root_mm: nail.diameter_mm,
    length_mm: nail.length_mm,
    thread_mm: 0,
    head_mm: nail.diameter_mm,
    role: plan.corners.glue === null ? 'load' : 'clamp',
    G,
    density_kg_per_m3: bars.top.stock.density_kg_per_m3,
    through_mm: path.through_mm,
    penetration_mm,
    exit_mm: path.exit_mm,
    along_grain: cut !== 'half-lap',
    edge_mm: across_mm / (2 * nails.each),
    end_mm: path.end_mm,
    spacing_mm: along,
    thinnest_mm: path.through_mm,
    ...nailHoles(nail.diameter_mm, G, plan, shelf),
    lateral_N: nailLateral_N(nail, { G_side: G, G_main: G, side_mm: path.through_mm, main_mm: penetration_mm, end_grain: cut !== 'half-lap' }),
    count: 4 * nails.each,
    rows: [{ piece: 'each corner', places_mm: [Math.round(path.end_mm)] }],
    line: nails.each === 1 ? 'one, in the middle of the thickness' : `${nails.each}, spread over the thickness, from either side in turn`,
    drive_from: cut === 'half-lap' ? 'the back' : 'the outer edge, square to it, across the joint',
    note: cut === 'half-lap' ? '' : plan.corners.glue === null ? 'Clamp the corner while you drive it, so that the joint does not slide.' : 'Drive it when the glue has held in the clamps, so that the joint does not slide.',
  };
}
