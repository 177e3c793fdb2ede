/** What kind of change can move a fact: how the frame is built, how its boards are chosen and dried and paired, how it hangs, how far its crossbars stand back. */
export type FactGroup = 'build' | 'boards' | 'hanging' | 'setback';

const groups: readonly (readonly [FactGroup, RegExp])[] = [
  ['setback', /^(cloth\.clearance_mm|hanging\.in_the_way_count)$/],
  ['boards', /^(warp\.|board\.|lumber\.|frame\.pairing$||bar\.natural_|corner\.mitre_gap_mm$|fastening\.split_risk$|cutting\.boards$|cutting\.cost$)/],
  ['hanging', /^(hanging\.|frame\.weight_kg$|frame\.lift_people$|cutting\.(total|used)_cost$)/],
];

/** What everything costs follows boards to pick from as well as hooks and wire; it is asked with the hanging, and dearer boards are left to the full audit. */
export const movedByBoardsToo: ReadonlySet<string> = new Set(['cutting.total_cost', 'cutting.used_cost']);
/** Whether the wire meets a crossbar follows the hanging as well as the setback; it is asked with the setback, the hanging already chosen. */
export const movedByHangingToo: ReadonlySet<string> = new Set(['hanging.in_the_way_count']);

/** Changing boards, hanging or setback moves facts of that group only, but for those named above; a test over random plans holds this table to it. */
export function groupOf(path: string): FactGroup {
  return groups.find(([, pattern]) => pattern.test(path))?.[0] ?? 'build';
}

/** Facts that need samples of frames; everything else is exact without. */
export const isSampled = (path: string): boolean => path === 'warp.bar_bow_chance' || path === 'bar.natural_bow_p90_mm';
