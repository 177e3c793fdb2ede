import fc from 'fast-check';

/** Texts of plans a person might write, in millimetres and inches, with defaults left out here and there, of two stocks of the shipped shelf. */
export const planTexts: fc.Arbitrary<string> = fc
  .record({
    inch: fc.boolean(),
    width: fc.integer({ min: 10, max: 40 }),
    height: fc.integer({ min: 9, max: 33 }),
    stock: fc.constantFrom('strip-19x38', 'stud-38x64'),
    lay: fc.constantFrom('flat', 'edge'),
    plies: fc.constantFrom('', ', plies: 2', ', plies: 2, stack: front-to-back, bond: glue', ', plies: 2, bond: screws, pairing: matched'),
    crossbar: fc.constantFrom('', 'crossbars: [ { runs: upright } ]\n', 'crossbars: [ { runs: level, at: 1/2, lay: flat, setback: 2 mm } ]\n'),
    brace: fc.constantFrom('', 'corners: { brace: { leg: 120 mm } }\n', 'corners: { brace: { kind: ply-gusset } }\n'),
    lumber: fc.constantFrom('', 'lumber: { chosen: unsorted, moisture: 18 % }\n', 'lumber: { chosen: picked }\n'),
    hang: fc.constantFrom('', 'hang: { by: none }\n', 'hang: { by: wire, slack: 15 mm, hooks: 1 }\n', 'hang: { by: two-hooks }\n'),
  })
  .map(({ inch, width, height, stock, lay, plies, crossbar, brace, lumber, hang }) => {
    const side = (n: number): string => (inch ? `${n} in` : `${n * 25} mm`);
    return `# A plan from the Gullmark Street Studio.\nplan: 1\nname: Trial\nface: { width: ${side(width)}, height: ${side(height)} }\nbars: { stock: ${stock}, lay: ${lay}${plies} }\n${crossbar}${brace}${lumber}${hang}`;
  });
