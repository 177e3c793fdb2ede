/** Faults that change nothing anybody could see, each with the reason: `was` and `becomes` on one line, as the command prints them. */
export const equalFaults = [
  {
    file: 'src/frame3d/element-axes.ts', was: '3', becomes: '4',
    why: 'A fourth round would ask whether the third axis has no part at all along x, y and z; an axis of length one always has.',
  },
  { file: 'src/model/build-model.ts', was: 'lying.plies > 1', becomes: 'lying.plies >= 1', why: 'A single board is one solid section whatever its bond is called.' },
  { file: 'src/mechanics/fasteners/splitting.ts', was: '2', becomes: '3', why: 'Two signs and more are a high risk alike.' },
  { file: 'src/cutting/roll/across.ts', was: 'left-- <= 0', becomes: 'left-- < 0', why: 'One step more of a counted allowance.' },
];
