import fc from 'fast-check';
import { expect } from 'vitest';
import { audit } from '../../src/audit.js';
import type { Bench } from '../../src/bench.js';
import { plannedFastenings } from '../../src/mechanics/fasteners/planned-fastenings.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import type { Audit } from '../../src/report/audit-view.js';
import { composeReport } from '../../src/report/compose.js';
import { writeJson } from '../../src/report/json.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { allOf } from '../../src/report/words/plural.js';
import { amountInWords, packsInWords, rollLength } from '../../src/report/words/supply.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { fileText, shippedShelf } from '../plan/shelf-for-tests.js';

const ruleset = loadRuleset((name) => fileText(`rules/${name}`), 'baseline.yaml');
if (!ruleset.ok) throw new Error('the baseline does not load');
const bench: Bench = { shelf: shippedShelf(), ruleset: ruleset.value, seed: 1, samples: 100 };

const side = (inch: boolean, eighths: number): string => (inch ? `${Math.floor(eighths / 8)}-${(eighths % 8) * 2 + 1}/16 in` : `${eighths * 3} mm`);

/** Plans in both unit systems, one to nine of each, with and without everything that takes screws, glue or sheets. */
export const somePlan = fc.record({
  inch: fc.boolean(), width: fc.integer({ min: 130, max: 440 }), height: fc.integer({ min: 110, max: 330 }), count: fc.integer({ min: 1, max: 9 }),
  bars: fc.constantFrom('strip-19x38, lay: flat', 'strip-19x38, lay: edge, plies: 2', 'stud-38x64, lay: edge', 'square-38x38, lay: flat, plies: 2, bond: glue', 'board-19x64, lay: flat, lip: 5 mm', 'planed-21x45, lay: flat'),
  crossbars: fc.constantFrom('', 'crossbars: [ { runs: upright } ]\n', 'crossbars: [ { runs: upright, at: 1/3 }, { runs: upright, at: 2/3 } ]\n', 'crossbars: [ { runs: upright }, { runs: level } ]\n'),
  corners: fc.constantFrom('', 'corners: { cut: butt }\n', 'corners: { cut: half-lap, nails: none }\n', 'corners: { brace: { kind: timber } }\n', 'corners: { brace: { kind: ply-gusset } }\n', 'corners: { brace: { kind: steel-angle } }\n', 'corners: { glue: none }\n', 'corners: { cut: keyed }\n'),
  hang: fc.constantFrom('', 'hang: { by: two-hooks }\n', 'hang: { by: none }\n', 'hang: { by: wire, hooks: 1 }\n'),
  more: fc.constantFrom('', 'ground: { coats: 0 }\n', 'ground: { coats: 3 }\nlumber: { chosen: picked, knots: none }\n', 'cloth: { fixing: { to: edge, every: 41 mm } }\n'),
}).map(({ inch, width, height, count, bars, crossbars, corners, hang, more }) =>
  `plan: 1\nname: Drawn\ncount: ${count}\nface: { width: ${side(inch, width)}, height: ${side(inch, height)} }\nbars: { stock: ${bars} }\n${crossbars}${corners}${hang}${more}`);

/** Rows of the table whose heading begins so, cells as text; none when the page has no such table. */
function rowsOf(page: string, heading: string): readonly (readonly string[])[] {
  const lines = page.split('\n');
  const at = lines.findIndex((line) => line.startsWith(heading));
  if (at < 0) return [];
  const end = lines.findIndex((line, i) => i > at && !line.startsWith('|'));
  return lines.slice(at + 2, end < 0 ? undefined : end).map((line) => line.split('|').slice(1, -1).map((cell) => cell.trim().replaceAll('\\', '')));
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, n) => all + n, 0);
const cents = (cells: readonly string[]): number => sum(cells.map((cell) => Math.round(Number.parseFloat(cell) * 100)));

/** Audits a drawn plan and holds every amount on its pages against the bill; false when the plan reader refuses the plan. */
export async function holdToTheBill(text: string): Promise<boolean> {
  const read = readPlanWith(text, 'drawn.yaml', bench.shelf);
  if (!read.ok) return false;
  const audited = await audit(read.value, bench);
  const page = writeMarkdown(composeReport(audited).tree);
  boardsAgree(audited, page);
  besidesAgree(audited, page);
  fasteningsAgree(audited, page);
  clothAgrees(audited, page);
  workAgrees(audited, page);
  dataAgree(audited);
  return true;
}

function boardsAgree({ supplies, plan }: Audit, page: string): void {
  const pieces = rowsOf(page, '| Piece | Number');
  const listed = supplies.cut.lists[0]?.pieces.length ?? 0;
  const lips = supplies.cut.lists[0]?.lips.length ?? 0;
  expect(lips).toBe(plan.bars.lip_mm > 0 ? 4 : 0);
  expect(sum(pieces.map((row) => Number(row[1])))).toBe((listed + lips) * plan.count);
  if (supplies.cut.reason === null) expect(sum(supplies.cut.stocks.flatMap(({ boards }) => boards.map((board) => board.pieces.length)))).toBe(listed * plan.count);
  const boards = rowsOf(page, '| Board | Length');
  expect(boards.map((row) => Number(row[2]))).toEqual(supplies.boards.map(({ count }) => count));
  if (supplies.boards_cost !== null) {
    expect(cents(boards.map((row) => row[4] ?? ''))).toBe(Math.round(supplies.boards_cost * 100));
    expect(page).toContain(`Boards in all: ${supplies.boards_cost.toFixed(2)}`);
  }
}

function besidesAgree({ supplies, plan: { units, count } }: Audit, page: string): void {
  const rows = rowsOf(page, '| And besides');
  const [cloths, others] = [rows.slice(0, supplies.cloths.length), rows.slice(supplies.cloths.length)];
  expect(others.length).toBe(supplies.lines.length);
  supplies.lines.forEach((line, i) => {
    const row = others[i] ?? [];
    if (count > 1) expect(row[1]).toBe(amountInWords(line.for_one ?? Number.NaN, line.unit, units));
    expect(row.at(-3)).toBe(amountInWords(line.for_all, line.unit, units));
    expect(row.at(-2)).toBe(packsInWords(line, units));
    expect(line.for_all).toBeCloseTo((line.for_one ?? Number.NaN) * count, 6);
    if (line.bought !== null && line.cut_from_mm === null) expect(line.bought).toBeGreaterThanOrEqual(line.for_all - 1e-6);
  });
  if (supplies.total_cost === null) return;
  const boards = rowsOf(page, '| Board | Length');
  expect(cents([...boards.map((row) => row[4] ?? ''), ...cloths.map((row) => row.at(-1) ?? ''), ...others.map((row) => row.at(-1) ?? '')])).toBe(Math.round(supplies.total_cost * 100));
  expect(page).toContain(`${supplies.total_cost.toFixed(2)} EUR at the till`);
}

function fasteningsAgree({ supplies, plan: { units, count } }: Audit, page: string): void {
  const rows = rowsOf(page, '| For | Pick up');
  for (const line of supplies.lines.filter(({ kind }) => kind === 'nail' || kind === 'screw')) {
    const own = rows.filter((row) => row[1] === line.name || (row[1] ?? '').startsWith(`${line.name},`));
    expect(sum(own.map((row) => Number(row[2]))), line.name).toBe(line.for_all);
  }
  const glue = supplies.lines.find(({ kind }) => kind === 'glue');
  if (glue === undefined) expect(page).toContain('Nothing is glued.');
  else expect(page).toContain(`: ${amountInWords(glue.for_one ?? 0, 'ml', units)} for one frame${count === 1 ? '' : `, ${amountInWords(glue.for_all, 'ml', units)} for ${allOf(count)}`}.`);
}

function clothAgrees({ supplies, plan: { units, count } }: Audit, page: string): void {
  const part = page.slice(page.indexOf('## The cloth'));
  const [staples, ground, cloth] = [supplies.lines.find(({ kind }) => kind === 'staple'), supplies.lines.find(({ kind }) => kind === 'ground'), supplies.cloths[0]];
  const [, said = '', top = '', left = ''] = /with (\d+) staples.*?: (\d+) along each of top and bottom, (\d+) along each of left and right/u.exec(part) ?? [];
  expect(Number(said)).toBe(staples?.for_one);
  expect(2 * (Number(top) + Number(left))).toBe(staples?.for_one);
  if (ground !== undefined) {
    expect(part).toContain(`${amountInWords(ground.for_one ?? 0, 'ml', units)} in all`);
    if (count > 1) expect(part).toContain(`${amountInWords(ground.for_all, 'ml', units)} for ${allOf(count)}`);
  }
  if (cloth !== undefined && cloth.bought_cost !== null) expect(part).toContain(`buy ${rollLength(cloth.bought_mm, units)}.`);
}

/** Screws and nails that the order of work counts are those of one frame. */
function workAgrees({ model }: Audit, page: string): void {
  const from = page.indexOf('## Order of work');
  const part = page.slice(from, page.indexOf('\n## ', from + 5));
  const counts = plannedFastenings(model).map(({ count }) => count);
  const known = new Set([...counts, ...counts.map((n) => n / 4), ...counts.map((n) => n / 8)]);
  for (const [found, number] of part.matchAll(/(\d+) (?:ply )?(?:screws|nails)/gu)) expect(known, found).toContain(Number(number));
}

interface Told {
  readonly facts: readonly { readonly path: string; readonly value: unknown }[];
  readonly supplies: { readonly total_cost: number | null; readonly boards_cost: number | null; readonly lines: readonly { readonly for_all: number; readonly cost: number | null }[] };
}

function dataAgree(audited: Audit): void {
  const { supplies, model } = audited;
  const told = JSON.parse(writeJson(audited)) as Told;
  const fact = (path: string): unknown => told.facts.find((one) => one.path === path)?.value;
  expect(fact('cutting.total_cost')).toBe(supplies.total_cost);
  expect(fact('cutting.cost')).toBe(supplies.boards_cost);
  expect(told.supplies).toMatchObject({ total_cost: supplies.total_cost, boards_cost: supplies.boards_cost });
  told.supplies.lines.forEach(({ for_all, cost }, i) => {
    expect(for_all).toBeCloseTo(supplies.lines[i]?.for_all ?? Number.NaN, 4);
    expect(cost).toBe(supplies.lines[i]?.cost);
  });
  const glue = supplies.lines.find(({ kind }) => kind === 'glue')?.for_one ?? 0;
  expect(fact('frame.glue_ml')).toBeCloseTo(glue, 6);
  const driven = told.facts.filter(({ path }) => path === 'fastening.count').map(({ value }) => Number(value));
  const bill = supplies.lines.filter(({ kind }) => kind === 'nail' || kind === 'screw').map(({ for_one }) => for_one ?? Number.NaN);
  expect(sum(driven)).toBe(sum(bill));
  expect(model.plan.count).toBe(supplies.frames);
}
