import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import type { Sheet } from '../../src/bench-sheet/sheet.js';
import { answerOf } from '../../src/learn/answers.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { build, Chance, shelf, type Truth } from '../learn/invented-studio.js';
import { sheetText } from '../learn/sheet-text.js';

/**
 * A year of a studio that does not exist, as its files: four plans, twenty frames, two sheets each. Its boards twist more than the shelf proposes, its corners give
 * more, its hands pull harder, its boards are drier than the plans say; one of its people does not sight boards, and one reading has lost its point.
 */
const plans = [
  { file: 'harbour', name: 'Harbour sketches', count: 8, rest: { face: { width: '520 mm', height: '400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: '160 N/m' } } },
  { file: 'window-seat', name: 'Window seat', count: 6, rest: { face: { width: '700 mm', height: '500 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: '150 N/m' } } },
  { file: 'market-row', name: 'Market row', count: 4, rest: { face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }], cloth: { pull: '150 N/m' } } },
  { file: 'long-table', name: 'Long table', count: 2, rest: { face: { width: '1100 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: '1/2', stock: 'square-38x38', lay: 'flat' }] } },
] as const;

const people = ['Noor', 'Bram', 'Iva'] as const;
const rad = Math.PI / 180;
const truth: Truth = {
  twist: { mean: 0.6 * rad, sd: 0.9 * rad }, bow: { mean: 0, sd: 0.006 }, crook: { mean: 0, sd: 0.0025 },
  ln_give: { mean: Math.log(6), sd: 0.4 }, ln_pull: { mean: Math.log(1.15), sd: 0.1 }, moisture: { mean: -1.5, sd: 0.8 },
};
const unsighted: Truth = { ...truth, twist: { mean: 1.2 * rad, sd: 1.8 * rad } };

/** The files of the year by name. */
export function yearFiles(): readonly { readonly file: string; readonly text: string }[] {
  const chance = new Chance(2027);
  const head = (kind: string): string => `# yaml-language-server: $schema=../../../rules/schema/${kind}.schema.json\n# An example of the Gullmark Street Studio in Port Ellery. Studio, town, people and readings are invented.\n`;
  let built = 0;
  return plans.flatMap(({ file, name, count, rest }) => {
    const text = stringify({ plan: 1, name, count, ...rest });
    const plan = readPlanWith(text, `${file}.yaml`, shelf);
    if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
    const answer = answerOf(plan.value, shelf)!;
    const frames = Array.from({ length: count }, (_, i) => {
      const student = people[built++ % people.length]!;
      const { sheets } = build(answer, i + 1, student === 'Bram' ? unsighted : truth, chance, { boards_read: student === 'Noor' ? 0.8 : 0, corners_loaded: 0.35 });
      return sheets.map(({ sheet }, stage) => {
        const boards = student === 'Noor' ? sheet.boards : [];
        const written = sheetText({ ...sheet, boards, student, ...(stage === 0 ? { diagonals_mm: diagonals(answer.model.plan.face, chance) } : {}) } satisfies Sheet);
        const slip = file === 'market-row' && i === 0 && stage === 0 ? written.replace(/^corner-lift: .*$/mu, 'corner-lift: 31 mm') : written;
        return { file: `${file}-${i + 1}-${stage === 0 ? 'bare' : 'cloth'}.yaml`, text: head('sheet') + slip };
      });
    });
    return [{ file: `${file}.yaml`, text: head('plan') + text }, ...frames.flat()];
  });
}

function diagonals({ width_mm, height_mm }: { readonly width_mm: number; readonly height_mm: number }, chance: Chance): readonly [number, number] {
  const diagonal = Math.hypot(width_mm, height_mm);
  const half = chance.normal(0, 1.2) / 2;
  return [diagonal + half, diagonal - half];
}

/** Writes the year into a folder. */
export function writeYear(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const { file, text } of yearFiles()) writeFileSync(join(folder, file), text);
}
