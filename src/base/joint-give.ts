/**
 * How much a joint yields in each of its three ways, in extra widths of the bar that ends there; 0 is rigid.
 * `plane`: racking in the plane of the cloth; `out`: bending out of it; `twist`: turning about the bar's own length.
 */
export interface JointGive {
  readonly plane: number;
  readonly out: number;
  readonly twist: number;
}

/** A joint that gives alike in all three ways. */
export const evenGive = (widths: number): JointGive => ({ plane: widths, out: widths, twist: widths });

/** The same rule applied to each of the three ways. */
export const eachWay = (give: JointGive, of: (widths: number) => number): JointGive => ({
  plane: of(give.plane),
  out: of(give.out),
  twist: of(give.twist),
});
