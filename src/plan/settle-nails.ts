import { pickNail } from '../fit/pick-nail.js';
import type { Shelf } from '../shelf/shelf.js';
import type { BuiltSize } from './build-up.js';
import { planDefaults } from './defaults.js';
import type { Plan, PlanCorners } from './plan.js';

/**
 * The corners with the nail the plan does not name settled: one that reaches the other piece, stays inside and keeps
 * its distances, or none where the shelf has no such nail.
 * `notes` is told either way. A nail that the plan names stays.
 */
export function settleNails(
  { corners, face }: Plan,
  size: BuiltSize,
  shelf: Shelf,
  notes: Map<string, string>,
): PlanCorners {
  const whole = notes.has('corners.nails');
  if (corners.cut === 'keyed' || !(whole || notes.has('corners.nails.use'))) return corners;
  const each = corners.nails?.each ?? 1;
  const span_mm = Math.min(face.width_mm, face.height_mm) - size.w_mm;
  const nail = pickNail(Object.values(shelf.nails), planDefaults.nail, { cut: corners.cut, ...size, span_mm, each });
  const path = whole ? 'corners.nails' : 'corners.nails.use';
  if (nail === null) {
    notes.set(
      path,
      'none: no nail on the shelf reaches across this joint, stays inside the wood and keeps its distances',
    );
    return { ...corners, nails: null };
  }
  notes.set(path, whole ? `${nail.key}, one in each corner` : nail.key);
  return { ...corners, nails: { use: nail.key, each } };
}
