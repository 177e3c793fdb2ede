/** Faults that change nothing anybody could see, each with the reason; `key` as `faultsIn` gives it and the notes keep it. */
export const equalFaults = [
  { key: 'src/frame3d/element-axes.ts constant: `3` → `4`', why: 'A fourth round would ask whether the third axis has no part at all along x, y and z; an axis of length one always has.' },
  { key: 'src/model/build-model.ts boundary: `lying.plies > 1` → `lying.plies >= 1`', why: 'A single board is one solid section whatever its bond is called.' },
  { key: 'src/mechanics/fasteners/splitting.ts constant: `2` → `3`', why: 'Two signs and more are a high risk alike.' },
  { key: 'src/cutting/roll/across.ts boundary: `left-- <= 0` → `left-- < 0`', why: 'One step more of a counted allowance.' },
  { key: 'src/solve/frame-mesh.ts constant: `1` → `2` (21)', why: 'A level bar’s joint only asks whether its direction has a part along y.' },
  { key: 'src/solve/frame-mesh.ts constant: `1` → `2` (22)', why: 'An upright bar’s joint only asks whether its direction has a part along x.' },
  { key: 'src/risk/normal-deviates.ts boundary: `low + unit() * (high - low) < Math.exp(-0.5 * x * x)` → `low + unit() * (high - low) <= Math.exp(-0.5 * x * x)`', why: 'Two real numbers drawn at random are never equal.' },
  { key: 'src/frame3d/equations.ts boundary: `d < 6` → `d <= 6`', why: 'A spring has six stiffnesses; there is no seventh to be above nought.' },
  { key: 'src/frame3d/small-eigen.ts boundary: `k < n` → `k <= n`', why: 'Beyond the end of a typed array nothing is read or written.' },
  { key: 'src/frame3d/membrane.ts boundary: `c < k.length` → `c <= k.length`', why: 'Beyond the end of a typed array nothing is read or written.' },
  { key: 'src/model/section.ts constant: `39` → `40`', why: 'The series takes odd numbers only.' },
  { key: 'src/solve/solve-model.ts scale: `pull.y / other.y` → `pull.y * other.y`', why: 'Only asked where there is no pull along x, and a plan pulls at least 1 N/m both ways.' },
  { key: 'src/risk/closed-form.ts constant: `0` → `1` (8)', why: 'The station of a bar that departs nowhere: any says the same.' },
  { key: 'src/rules/say/compare.ts boundary: `a.about < b.about` → `a.about <= b.about`', why: 'One rule changes its verdict of one part once.' },
  { key: 'src/cutting/order-more.ts constant: `0` → `1` (2)', why: 'Only lengths of which so many are there come here.' },
];
