import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { showProblems } from '../../src/base/show-problem.js';
import { readPlan, readPlanWith } from '../../src/plan/read-plan.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { fileText, shippedShelf } from './shelf-for-tests.js';
import { runs } from '../effort.js';

const shelf = shippedShelf();
const everything = fileText('test/plans/everything.yaml');
const fragment = fileText('test/plans/practice/slim-bars.shelf.yaml');

/** A text with one stretch of it replaced. */
const damaged = (text: string) => fc.tuple(fc.nat(text.length), fc.nat(30), fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('{', '}', '[', ']', ':', '&a', '*a', '- ', '\t', '"', "'", '!', '|', '\n', '0', '-1', '1e308', '.nan', 'null', '?', '%', '---\n', '\ufeff', '\u0000')))
  .map(([at, length, put]) => text.slice(0, at) + put + text.slice(at + length));

/** Whatever comes out is a whole plan or a list of problems that stand in the file and can be shown. */
function soundly(text: string, read: (text: string) => ReturnType<typeof readPlan>): void {
  const result = read(text);
  const problems = result.ok ? result.warnings : result.problems;
  if (result.ok) {
    const numbers = JSON.stringify(result.value, (_, value: unknown) => (typeof value === 'number' && !Number.isFinite(value) ? 'NOT A NUMBER' : value));
    expect(numbers).not.toContain('NOT A NUMBER');
    expect(result.value.face.width_mm).toBeGreaterThan(0);
  } else expect(problems.some(({ severity }) => severity === 'error')).toBe(true);
  const lines = text.split('\n').length;
  for (const { line, column } of problems) {
    expect(line).toBeLessThanOrEqual(lines);
    expect(line === 0 ? column === 0 : column > 0).toBe(true);
  }
  expect(showProblems(problems)).not.toMatch(/\u001b|\u0000/);
}

describe('laws of reading', () => {
  it('any text is read without throwing', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ maxLength: 200 })), (text) => { soundly(text, (given) => readPlan(given, 'p.yaml')); }), { numRuns: runs(200, 1 / 4) });
  });

  it('a damaged plan gives a plan or placed problems', () => {
    fc.assert(fc.property(damaged(everything), (text) => { soundly(text, (given) => readPlanWith(given, 'p.yaml', shelf)); }), { numRuns: runs(200, 1 / 4) });
  });

  it('any value in any field gives a plan or placed problems', () => {
    const fields = ['plan', 'name', 'count', 'face', 'bars', 'crossbars', 'corners', 'ply-screws', 'cloth', 'ground', 'lumber', 'boards', 'room', 'hang', 'spend', 'door'];
    fc.assert(fc.property(fc.constantFrom(...fields), fc.jsonValue({ maxDepth: 3 }), (field, value) => {
      const kept = fileText('test/plans/smallest.yaml').split('\n').filter((line) => !line.startsWith(`${field}:`)).join('\n');
      soundly(`${kept}${field}: ${JSON.stringify(value)}\n`, (given) => readPlanWith(given, 'p.yaml', shelf));
    }), { numRuns: runs(250, 1 / 4) });
  });

  it('a damaged shelf gives a shelf or problems', () => {
    fc.assert(fc.property(damaged(fragment), (text) => {
      const result = readShelf(text, 's.yaml', shelf);
      if (!result.ok) expect(result.problems.length).toBeGreaterThan(0);
      else expect(JSON.stringify(result.value)).not.toContain('null,"width_mm":null');
    }), { numRuns: runs(200, 1 / 4) });
  });

  it('the same text gives the same plan', () => {
    expect(readPlanWith(everything, 'p.yaml', shelf)).toEqual(readPlanWith(everything, 'p.yaml', shelf));
  });

  it('a plan in inches is the plan in millimetres, but for its unit system and the lengths it falls back to', () => {
    fc.assert(fc.property(fc.integer({ min: 160, max: 16 * 90 }), fc.integer({ min: 160, max: 16 * 90 }), (width, height) => {
      const text = (w: string, h: string): string => `plan: 1\nname: a\nface: { width: ${w}, height: ${h} }\nbars: { stock: strip-19x38, lay: flat }\nhang: { by: none }\ncloth: { fixing: { every: 48 mm, turn: 47 mm } }\n`;
      const read = (given: string) => { const result = readPlan(given, 'p.yaml'); if (!result.ok) throw new Error(JSON.stringify(result.problems)); return result.value; };
      const inches = read(text(`${width}/16 in`, `${height}/16 in`));
      const metric = read(text(`${(width * 1.5875).toFixed(4)} mm`, `${(height * 1.5875).toFixed(4)} mm`));
      expect(inches.face).toEqual(metric.face);
      expect({ ...inches, units: 'metric', assumed: [] }).toEqual({ ...metric, assumed: [] });
    }));
  });
});
