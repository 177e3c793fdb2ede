import type { FactSpec } from '../fact.js';

/** Facts about the cloth, its pull and its fixing. */
export const clothSpecs: readonly FactSpec[] = [
  { path: 'cloth.cut_width_mm', each: 'cloth', unit: 'mm', meaning: 'Width to cut the cloth: face, depth, wrap, turn and an allowance to grip.', source: 'practice' },
  { path: 'cloth.cut_height_mm', each: 'cloth', unit: 'mm', meaning: 'Height to cut the cloth.', source: 'practice' },
  { path: 'cloth.roll_short_mm', each: 'cloth', unit: 'mm', signed: false, meaning: 'How much the roll is too narrow for the cut cloth; zero or less when it fits.', source: 'physics' },
  { path: 'cloth.overlap_mm', each: 'cloth', unit: 'mm', meaning: 'Cloth beyond the line of staples.', source: 'practice' },
  { path: 'cloth.staple_spacing_mm', each: 'cloth', unit: 'mm', meaning: 'Distance between staples.', source: 'practice' },
  { path: 'cloth.staple_load_N', each: 'cloth', unit: 'N', meaning: 'Pull on one staple at peak.', source: 'physics' },
  { path: 'cloth.staples_on_steel_count', each: 'cloth', unit: 'count', meaning: 'Staples of the back that would meet the steel of a corner angle, because the wood beside it is too narrow for them.', source: 'physics' },
  { path: 'cloth.pull_low_N_per_m', each: 'cloth', unit: 'N/m', meaning: 'The smaller working pull of the two directions.', source: 'physics' },
  { path: 'cloth.pull_high_N_per_m', each: 'cloth', unit: 'N/m', meaning: 'The larger working pull of the two directions.', source: 'physics' },
  { path: 'cloth.tap_note_low_Hz', each: 'cloth', unit: 'Hz', meaning: 'Lowest note of the tapped cloth that still means the working pull.', source: 'rayleigh' },
  { path: 'cloth.tap_note_high_Hz', each: 'cloth', unit: 'Hz', meaning: 'Highest note of the tapped cloth that still means the working pull.', source: 'rayleigh' },
  { path: 'cloth.push_sag_mm', each: 'cloth', unit: 'mm', meaning: 'How far a 500 g weight on a 50 mm pad sinks in the middle at working pull.', source: 'physics' },
  { path: 'cloth.clearance_mm', each: 'cloth', unit: 'mm', signed: false, meaning: 'Room left between the cloth under a firm brush and the crossbar or corner brace behind it (or the wall, when there is no crossbar); negative when they touch.', source: 'physics' },
  { path: 'cloth.relax_share', each: 'cloth', unit: 'share', meaning: 'Share of the working pull lost in the middle because the bars bow in, once bow and stretch balance; 0 where they bow out.', source: 'physics' },
  { path: 'cloth.key_travel_mm', each: 'cloth', unit: 'mm', meaning: 'Most that each corner may be keyed out along one side before the ground may crack (bare cloth: before it passes the peak pull).', source: 'janas-2022' },
  { path: 'cloth.seasonal_swing_N_per_m', each: 'cloth', unit: 'N/m', meaning: 'Rough change of pull between the room’s driest and dampest.', source: 'hedley-1988' },
];
