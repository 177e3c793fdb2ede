import { stringify } from 'yaml';
import type { Sheet } from '../../src/bench-sheet/sheet.js';

const mm = (value: number, to = 0.5): string => `${Math.round(value / to) * to} mm`;
const deg = 180 / Math.PI;

/** A sheet as a person would write it: rounded to what is read at the bench. */
export function sheetText(sheet: Sheet): string {
  const perBar = (block: Sheet['bow_mm']): object | undefined => (Object.keys(block).length === 0 ? undefined : Object.fromEntries(Object.entries(block).map(([bar, value]) => [bar, mm(value)])));
  return stringify({
    sheet: 1,
    plan: sheet.plan ?? undefined,
    frame: sheet.frame ?? undefined,
    student: sheet.student ?? undefined,
    when: sheet.when,
    diagonals: sheet.diagonals_mm?.map((value) => mm(value, 1)),
    'corner-lift': sheet.corner_lift_mm === null ? undefined : mm(sheet.corner_lift_mm),
    lifted: sheet.lifted ?? undefined,
    bow: perBar(sheet.bow_mm),
    'inward-bow': perBar(sheet.inward_bow_mm),
    tap: sheet.tap_Hz === null ? undefined : `${Math.round(sheet.tap_Hz * 10) / 10} Hz`,
    weight: sheet.weight_kg === null ? undefined : `${Math.round(sheet.weight_kg * 100) / 100} kg`,
    moisture: sheet.moisture_pct === null ? undefined : `${Math.round(sheet.moisture_pct * 2) / 2} %`,
    boards: sheet.boards.length === 0 ? undefined : sheet.boards.map(({ for: bar, mark, twist_rad_per_m, bow_per_m, crook_per_m }) => ({
      for: bar, mark: mark ?? undefined, twist: `${Math.round((twist_rad_per_m ?? 0) * deg * 10) / 10} deg/m`, bow: `${Math.round((bow_per_m ?? 0) * 1e4) / 1e4} /m`, crook: `${Math.round((crook_per_m ?? 0) * 1e4) / 1e4} /m`,
    })),
    'test-joints': sheet.test_joints.length === 0 ? undefined : sheet.test_joints.map(({ way, weight_g, arm_mm, moves_mm }) => ({ way, weight: `${weight_g / 1000} kg`, arm: `${arm_mm} mm`, moves: `${Math.max(0.1, Math.round(moves_mm * 10) / 10)} mm` })),
  }, { keepUndefined: false, flowCollectionPadding: true });
}
