import { spokenName } from '../base/names.js';
import { formatNumber, formatQuantity } from '../base/units-format.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Model } from '../model/model.js';
import { expectedParts } from './conditioning.js';
import { cureFor } from './cures.js';
import type { CauseKind, Diagnosis, LikelyCause } from './diagnose.js';
import type { FrameAsRead } from './frame-as-read.js';
import { liftParts, type LiftPart } from './lift-parts.js';
import { factOf, type Promised } from './promised.js';
import { clothOn, type Sheet } from './sheet.js';

/** Causes expected to make less than this share of the lift are told together. */
const small_share = 0.03;

/**
 * Why a corner stands up by what was read, most likely first. Each cause's part is its expected value given the lift,
 * all causes taken as independent
 * and normal; the parts add up to the lift. Past the critical pull nothing can be shared out, and that cause stands
 * alone.
 */
export function likelyCauses(promised: Promised, sheet: Sheet, frame: FrameAsRead, size_mm: number): Diagnosis {
  const { model, solution } = promised;
  const past = pastCritical(promised, sheet, frame);
  if (frame.influence === null) return { ...signed(sheet, size_mm, 0), causes: past };
  const harder = frame.pull_share > 1;
  const parts = liftParts(
    asMoistAsRead(model, sheet),
    frame.influence,
    harder ? solution.influence : null,
    offSquare_rad(promised, sheet),
  );
  const mean = parts.reduce((sum, part) => sum + part.mean, 0);
  const found = signed(sheet, size_mm, mean);
  const expected = expectedParts(parts, found.lift_mm);
  const toward = found.lift_mm < 0 ? -1 : 1;
  const at_planned = expected.map((mm, i) => toward * mm * parts[i]!.at_planned_pull);
  const extra_mm = size_mm - at_planned.reduce((sum, mm) => sum + mm, 0);
  const groups = grouped(parts, at_planned);
  const pull: LikelyCause[] =
    harder && solution.influence !== null
      ? [
          {
            name: `cloth that pulls ${formatNumber(frame.pull_share, 2)} times as hard as planned`,
            kind: 'pull',
            part_mm: extra_mm,
            cure: cureFor('pull', sheet, promised),
          },
        ]
      : [];
  const causes = [
    ...pull,
    ...groups.map(({ kind, members, mm }): LikelyCause => ({
      name: nameOf(kind, members, sheet),
      kind,
      part_mm: mm,
      cure: cureFor(kind, sheet, promised),
    })),
  ];
  return { ...found, causes: [...past, ...gathered(causes, size_mm)] };
}

/** Moisture that was read takes the place of the plan's: it decides how much warp came from drying. */
export function asMoistAsRead(model: Model, { moisture_pct }: Pick<Sheet, 'moisture_pct'>): Model {
  if (moisture_pct === null) return model;
  return { ...model, plan: { ...model.plan, lumber: { ...model.plan.lumber, moisture_pct } } };
}

/** The lift with its sign: as the sheet says, else to the side the mean of such frames leans. */
function signed(sheet: Sheet, size_mm: number, mean_mm: number): Omit<Diagnosis, 'causes'> {
  const positive =
    sheet.lifted === null ? mean_mm >= 0 : sheet.lifted === 'top-right' || sheet.lifted === 'bottom-left';
  return {
    lift_mm: positive ? size_mm : -size_mm,
    lifted: sheet.lifted ?? (positive ? 'top-right' : 'top-left'),
    corner_said: sheet.lifted !== null,
  };
}

/**
 * Angle by which the corners are off square, rad, as the two diagonals tell: their difference over
 * 2·width·height/diagonal.
 */
function offSquare_rad({ plan: { face } }: Promised, { diagonals_mm }: Sheet): number {
  if (diagonals_mm === null) return 0;
  const [one, other] = diagonals_mm;
  return (Math.abs(one - other) * Math.hypot(face.width_mm, face.height_mm)) / (2 * face.width_mm * face.height_mm);
}

function pastCritical(promised: Promised, sheet: Sheet, { pull, pull_share }: FrameAsRead): readonly LikelyCause[] {
  const { model, solution } = promised;
  const factor = solution.stability.load_factor;
  if (!clothOn(sheet) || factor === null || solution.stability.mode !== 'propeller') return [];
  const share = shelfNumber(model.shelf, 'stiffness-share');
  const read = pull?.value ?? pull_share;
  if (read < share * factor) return [];
  const critical = formatQuantity(
    Number((factOf(promised, 'frame.critical_pull_N_per_m') ?? Number.NaN).toPrecision(2)),
    'N/m',
    model.plan.units,
  );
  const sure = read >= factor;
  const name = sure
    ? `the pull is past what the flat frame stands (about ${critical}): it has turned into a propeller`
    : `the pull is past what a flat frame of soft boards stands (average boards: about ${critical})`;
  return [{ name, kind: 'past-critical', part_mm: null, cure: cureFor('past-critical', sheet, promised) }];
}

interface Group {
  readonly kind: CauseKind;
  readonly members: string[];
  mm: number;
}

/** Opposite bars stand together, so do crossbars, and so do corners. */
function grouped(parts: readonly LiftPart[], mm: readonly number[]): readonly Group[] {
  const groups = new Map<string, Group>();
  parts.forEach((part, i) => {
    if (part.variance === 0 && part.mean === 0) return;
    const key = `${part.kind} ${pairOf(part.member)}`;
    const group = groups.get(key) ?? { kind: part.kind, members: [], mm: 0 };
    if (!group.members.includes(part.member)) group.members.push(part.member);
    group.mm += mm[i]!;
    groups.set(key, group);
  });
  return [...groups.values()];
}

function pairOf(member: string): string {
  if (member === 'top' || member === 'bottom') return 'level';
  if (member === 'left' || member === 'right') return 'upright';
  return member.startsWith('crossbar') ? 'crossbars' : '';
}

const partWords = { chosen: 'as chosen', reading: 'as measured', drying: 'from drying after choosing' } as const;

function nameOf(kind: CauseKind, members: readonly string[], sheet: Sheet): string {
  if (kind === 'corners')
    return sheet.diagonals_mm === null
      ? 'corners whose cuts lean'
      : 'corners whose cuts lean, the diagonals considered';
  if (kind === 'reading') return 'the reading itself';
  const [from, part] = kind.split('-') as [string, keyof typeof partWords];
  const who =
    pairOf(members[0] ?? '') === 'crossbars'
      ? members.length === 1
        ? spokenName(members[0]!)
        : 'the crossbars'
      : members.join(' and ');
  return `${from} of ${who} ${partWords[part]}`;
}

/** Largest first; what is small either way goes into one last line, so that all still adds up. */
function gathered(causes: readonly LikelyCause[], size_mm: number): readonly LikelyCause[] {
  const large = causes
    .filter(({ part_mm }) => Math.abs(part_mm ?? 0) >= small_share * size_mm)
    .sort((a, b) => (b.part_mm ?? 0) - (a.part_mm ?? 0));
  const rest = causes.filter((cause) => !large.includes(cause));
  if (rest.length === 0) return large;
  return [
    ...large,
    {
      name: 'everything else',
      kind: 'rest',
      part_mm: rest.reduce((sum, { part_mm }) => sum + (part_mm ?? 0), 0),
      cure: '',
    },
  ];
}
