/** Plans of the benchmark: one that is clear, one with two crossbars and braces, one that must not be cut. */
export const clearPlan = `
plan: 1
name: Bench clear
face: { width: 900 mm, height: 650 mm }
bars: { stock: strip-19x38, lay: edge, plies: 2, bond: glue+screws, pairing: opposed }
crossbars: [ { runs: upright, at: 1/2, stock: strip-19x38, lay: flat, setback: 18 mm } ]
lumber: { chosen: picked, moisture: 9.5 % }
`;

export const braced = `
plan: 1
name: Bench braced
face: { width: 1500 mm, height: 1200 mm }
bars: { stock: stud-38x64, lay: edge }
crossbars:
  - { runs: upright, at: 1/2, stock: stud-38x64, lay: edge }
  - { runs: level, at: 0.45, stock: stud-38x64, lay: edge }
corners: { cut: mitre, glue: pva, brace: { kind: timber, leg: 300 mm, stock: strip-19x38, lay: flat } }
cloth: { roll: 2100 mm }
`;

export const stopPlan = `
plan: 1
name: Bench stop
face: { width: 56-3/8 in, height: 43-1/4 in }
bars: { stock: strip-19x38, lay: flat }
lumber: { chosen: unsorted, moisture: 16 % }
`;
