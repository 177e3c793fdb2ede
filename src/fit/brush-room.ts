import { patchSag_mm, type BothPulls } from './patch-sag.js';
import type { ClothSpan } from './span.js';

/** A firm brush: how hard it pushes, N, and the side of the square it presses on, mm. */
export interface Brush {
  readonly force_N: number;
  readonly patch_mm: number;
}

/** Cloth on a frame: its outside size and the free rectangle that a push from the front leans on, mm, and its pull. */
export interface PushedCloth {
  readonly face: ClothSpan;
  readonly span: ClothSpan;
  readonly pull: BothPulls;
}

/** Room that a firm brush should leave in front of a crossbar, mm (proposal; the baseline asks as much). */
const ROOM_MM = 2;

/** How far a firm brush pushes the cloth back at a place given as fractions of the face, mm. */
export function brushSag_mm({ face, span, pull }: PushedCloth, brush: Brush, x: number, y: number): number {
  const pad_mm = Math.min(brush.patch_mm, span.width_mm, span.height_mm);
  return patchSag_mm(span, pull, {
    force_N: brush.force_N,
    patch_width_mm: pad_mm,
    patch_height_mm: pad_mm,
    at_x: onCloth(x, face.width_mm, span.width_mm, pad_mm),
    at_y: onCloth(y, face.height_mm, span.height_mm, pad_mm),
  });
}

/**
 * A place given as a fraction of the face, as a fraction of the free span, kept far enough in for the pad to lie on the
 * cloth.
 */
function onCloth(fraction: number, face_mm: number, span_mm: number, pad_mm: number): number {
  const place_mm = fraction * face_mm - (face_mm - span_mm) / 2;
  return Math.min(Math.max(place_mm, pad_mm / 2), span_mm - pad_mm / 2) / span_mm;
}

/** A crossbar against the bars it ends at: depths off the wall, and how far a lip lifts the cloth, mm. */
export interface SetBehind {
  readonly bar_d_mm: number;
  readonly crossbar_d_mm: number;
  readonly lip_mm: number;
}

/**
 * Where a crossbar goes that a brush clears: as far behind the front of the bars as the push asks, at least `usual_mm`,
 * on a whole `mark_mm`; but a third of
 * the shallower piece stays beside the other to be joined (proposal). `clears` is false where that is too little.
 */
export function roomySetback_mm(
  { bar_d_mm, crossbar_d_mm, lip_mm }: SetBehind,
  sag_mm: number,
  usual_mm: number,
  mark_mm: number,
): { readonly setback_mm: number; readonly clears: boolean } {
  const wanted_mm = sag_mm + ROOM_MM - lip_mm;
  const most_mm = Math.floor((bar_d_mm - Math.min(bar_d_mm, crossbar_d_mm) / 3) / mark_mm) * mark_mm;
  const setback_mm = Math.min(most_mm, Math.max(usual_mm, Math.ceil(wanted_mm / mark_mm - 1e-9) * mark_mm));
  return { setback_mm, clears: setback_mm >= wanted_mm - 1e-9 };
}
