import type { FactSpec } from '../fact.js';

/** Facts about natural warp, moisture and the boards as chosen. */
export const warpSpecs: readonly FactSpec[] = [
  { path: 'warp.corner_lift_mean_mm', each: 'frame', unit: 'mm', signed: true, meaning: 'Expected lift of one corner above the plane of the other three, towards the viewer positive.', source: 'physics' },
  { path: 'warp.corner_lift_sd_mm', each: 'frame', unit: 'mm', meaning: 'Standard deviation of the corner lift over frames built like this.', source: 'physics' },
  { path: 'warp.corner_lift_p90_mm', each: 'frame', unit: 'mm', meaning: 'Nine frames in ten built like this lift a corner by less than this.', source: 'physics' },
  { path: 'warp.corner_lift_chance', each: 'frame', unit: 'chance', meaning: 'Chance that a frame built like this, of boards of average stiffness, lifts a corner by more than the limit `corner-lift` at working pull.', source: 'physics' },
  { path: 'warp.corner_lift_chance_soft', each: 'frame', unit: 'chance', meaning: 'The same chance for boards as soft as one in twenty (0.67 of the mean stiffness).', source: 'physics' },
  { path: 'warp.bar_bow_chance', each: 'frame', unit: 'chance', meaning: 'Chance that at least one bar stands out of plane by more than the limit `bar-bow`, from sampling.', source: 'physics' },
  { path: 'warp.cause_share', each: 'frame', unit: 'share', meaning: 'Share of the variance of the corner lift by cause; the cause stands in `about`.', source: 'physics' },
  { path: 'bar.natural_bow_p90_mm', each: 'bar', unit: 'mm', meaning: 'Nine bars in ten, in the assembled frame at working pull, stand out of plane by less than this from natural warp alone.', source: 'physics' },
  { path: 'bar.natural_crook_p90_mm', each: 'bar', unit: 'mm', meaning: 'Nine bars in ten, in the assembled frame at working pull, stand out of straight in the plane of the cloth by less than this from natural warp alone, at their worst place.', source: 'physics' },
  { path: 'bar.seasonal_width_mm', each: 'bar', unit: 'mm', meaning: 'How much the bar swells and shrinks across its width between the room’s driest and dampest.', source: 'wood-handbook-2010' },
  { path: 'corner.mitre_gap_mm', each: 'corner', unit: 'mm', meaning: 'How far one end of the mitre opens when the boards dry from their moisture now to the room’s driest.', source: 'physics' },
  { path: 'lumber.moisture_pct', each: 'frame', unit: 'pct', meaning: 'Moisture of the boards when they are chosen and cut.', source: 'physics' },
  { path: 'lumber.room_moisture_pct', each: 'frame', unit: 'pct', meaning: 'Moisture the boards settle to in the room (middle of its humidity range).', source: 'wood-handbook-2010' },
  { path: 'lumber.moisture_gap_pct', each: 'frame', unit: 'pct', signed: true, told: 'points', meaning: 'Moisture of the boards now less the moisture they settle to, in percentage points; drying to come is positive.', source: 'wood-handbook-2010' },
  { path: 'lumber.wait_days', each: 'frame', unit: 'days', meaning: 'Days for the boards to go nine tenths of the way to the room’s moisture, unglued and with all faces open.', source: 'crank' },
  { path: 'lumber.knots', each: 'frame', unit: 'word', words: ['none', 'few', 'many'], meaning: 'Knots in the boards as the plan says.', source: 'practice' },
  { path: 'lumber.chosen', each: 'frame', unit: 'word', words: ['unsorted', 'plain', 'picked'], meaning: 'How the boards are chosen: unsorted, plain (a glance along each), picked (sighted and checked with winding sticks).', source: 'practice' },
  { path: 'board.twist_deg_per_m', each: 'board', unit: 'ratio', signed: true, meaning: 'Natural twist of the board expected or measured, degrees per metre, right-handed positive.', source: 'physics' },
  { path: 'board.measured', each: 'board', unit: 'word', words: ['yes', 'no'], meaning: 'Whether the twist of this board was read; a board of which only bow or crook was read keeps the twist of its kind.', source: 'physics' },
];
