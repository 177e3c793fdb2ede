import { describe, expect, it } from 'vitest';
import { cornerParts } from '../../../src/mechanics/occupancy/corner-parts.js';
import { composeReport } from '../../../src/report/compose.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { auditOf } from '../audits.js';
import { labelsOf } from '../svg-reading.js';

const plan = (more: string): string => `plan: 1\nname: Gullmark ferry timetable\nface: { width: 870 mm, height: 640 mm }\n${more}`;

describe('a plate is as long in every place as it is built', () => {
  it.each([
    ['steel-angle', 'leg: 100 mm', 150],
    ['ply-gusset', 'leg: 131 mm', 131 + 19],
  ])('%s, %s', async (kind, leg, built_mm) => {
    const audit = await auditOf(plan(`bars: { stock: strip-19x38, lay: edge, plies: 2 }\ncorners: { brace: { kind: ${kind}, ${leg} } }\n`));
    const { tree, pictures } = composeReport(audit);
    const drawn = (name: string): readonly string[] => labelsOf(pictures.find((one) => one.name === name)!.svg).map(({ text }) => text);
    expect(drawn('corner.svg')).toContain(`leg ${built_mm} mm`);
    expect(drawn('front.svg')).toContain(`leg ${built_mm} mm`);
    expect(audit.supplies.lines.find((line) => ['angle', 'plywood'].includes(line.kind))?.measures).toContainEqual({ of: 'leg', mm: built_mm });
    const on_bar = cornerParts(audit.model).filter(({ kind: one, bar }) => (one === 'angle' || one === 'gusset') && bar === 'bottom');
    expect(on_bar.map(({ along_mm: [from, to] }) => to - from)).toEqual([built_mm, built_mm]);
    expect(writeMarkdown(tree)).not.toMatch(/leg (?:100|131) mm|100 mm from the corners/u);
  });
});

describe('what stands out behind the bars', () => {
  it('is told once: where the wire runs against it, as that', async () => {
    const audit = await auditOf(plan('bars: { stock: strip-19x38, lay: edge, plies: 2 }\ncrossbars: [ { runs: upright, at: 1/2, stock: board-19x64, lay: edge } ]\nhang: { by: wire, from: back }\n'));
    const out_mm = audit.sheets.hanging!.stands_out!.out_mm;
    const text = writeMarkdown(composeReport(audit).tree);
    expect(text).toContain(`In the way of ring or wire: crossbar 1, which stands out ${out_mm} mm behind the bars.`);
    expect(text.match(/stands? out \d+ mm behind/gu)).toHaveLength(1);
    expect(text).not.toMatch(/lead the wire/u);
  });
});
