import { formatLength, formatQuantity } from '../base/units-format.js';
import { readQuantity } from '../base/units.js';
import type { Problem } from '../base/problem.js';
import type { Path, YamlSource } from '../base/yaml-document.js';
import { pliesOf } from './plies-of.js';
import type { PlanInput } from './plan-schema.js';
import type { Plan } from './plan.js';

/**
 * What a plan gets wrong by itself, without looking at the shelf: parts that contradict each other. Errors and
 * warnings.
 */
export function checkAlone(plan: Plan, input: PlanInput, source: YamlSource): Problem[] {
  return [
    ...checkPulls(plan, input, source),
    ...checkBoards(plan, input, source),
    ...checkCrossbars(plan, source),
    ...checkScrews(plan, input, source),
    ...checkHanging(plan, source),
    ...checkBrace(plan, source),
    ...checkKeyed(plan, source),
  ];
}

function checkPulls(plan: Plan, input: PlanInput, source: YamlSource): Problem[] {
  const problems: Problem[] = [];
  const pull = input.cloth?.pull;
  if (pull === undefined || typeof pull === 'string') return problems;
  const path: Path = ['cloth', 'pull'];
  if ((pull.x !== undefined || pull.y !== undefined) && (pull.working !== undefined || pull.peak !== undefined))
    problems.push(source.problem('two-kinds-of-pull', path));
  const blocks: (readonly [Path, unknown])[] = [
    [path, pull],
    [[...path, 'working'], pull.working],
    [[...path, 'peak'], pull.peak],
  ];
  for (const [at, block] of blocks) {
    if (typeof block !== 'object' || block === null) continue;
    const { x, y } = block as { readonly x?: string; readonly y?: string };
    if ((x === undefined) !== (y === undefined))
      problems.push(source.problem('half-a-pull', at, { name: x === undefined ? 'y' : 'x' }));
  }
  const { working, peak } = plan.cloth;
  for (const way of ['x_N_per_m', 'y_N_per_m'] as const) {
    if (peak[way] >= working[way]) continue;
    problems.push(
      source.problem('peak-below-working', pull.peak === undefined ? path : [...path, 'peak'], {
        value: formatQuantity(peak[way], 'N/m', plan.units),
        allowed: formatQuantity(working[way], 'N/m', plan.units),
      }),
    );
    break;
  }
  return problems;
}

function checkBoards(plan: Plan, input: PlanInput, source: YamlSource): Problem[] {
  const seen = new Set<string>();
  return plan.boards.flatMap((board, index) => {
    const problems: Problem[] = [];
    const path: Path = ['boards', index];
    const written = input.boards?.[index];
    const plies = pliesOf(plan, board.for);
    if (plies === null)
      problems.push(
        source.problem('no-such-crossbar', [...path, 'for'], {
          value: board.for,
          allowed: String(plan.crossbars.length),
        }),
      );
    else if (board.ply > plies)
      problems.push(
        source.problem('ply-beyond-plies', [...path, 'ply'], { value: String(board.ply), allowed: String(plies) }),
      );
    const name = `${board.for}, ply ${board.ply}`;
    if (seen.has(name)) problems.push(source.problem('board-twice', path, { value: name }));
    seen.add(name);
    for (const kind of ['bow', 'crook'] as const) {
      const rise = written?.[kind];
      if (rise !== undefined && written?.over === undefined && readQuantity(rise, 'length').ok)
        problems.push(source.problem('bow-without-over', [...path, kind], { name: kind }));
    }
    return problems;
  });
}

function checkCrossbars(plan: Plan, source: YamlSource): Problem[] {
  return plan.crossbars.flatMap((crossbar, index) =>
    crossbar.at > 0 && crossbar.at < 1
      ? []
      : [
          source.problem('at-outside', ['crossbars', index, 'at'], {
            value: source.written(['crossbars', index, 'at']),
          }),
        ],
  );
}

function checkScrews(plan: Plan, input: PlanInput, source: YamlSource): Problem[] {
  const screws = input['ply-screws'];
  const { bond } = plan.bars;
  if (screws === 'none' && (bond === 'screws' || bond === 'glue+screws'))
    return [source.problem('ply-screws-missing', ['ply-screws'], { value: bond })];
  if (screws === undefined || screws === 'none') return [];
  if (plan.bars.plies === 1 && plan.crossbars.every(({ plies }) => plies === 1))
    return [source.warning('screws-without-plies', ['ply-screws'])];
  return plan.ply_screws === null
    ? [source.problem('screws-without-bond', ['ply-screws'], { value: plan.bars.bond }, 'key')]
    : [];
}

function checkHanging(plan: Plan, source: YamlSource): Problem[] {
  const { hang, face, units } = plan;
  if (hang.by === 'none') return [];
  if ((hang.by === 'two-hooks' || hang.by === 'd-rings') && hang.hooks !== 2)
    return [source.problem('one-of-two-hooks', ['hang', 'hooks'])];
  if (hang.drop_mm >= face.height_mm)
    return [
      source.problem('drop-too-deep', ['hang', 'drop'], {
        value: formatLength(hang.drop_mm, units),
        allowed: formatLength(face.height_mm, units),
      }),
    ];
  return hang.by === 'wire' && hang.slack_mm > hang.drop_mm
    ? [
        source.warning('wire-above-frame', ['hang', 'slack'], {
          value: formatLength(hang.slack_mm, units),
          allowed: formatLength(hang.drop_mm, units),
        }),
      ]
    : [];
}

function checkBrace(plan: Plan, source: YamlSource): Problem[] {
  const { brace } = plan.corners;
  const half_mm = Math.min(plan.face.width_mm, plan.face.height_mm) / 2;
  if (brace === null || brace.leg_mm < half_mm) return [];
  return [
    source.problem('leg-too-long', ['corners', 'brace', 'leg'], {
      value: formatLength(brace.leg_mm, plan.units),
      allowed: formatLength(half_mm, plan.units),
    }),
  ];
}

/** A keyed corner opens: whatever would hold it shut contradicts it. */
function checkKeyed({ corners }: Plan, source: YamlSource): Problem[] {
  if (corners.cut !== 'keyed') return [];
  const held: (readonly [string, string, unknown])[] = [
    ['glue', 'glue', corners.glue],
    ['nails', 'nails', corners.nails],
    ['brace', 'a brace', corners.brace],
  ];
  return held.flatMap(([key, name, there]) =>
    there === null ? [] : [source.problem('keyed-stays-dry', ['corners', key], { name })],
  );
}
