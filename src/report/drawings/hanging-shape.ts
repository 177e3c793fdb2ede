import type { UnitSystem } from '../../base/names.js';
import type { FrontView } from './front-parts.js';

/** How the piece hangs; mm, N, degrees. What is not known is null and left out of the picture. */
export interface HangingPicture {
  readonly units: UnitSystem;
  /** The frame as the front view draws it: its crossbars and braces show behind wire and rings. */
  readonly frame: FrontView;
  readonly by: 'wire' | 'two-hooks' | 'd-rings' | 'cleat';
  /** Bevelled strips under the top bar, mm; empty unless it hangs by a cleat. */
  readonly strips: readonly { readonly middle_mm: number; readonly long_mm: number; readonly high_mm: number }[];
  readonly hooks: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly bar_w_mm: number;
  readonly bar_d_mm: number;
  readonly drop_mm: number;
  /** Level distance between the two rings or hanging points. */
  readonly ring_span_mm: number;
  /** How high the hook stands above the rings; null when the wire cannot carry. */
  readonly rise_mm: number | null;
  readonly hooks_apart_mm: number;
  readonly wire_angle_deg: number | null;
  readonly wire_tension_N: number | null;
  readonly inward_pull_N: number | null;
  readonly weight_N: number;
  readonly lean_deg: number | null;
  readonly top_standoff_mm: number | null;
  /**
   * What stands out behind the bars and holds them off the wall: how far, and where up the height of the frame; null
   * when nothing does.
   */
  readonly behind: { readonly out_mm: number; readonly up_mm: readonly (readonly [number, number])[] } | null;
}

/** Where the back view stands on the sheet. */
export const panel = { left: 94, width: 154, top: 58, height: 150 } as const;
