import type { Nodes } from 'mdast';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Audit } from '../../src/report/audit-view.js';
import { composeReport, type Report } from '../../src/report/compose.js';
import { writeHtml } from '../../src/report/html.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { auditOf, everything, inches, smallest, weak } from './audits.js';
import { labelsOf } from './svg-reading.js';
import { sheetsOf } from '../../src/sheets/sheets.js';

let full: Audit;
let stopped: Audit;
let small: Audit;
let inch: Audit;
beforeAll(async () => {
  [full, stopped, small, inch] = await Promise.all([auditOf(everything), auditOf(weak), auditOf(smallest), auditOf(inches)]);
});

const composed = new Map<Audit, Report>();
/** The report of an audit, composed once. */
function reportOf(audit: Audit): Report {
  const report = composed.get(audit) ?? composeReport(audit);
  composed.set(audit, report);
  return report;
}

const text = (node: Nodes): string => ('value' in node ? node.value : 'children' in node ? (node.children as Nodes[]).map(text).join('') : '');
const headings = ({ tree }: Report, depth: number): readonly string[] => tree.children.filter((node) => node.type === 'heading' && node.depth === depth).map(text);

/** What stands under one heading of the second level, as Markdown. */
function part(report: Report, title: string): string {
  const from = report.tree.children.findIndex((node) => node.type === 'heading' && node.depth === 2 && text(node) === title);
  if (from < 0) throw new Error(`no part ${title}`);
  const to = report.tree.children.findIndex((node, i) => i > from && node.type === 'heading' && node.depth === 2);
  return writeMarkdown({ type: 'root', children: report.tree.children.slice(from, to < 0 ? undefined : to) });
}

const parts = ['Verdict', 'What to change', 'What to buy and cut', 'Screws, nails and glue', 'Order of work', 'The cloth', 'Stretching', 'Hanging', 'Bench sheet', 'Work safely', 'Will it warp or twist?', 'What if I am a little off?', 'The checks', 'What this rests on'];

describe('the report as a whole', () => {
  it('has its eleven parts, what small slips do, and the bench sheet, in this order, whatever the plan', () => {
    for (const audit of [full, stopped, small, inch]) expect(headings(reportOf(audit), 2)).toEqual(parts);
  });

  it('shows each of its pictures once, with words for those who cannot see it', () => {
    for (const audit of [full, stopped, small, inch]) {
      const { tree, pictures } = reportOf(audit);
      const shown = [...writeMarkdown(tree).matchAll(/^!\[(.+)\]\(([a-z0-9-]+\.svg)\)$/gmu)];
      expect(shown.map(([, , name]) => name)).toEqual(pictures.map(({ name }) => name));
      expect(new Set(pictures.map(({ name }) => name)).size).toBe(pictures.length);
      for (const { alt, svg } of pictures) {
        expect(alt.length).toBeGreaterThan(30);
        expect(svg).toMatch(/<title id="[a-z0-9-]+-title">.+<\/title><desc id="[a-z0-9-]+-desc">.+<\/desc>/u);
      }
    }
    expect(reportOf(full).pictures.map(({ name }) => name)).toEqual(expect.arrayContaining(['front.svg', 'section.svg', 'lift-chance.svg', 'propeller.svg', 'boards.svg', 'corner.svg', 'cloth.svg', 'roll.svg', 'hanging.svg']));
  });

  it('is the same every time, to the byte', async () => {
    const again = await auditOf(everything);
    const [one, two] = [composeReport(full), composeReport(again)];
    expect(writeMarkdown(two.tree)).toBe(writeMarkdown(one.tree));
    expect(two.pictures).toEqual(one.pictures);
    expect(writeHtml(two.tree, two.pictures, { title: 'x', lang: 'en' })).toBe(writeHtml(one.tree, one.pictures, { title: 'x', lang: 'en' }));
  });

  it('has no unfinished value in it', () => {
    for (const audit of [full, stopped, small, inch]) expect(writeMarkdown(reportOf(audit).tree)).not.toMatch(/undefined|NaN|Infinity|\[object|null/u);
  });

  it('speaks the units of the plan: no millimetre in an inch report but in the names that things carry, no inch in a metric one', () => {
    const names = [...Object.values(inch.shelf.nails), ...Object.values(inch.shelf.screws), ...Object.values(inch.shelf.hardware)].map(({ name }) => name);
    const inchText = names.reduce((words, name) => words.replaceAll(name, ''), writeMarkdown(reportOf(inch).tree));
    expect(inchText.match(/.{0,40}\d mm\b.{0,20}/gu) ?? []).toEqual([]);
    const metricText = names.reduce((words, name) => words.replaceAll(name, ''), writeMarkdown(reportOf(small).tree));
    // drills keep what is printed on them
    const drills = small.shelf.drills.reduce((words, { label }) => words.replaceAll(label, ''), metricText);
    expect(drills.match(/.{0,40}\d in\b.{0,20}/gu)?.filter((found) => !/\d in (ten|one|each|\d)/u.test(found)) ?? []).toEqual([]);
    for (const { svg } of reportOf(inch).pictures) for (const { text: label } of labelsOf(svg)) expect(label).not.toMatch(/\d mm\b/u);
  });
});

describe('what each part says', () => {
  it('the verdict in one sentence with its count, and what stands in the way', () => {
    const stops = new Set(stopped.findings.filter(({ verdict }) => verdict === 'stop').map(({ rule }) => rule));
    const said = part(reportOf(stopped), 'Verdict');
    expect(stops.size).toBeGreaterThan(0);
    expect(said).toContain(`Stop: do not cut this frame yet. ${stops.size} check`);
    expect(said.match(/^- /gmu)).toHaveLength(Math.min(3, stops.size));
    expect(said).toContain('front.svg');
    const unknown = reportOf({ ...small, verdict: 'unknown', findings: small.findings.map((f, i) => (i === 0 ? { ...f, verdict: 'unknown' as const } : { ...f, verdict: 'clear' as const })) });
    expect(part(unknown, 'Verdict')).toContain('not cleared, because 1 check could not be made');
    expect(part(reportOf({ ...small, verdict: 'unknown', findings: [] }), 'Verdict')).toContain('no rule of the ruleset has anything to say of it');
    const clear = reportOf({ ...small, verdict: 'clear', findings: small.findings.map((f) => ({ ...f, verdict: 'clear' as const })) });
    expect(part(clear, 'Verdict')).toMatch(/Clear: all \d+ checks of the ruleset that apply to this plan are met/u);
  });

  it('every change with what it does, and the advice of every rule that is not clear', () => {
    const said = part(reportOf(stopped), 'What to change');
    expect(stopped.changes.length).toBeGreaterThan(0);
    const [first, ...others] = stopped.changes;
    for (const { words } of others) expect(said).toContain(words);
    // The change to make first stands once in the whole report: with the verdict; its row leads there.
    const whole = writeMarkdown(reportOf(stopped).tree);
    expect(whole.split(first!.words)).toHaveLength(2);
    expect(part(reportOf(stopped), 'Verdict')).toContain(`**Change first:** ${first!.words}`);
    expect(said).toContain('| **Change first**, as said under “[Verdict](#verdict)” |');
    // Of each change the reserve stands with as many decimals.
    expect(stopped.changes.flatMap(({ twist_reserve }) => (twist_reserve === null ? [] : [twist_reserve.toFixed(2)])).every((one) => said.includes(`| ${one} |`))).toBe(true);
    for (const f of stopped.findings.filter(({ verdict }) => verdict === 'stop')) for (const advice of f.do) expect(said).toContain(advice);
    expect(part(reportOf({ ...small, changes: [], findings: [] }), 'What to change')).toContain('Nothing has to change.');
  });

  it('the chance of a lifted corner in words, the reserve as it is and with soft joints; unknown where the frame does not stand', () => {
    const said = part(reportOf(full), 'Will it warp or twist?');
    expect(said).toMatch(/frames built like this will stand more than 6 mm off the wall at one corner/u);
    expect(said).toContain('The reserve is ');
    expect(said).toContain('If every joint gave twice as much as taken here, and at least 8 bar-widths of extra bar (corners ');
    const fallen = { ...full, solution: { ...full.solution, influence: null } };
    const unstable = part(reportOf({ ...fallen, sheets: sheetsOf(fallen) }), 'Will it warp or twist?');
    expect(unstable).toContain('The chance of a lifted corner is unknown.');
  });

  it('every check that spoke, with the share of its limit', () => {
    const said = part(reportOf(full), 'The checks');
    const rules = new Set(full.findings.map(({ rule, verdict }) => `${rule} ${verdict}`));
    expect(said.match(/^- /gmu)).toHaveLength(rules.size);
    expect(said).toMatch(/\*\*▲ Caution\*\*, \d+ % ■{10}\+: /u);
  });

  it('every check in short, and no rule among those that did not speak as well', () => {
    const said = part(reportOf(stopped), 'The checks');
    const plain = said.replaceAll('\\', '');
    for (const { say } of stopped.findings) expect(plain, say).not.toContain(say);
    for (const line of said.match(/^- .*$/gmu) ?? []) expect(line.length, line).toBeLessThan(150);
    const silent = part(reportOf(stopped), 'What this rests on');
    for (const { rule } of stopped.findings) expect(silent).not.toContain(`- ${rule}:`);
  });

  it('each sentence of a rule that is not clear once: what stands under the verdict is not said again with the advice', () => {
    for (const audit of [full, stopped]) {
      const report = reportOf(audit);
      const before = writeMarkdown(report.tree).replaceAll('\\', '');
      const worst = new Map(audit.findings.filter(({ verdict }) => verdict !== 'clear').map((f) => [`${f.rule} ${f.verdict}`, f] as const).reverse());
      for (const f of worst.values()) if (f.about === 'frame') expect(before.split(f.say).length - 1, f.say).toBe(1);
    }
  });

  it('whether a note can be heard: where it cannot, the weight instead', async () => {
    const low = part(reportOf(full), 'The cloth');
    expect(low).toMatch(/Tapped, the right note would be [\d.]+ to [\d.]+ Hz, too low to be heard: nobody hears below about 20 Hz\. So tell the pull by a weight: /u);
    const little = await auditOf(smallest.replace('width: 500 mm', 'width: 260 mm').replace('height: 400 mm', 'height: 210 mm'));
    const high = part(reportOf(little), 'The cloth');
    expect(high).toMatch(/Tap the bare cloth in the middle: a note of \d+ to \d+ Hz means about right/u);
    expect(high).toContain('- Or lay the frame flat and put a weight of 500 g');
  });

  it('keys only for keyed corners', async () => {
    const other = 'Only keyed corners can be keyed out later';
    expect(part(reportOf(small), 'The cloth')).toContain(other);
    expect(part(reportOf(await auditOf(`${smallest}corners: { glue: none }\n`)), 'The cloth')).toContain(other);
    const keyed = await auditOf(`${smallest}corners: { cut: keyed }\n`);
    expect(part(reportOf(keyed), 'The cloth')).toMatch(/The keys may open each corner by at most [\d.]+ mm/u);
    expect(part(reportOf(keyed), 'The cloth')).not.toContain(other);
    expect(keyed.findings.map(({ rule }) => rule)).toContain('cloth/keys');
    expect(small.findings.map(({ rule }) => rule)).not.toContain('cloth/keys');
  });

  it('what carries, nails or glue, and one time in the clamps in every part', async () => {
    expect(part(reportOf(small), 'Screws, nails and glue')).toContain('They only hold the joint until the glue has set');
    expect(part(reportOf(await auditOf(`${smallest}corners: { glue: none }\n`)), 'Screws, nails and glue')).toContain('They carry the load themselves: leave none out.');
    const damp = reportOf(await auditOf(`${smallest}lumber: { moisture: 16 % }\n`));
    expect(part(damp, 'Screws, nails and glue')).toMatch(/In clamps 1\.5 hours;[\s\S]*half as long again/u);
    expect(part(damp, 'Order of work')).toContain('**Wait 1.5 hours** for the glue to hold before the nails are driven');
  });

  it('cloth, wire and glue in the units of the plan on the buying list', () => {
    expect(part(reportOf(inch), 'What to buy and cut')).toMatch(/\| Cotton duck[^|]*\| [\d/-]+ in \|[\s\S]*\| [\d.]+ (?:fl oz|tsp) \|/u);
    expect(part(reportOf(small), 'What to buy and cut')).toMatch(/\| Cotton duck[^|]*\| [\d.]+ mm \|[\s\S]*\| [\d.]+ ml \|/u);
  });

  it('every piece of the cut list, by its label, as often as frames are made', () => {
    const said = part(reportOf(full), 'What to buy and cut');
    for (const label of ['T1', 'T2', 'B1', 'B2', 'L1', 'L2', 'R1', 'R2', 'C1', 'C21', 'C22', 'TL', 'TR', 'BL', 'BR']) expect(said).toMatch(new RegExp(`^\\| .*\\b${label}\\b`, 'mu'));
    const counts = [...said.matchAll(/^\| [A-Z0-9, ]+ \| (\d+) \|/gmu)].map(([, n]) => Number(n));
    expect(counts.reduce((sum, n) => sum + n, 0)).toBe(3 * 15);
    expect(said).toContain('invented for demonstration');
  });

  it('a piece that no board is long enough for is told with the ways out', async () => {
    const long = await auditOf(smallest.replace('width: 500 mm', 'width: 2700 mm'));
    expect(part(reportOf(long), 'What to buy and cut')).toMatch(/Not every piece can be cut[\s\S]*longest board is 2400 mm[\s\S]*make the width at most/u);
  });

  it('drill, depth, number and places for every fastening', () => {
    const said = part(reportOf(full), 'Screws, nails and glue');
    expect(said).toMatch(/Plies together[^|]*\|[^|]*No\. 6[^|]*\| +\d+ \| [^|]+ \| 2\.5 mm \| \d+ mm \|/u);
    expect(said).toMatch(/Places, measured from the left or the lower end, top bar, bottom bar: 80, .*mm\./u);
    expect(said).toContain('of wood stays beyond the tip');
    expect(said).toMatch(/\d+ ml for one frame, \d+ ml for all 3/u);
  });

  it('a roll that is too narrow is a warning in its part, with no picture of a roll', async () => {
    const wide = await auditOf(weak.replace('height: 1100 mm', 'height: 1450 mm'));
    const report = reportOf(wide);
    expect(part(report, 'The cloth')).toMatch(/The roll is .* too narrow for this cloth/u);
    expect(report.pictures.map(({ name }) => name)).not.toContain('roll.svg');
  });

  it('waiting times in the order of work', () => {
    expect(part(reportOf(full), 'Order of work')).toMatch(/\*\*Wait (12|24) hours\*\* for /u);
  });

  it('hanging by wire, by two hooks, or not at all', async () => {
    expect(part(reportOf(full), 'Hanging')).toMatch(/The wire carries \d+ N \(the weight of [\d.]+ kg\) and draws each side bar inward/u);
    expect(part(reportOf(stopped), 'Hanging')).not.toMatch(/The wire carries/u);
    const none = await auditOf(`${smallest}hang: { by: none }\n`);
    expect(part(reportOf(none), 'Hanging')).toContain('does not hang');
  });

  it('the cautions of the steps, and when to ask a professional, in every report', () => {
    for (const audit of [full, stopped, small, inch]) {
      const said = part(reportOf(audit), 'Work safely');
      expect(said).toContain('ask a licensed professional where people can be hurt');
      expect(said).toContain('eye protection');
    }
  });

  it('everything assumed, everything left out, every silent rule, seed and samples', () => {
    const said = part(reportOf(small), 'What this rests on');
    for (const { path, value } of small.assumed) expect(said).toContain(/^0 (?:mm|in)$/u.test(value) ? `no ${path.split('.').slice(1).join(' ')}` : value);
    for (const sentence of small.left_out) expect(said).toContain(sentence);
    for (const { rule } of small.silent) expect(said).toContain(rule);
    // 50 % over the root of 200 is 3.54 %.
    expect(said).toContain('a standard error of at most 3.6 %, no more than from counting 200 imagined frames; the same seed, 7,');
    expect(said).toContain('recalled, not checked against the book');
  });

  it('a bench sheet with blanks for diagonals, lift, winding and tap note', () => {
    const said = part(reportOf(full), 'Bench sheet');
    for (const words of ['Diagonal', '1500 mm', 'straight sticks', 'fourth corner', 'tapped cloth', 'Hz']) expect(said).toContain(words);
    expect(said.match(/(\. ){8}/gu)?.length ?? 0).toBeGreaterThanOrEqual(10);
  });
});
