import { cornerNames } from '../../base/names.js';
import type { Model, Solution } from '../../model/model.js';
import { bareCornerMoment_Nmm } from '../corners/corner-demand.js';
import { braceMoment_Nmm } from '../corners/brace-capacity.js';
import { cornerNailUse } from '../corners/corner-nail-use.js';
import { NOTHING_HOLDS } from '../corners/nailed-corner.js';
import { gammaStiffness, slipModulus_N_per_mm } from '../../model/gamma-method.js';
import { DURATION } from './load-duration.js';
import type { PlannedFastening } from './planned-fastening.js';
import { screwWithdrawal_N_per_mm } from './withdrawal.js';

/**
 * Withdrawal of a screw from end grain, share of side grain. The NDS allows none; the Wood Handbook's tests give about
 * this (wood-handbook-memory).
 */
const END_GRAIN_WITHDRAWAL = 0.75;

const over = (load: number, capacity: number): number =>
  load <= 0 ? 0 : capacity > 0 ? Math.min(NOTHING_HOLDS, load / capacity) : NOTHING_HOLDS;

/**
 * Shear on one ply screw where the screws alone join the plies, N: γ E A a s V/EI_ef of the first interface
 * (en1995-1-1-memory Annex B), slip modulus 2/3 K.
 * V is the largest bar-end shear at peak across the interfaces; front-to-back plies see only the out-of-plane moment,
 * taken as a half wave: V = π M/L.
 */
function plyShear_N(f: PlannedFastening, model: Model, solution: Solution): number {
  const corners = cornerNames.map((name) => solution.peak.corners[name]);
  return Math.max(
    0,
    ...[model.bars.top, model.bars.left].map((bar) => {
      const side = bar.stack === 'side-by-side';
      const height_mm = side ? bar.ply_w_mm : bar.ply_d_mm;
      const breadth_mm = side ? bar.ply_d_mm : bar.ply_w_mm;
      const V = Math.max(
        ...corners.map((c) => (side ? Math.abs(c.shear_N) : (Math.PI * Math.abs(c.out_moment_Nmm)) / bar.span_mm)),
      );
      const K = (2 / 3) * slipModulus_N_per_mm(f.density_kg_per_m3, f.shank_mm);
      const parts = Array.from({ length: Math.min(3, bar.plies) }, () => ({
        E_MPa: bar.stock.E_MPa,
        breadth_mm,
        height_mm,
      }));
      const beam = gammaStiffness(
        parts,
        parts.slice(1).map(() => ({ spacing_mm: f.spacing_mm, K_N_per_mm: K })),
        bar.span_mm,
      );
      return (
        ((beam.gamma[0] ?? 0) * bar.stock.E_MPa * breadth_mm * height_mm * (beam.a_mm[0] ?? 0) * f.spacing_mm * V) /
        beam.EI_Nmm2
      );
    }),
  );
}

/**
 * Load on one fastening at peak pull over its design value. Where glue carries the joint the fastening only clamps and
 * has nothing to carry: 0.
 */
export function fasteningUse(f: PlannedFastening, model: Model, solution: Solution): number {
  if (f.role === 'clamp') return 0;
  switch (f.name) {
    case 'crossbar-ply-screws':
      // The plies of a crossbar share its push or pull evenly: nothing slides.
      return 0;
    case 'ply-screws':
      return over(plyShear_N(f, model, solution), f.lateral_N);
    case 'corner-nails':
      return Math.max(...cornerNames.map((name) => cornerNailUse(model, solution.peak.corners[name], DURATION.normal)));
    case 'brace-screws': {
      // A plate carries what the solution gives it beside the joint; a timber brace may have to carry the bare frame's
      // corner alone.
      const plates_Nmm = Math.max(...cornerNames.map((name) => solution.peak.corners[name].plate_moment_Nmm));
      const carried_Nmm = model.braces.length > 0 ? bareCornerMoment_Nmm(model.shape, model.peak) : plates_Nmm;
      return over(carried_Nmm, braceMoment_Nmm(model, DURATION.normal));
    }
    case 'crossbar-screws': {
      const ends = f.count / (2 * Math.max(1, model.crossbars.length));
      const capacity =
        ends *
        END_GRAIN_WITHDRAWAL *
        screwWithdrawal_N_per_mm(f.G, f.shank_mm) *
        Math.min(f.thread_mm, f.penetration_mm);
      return over(Math.max(0, ...solution.peak.crossbars.map((bar) => bar.axial_N)), capacity);
    }
  }
}
