/**
 * A rectangular skin under tension in the xy plane, tied along its edges to bars of the frame: it follows their shape,
 * cubic between nodes. Inside it moves along z only; in the plane its threads run straight from edge to edge and follow
 * the frame. Nodes run from left to right and bottom to top, at the same fractions on opposite edges; those at the ends
 * turn with the bars, behind the joints of the corners.
 */
export interface MembraneBorder {
  readonly width: number;
  readonly height: number;
  readonly along_x: readonly number[];
  readonly along_y: readonly number[];
  readonly bottom: readonly number[];
  readonly top: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
}
