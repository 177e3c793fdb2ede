import { formatProblem } from '../base/file-format.js';
import { barNames, type BarName } from '../base/names.js';
import type { Problem, Result } from '../base/problem.js';
import { schemaProblems } from '../base/schema-problems.js';
import { readQuantity } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';
import { inFileOrder, limitProblems, readYaml, type YamlSource } from '../base/yaml-document.js';
import { readBoard } from '../plan/board-readings.js';
import { sheetInputSchema, type SheetInput } from './sheet-schema.js';
import type { Sheet } from './sheet.js';
import { sheetProblem } from './sheet-problems.js';

/** Reads a filled-in bench sheet, or tells every problem with its place. Never throws on any text. */
export function readSheet(text: string, file: string): Result<Sheet> {
  const { source, problems } = readYaml(text, file);
  if (source === null) return failed(problems);
  const wrongFormat = formatProblem(source, 'sheet');
  if (wrongFormat !== null) return failed([...problems, wrongFormat]);
  const checked = sheetInputSchema.safeParse(source.data);
  if (!checked.success) return failed([...problems, ...schemaProblems(sheetInputSchema, checked.error.issues, source)]);
  const all = [...problems, ...againstItself(checked.data, source)];
  return all.some(({ severity }) => severity === 'error')
    ? failed(all)
    : { ok: true, value: fillSheet(checked.data), warnings: inFileOrder(all) };
}

const failed = (problems: readonly Problem[]): Result<Sheet> => ({
  ok: false,
  problems: limitProblems(inFileOrder(problems)),
});

function againstItself(input: SheetInput, source: YamlSource): Problem[] {
  const problems: Problem[] = [];
  const count = input.diagonals?.length ?? 2;
  if (count !== 2)
    problems.push(
      sheetProblem('not-two-diagonals', source.place(['diagonals']), {
        value: count === 1 ? 'one length' : `${count} lengths`,
      }),
    );
  if (input.when === 'before-cloth') {
    for (const name of ['tap', 'push'] as const)
      if (input[name] !== undefined) problems.push(sheetProblem('no-cloth-yet', source.place([name], 'key'), { name }));
  }
  if (input.lifted !== undefined && input['corner-lift'] === undefined && input.winding === undefined)
    problems.push(sheetProblem('corner-without-lift', source.place(['lifted'], 'key')));
  const { sheet: _format, plan: _plan, when: _when, frame: _frame, student: _student, ...readings } = input;
  input.boards?.forEach((board, i) => {
    for (const kind of ['bow', 'crook'] as const) {
      const rise = board[kind];
      if (rise !== undefined && board.over === undefined && readQuantity(rise, 'length').ok)
        problems.push(source.problem('bow-without-over', ['boards', i, kind], { name: kind }));
    }
  });
  const some = Object.values(readings).some(
    (reading) =>
      reading !== undefined && (typeof reading !== 'object' || Object.values(reading).some((one) => one !== undefined)),
  );
  if (!some) problems.push(sheetProblem('nothing-read', source.place([]), {}, 'warning'));
  return problems;
}

function number(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

const orNull = (text: string | undefined, dimension: Dimension): number | null =>
  text === undefined ? null : number(text, dimension);

function perBar(block: SheetInput['bow']): Readonly<Partial<Record<BarName, number>>> {
  return Object.fromEntries(
    barNames.flatMap((bar) => (block?.[bar] === undefined ? [] : [[bar, number(block[bar], 'length')]])),
  );
}

function fillSheet(input: SheetInput): Sheet {
  const [one, other] = input.diagonals ?? [];
  const { push } = input;
  const weight_g = orNull(input.weight, 'mass');
  return {
    plan: input.plan?.trim() ?? null,
    when: input.when ?? 'after-cloth',
    when_said: input.when !== undefined,
    diagonals_mm: one === undefined || other === undefined ? null : [number(one, 'length'), number(other, 'length')],
    corner_lift_mm: orNull(input['corner-lift'], 'length'),
    lifted: input.lifted ?? null,
    winding_mm: orNull(input.winding, 'length'),
    bow_mm: perBar(input.bow),
    inward_bow_mm: perBar(input['inward-bow']),
    tap_Hz: orNull(input.tap, 'frequency'),
    push:
      push === undefined
        ? null
        : {
            weight_g: number(push.weight, 'mass'),
            sag_mm: number(push.sag, 'length'),
            pad_mm: orNull(push.pad, 'length'),
          },
    weight_kg: weight_g === null ? null : weight_g / 1000,
    moisture_pct: orNull(input.moisture, 'percent'),
    frame: input.frame ?? null,
    student: input.student?.trim() ?? null,
    boards: (input.boards ?? []).map((board) => ({
      for: board.for,
      ply: board.ply ?? 1,
      mark: board.mark?.trim() ?? null,
      ...readBoard(board),
    })),
    test_joints: (input['test-joints'] ?? []).map(({ way, weight, arm, moves }) => ({
      way,
      weight_g: number(weight, 'mass'),
      arm_mm: number(arm, 'length'),
      moves_mm: number(moves, 'length'),
    })),
  };
}
