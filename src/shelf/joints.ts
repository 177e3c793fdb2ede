import type { JointGive } from '../base/joint-give.js';

/** The build-ups of joints whose give the shelf states. */
export type JointBuild =
  | 'mitre_glued_nailed'
  | 'mitre_glued'
  | 'mitre_nailed'
  | 'nothing'
  | 'half_lap_glued'
  | 'butt_glued'
  | 'keyed'
  | 'crossbar_glued'
  | 'crossbar_dry';

/** Joint give by build-up (extra bar-widths), and the bond stress of a glued face. */
export interface Joints {
  readonly give: Readonly<Record<JointBuild, JointGive>>;
  readonly bond_MPa: { readonly mitre: number; readonly butt: number; readonly half_lap: number };
  readonly source: string;
}
