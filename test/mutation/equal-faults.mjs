/** Faults that change nothing anybody could see, each with the reason; `key` as `faultsIn` gives it and the notes keep it. */
export const equalFaults = [
  { key: 'src/frame3d/element-axes.ts constant: `3` → `4`', why: 'A fourth round would ask whether the third axis has no part at all along x, y and z; an axis of length one always has.' },
  { key: 'src/model/build-model.ts boundary: `lying.plies > 1` → `lying.plies >= 1`', why: 'A single board is one solid section whatever its bond is called.' },
  { key: 'src/mechanics/fasteners/splitting.ts constant: `2` → `3`', why: 'Two signs and more are a high risk alike.' },
  { key: 'src/cutting/roll/across.ts boundary: `left-- <= 0` → `left-- < 0`', why: 'One step more of a counted allowance.' },
  { key: 'src/solve/frame-mesh.ts constant: `1` → `2` (21)', why: 'A level bar’s joint only asks whether its direction has a part along y.' },
  { key: 'src/solve/frame-mesh.ts constant: `1` → `2` (22)', why: 'An upright bar’s joint only asks whether its direction has a part along x.' },
  { key: 'src/risk/normal-deviates.ts boundary: `low + unit() * (high - low) < Math.exp(-0.5 * x * x)` → `low + unit() * (high - low) <= Math.exp(-0.5 * x * x)`', why: 'Two real numbers drawn at random are never equal.' },
];
