/** What kind of change can move a fact: how the frame is built, how its boards are chosen and dried and paired, how it hangs, how far its crossbars stand back. */
export type FactGroup = 'build' | 'boards' | 'hanging' | 'setback';

const groups: readonly (readonly [FactGroup, RegExp])[] = [
  ['setback', /^(cloth\.clearance_mm|hanging\.in_the_way_count)$/],
  ['boards', /^(warp\.|board\.|lumber\.|frame\.pairing$|bar\.natural_|corner\.mitre_gap_mm$|fastening\.split_risk$|cutting\.boards$|cutting\.cost$)/],
  ['hanging', /^(hanging\.|frame\.weight_kg$|frame\.lift_people$|cutting\.(total|used)_cost$)/],
];

/** Changing boards, hanging or setback moves facts of that group only, but for a few that a test over random plans names, and holds this table to. */
export function groupOf(path: string): FactGroup {
  return groups.find(([, pattern]) => pattern.test(path))?.[0] ?? 'build';
}

/** Facts that need samples of frames; everything else is exact without. */
export const isSampled = (path: string): boolean => path === 'warp.bar_bow_chance' || path === 'bar.natural_bow_p90_mm';
