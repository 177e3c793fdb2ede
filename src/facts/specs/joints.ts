import type { FactSpec } from '../fact.js';

/** Facts about corners and fastenings. */
export const jointSpecs: readonly FactSpec[] = [
  { path: 'corner.moment_Nm', each: 'corner', unit: 'Nm', meaning: 'In-plane bending moment in the corner at peak pull.', source: 'physics' },
  { path: 'corner.use_normal', each: 'corner', unit: 'ratio', meaning: 'Demand over capacity of the corner at peak pull.', source: 'physics' },
  { path: 'corner.use_accidental', each: 'corner', unit: 'ratio', meaning: 'Demand over capacity of the corner at the accidental pull (a knock, a soaked cloth).', source: 'physics' },
  { path: 'corner.governs', each: 'corner', unit: 'word', words: ['glue', 'nails', 'tongue', 'brace', 'gusset', 'angle', 'nothing'], told: { glue: 'only the glue holds it', nails: 'only the nails hold it', tongue: 'only the tongue holds it', brace: 'it holds as much as its brace does', gusset: 'it holds as much as its gusset does', angle: 'it holds as much as its angle does', nothing: 'nothing holds it' }, meaning: 'The part of the corner whose capacity decides.', source: 'physics' },
  { path: 'fastening.pilot_mm', each: 'fastening', unit: 'mm', meaning: 'Diameter of the lead hole, as planned or as picked from the drills on hand.', source: 'nds-2018' },
  { path: 'fastening.pilot_rule_mm', each: 'fastening', unit: 'mm', meaning: 'Largest lead hole the density class of the wood allows.', source: 'nds-2018' },
  { path: 'fastening.root_mm', each: 'fastening', unit: 'mm', meaning: 'Root diameter of the screw, or diameter of the nail: a hole wider than this holds nothing.', source: 'nds-2018' },
  { path: 'fastening.role', each: 'fastening', unit: 'word', words: ['clamp', 'load'], meaning: 'What the fastening is for: clamp = glue carries the joint and the fastening holds it while it sets; load = the fastening carries the joint for good.', source: 'physics' },
  { path: 'fastening.use', each: 'fastening', unit: 'ratio', meaning: 'Load on one fastening at peak pull over its design value; nothing where glue carries the joint and the fastening only clamps.', source: 'nds-2018' },
  { path: 'fastening.exit_mm', each: 'fastening', unit: 'mm', signed: false, meaning: 'Wood left beyond the tip; negative when the tip comes out.', source: 'physics' },
  { path: 'fastening.reach_mm', each: 'fastening', unit: 'mm', signed: false, meaning: 'How far the tip goes into the piece it has to hold; negative when it stops short of it.', source: 'physics' },
  { path: 'fastening.penetration_share', each: 'fastening', unit: 'share', meaning: 'Penetration into the holding piece over the least the standard asks (6 diameters).', source: 'nds-2018' },
  { path: 'fastening.edge_share', each: 'fastening', unit: 'share', meaning: 'Distance to the edge over the least wanted.', source: 'nds-2018' },
  { path: 'fastening.end_share', each: 'fastening', unit: 'share', meaning: 'Distance to the end of the piece over the least wanted.', source: 'nds-2018' },
  { path: 'fastening.spacing_share', each: 'fastening', unit: 'share', meaning: 'Spacing along the grain over the least wanted.', source: 'nds-2018' },
  { path: 'fastening.split_risk', each: 'fastening', unit: 'word', words: ['low', 'some', 'high'], meaning: 'How likely the wood splits, from thickness, density, moisture and the hole drilled.', source: 'en1995-1-1' },
  { path: 'fastening.count', each: 'fastening', unit: 'count', meaning: 'How many of this fastening the frame takes.', source: 'physics' },
  { path: 'fastening.in_the_way_count', each: 'fastening', unit: 'count', meaning: 'How many of this fastening would meet a brace, a crossbar, a hanging point or another screw, and could not be moved.', source: 'physics' },
  { path: 'frame.glue_ml', each: 'frame', unit: 'ml', meaning: 'Glue for all joints and plies of one frame.', source: 'practice' },
  { path: 'frame.clamps_count', each: 'frame', unit: 'count', meaning: 'Clamps for the longest glued blank at one go.', source: 'practice' },
];
