import type { FactSpec } from '../fact.js';

/** Facts about hanging the finished piece. */
export const hangingSpecs: readonly FactSpec[] = [
  { path: 'hanging.wire_tension_N', each: 'hanging', unit: 'N', meaning: 'Tension in the wire.', source: 'physics' },
  { path: 'hanging.wire_angle_deg', each: 'hanging', unit: 'deg', meaning: 'Angle of the wire to the horizontal under load.', source: 'physics' },
  { path: 'hanging.inward_pull_N', each: 'hanging', unit: 'N', meaning: 'How hard the wire draws each side bar inward.', source: 'physics' },
  { path: 'hanging.inward_bow_mm', each: 'hanging', unit: 'mm', meaning: 'Inward bow of the side bars with cloth pull and wire together.', source: 'physics' },
  { path: 'hanging.lean_deg', each: 'hanging', unit: 'deg', meaning: 'How far the top leans from the wall.', source: 'physics' },
  { path: 'hanging.top_standoff_mm', each: 'hanging', unit: 'mm', meaning: 'Gap between the wall and the top edge.', source: 'physics' },
  { path: 'hanging.hook_below_top_mm', each: 'hanging', unit: 'mm', signed: false, meaning: 'How far the hook and the wire stay below the top edge; negative when they show above it.', source: 'physics' },
  { path: 'hanging.hook_load_N', each: 'hanging', unit: 'N', meaning: 'Load on one wall hook, the pull away from the wall included.', source: 'physics' },
  { path: 'hanging.weight_kg', each: 'hanging', unit: 'kg', meaning: 'Weight that hangs: wood, cloth, ground, paint and hardware.', source: 'physics' },
  { path: 'hanging.hook_factor', each: 'hanging', unit: 'ratio', meaning: 'Rating of one hook over its load.', source: 'practice' },
  { path: 'hanging.wire_factor', each: 'hanging', unit: 'ratio', meaning: 'Breaking load of the wire over its tension.', source: 'practice' },
  { path: 'hanging.ring_use', each: 'hanging', unit: 'ratio', meaning: 'Load on a ring screw over its design withdrawal and shear, combined.', source: 'nds-2018' },
  { path: 'hanging.ring_exit_mm', each: 'hanging', unit: 'mm', signed: false, meaning: 'Wood left beyond the tip of the ring screw; negative when it comes out.', source: 'physics' },
  { path: 'hanging.in_the_way_count', each: 'hanging', unit: 'count', meaning: 'How many pieces of the frame (braces, crossbars) the wire or the hanging points run against; 0 where they could be moved clear.', source: 'physics' },
  { path: 'hanging.by', each: 'hanging', unit: 'word', words: ['wire', 'two-hooks', 'd-rings', 'cleat', 'none'], meaning: 'How the piece hangs.', source: 'physics' },
];
