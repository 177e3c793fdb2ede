import type { FactSpec } from '../fact.js';

/** Facts that say what the plan chose, in the words of the plan and the keys of the shelf. */
export const choiceSpecs: readonly FactSpec[] = [
  { path: 'frame.lay', each: 'frame', unit: 'word', words: ['flat', 'edge', 'square'], meaning: 'How the boards of the bars lie; square boards lie either way.', source: 'physics' },
  { path: 'frame.plies_count', each: 'frame', unit: 'count', meaning: 'How many boards make up each bar.', source: 'physics' },
  { path: 'frame.pairing', each: 'frame', unit: 'word', words: ['single', 'opposed', 'unsorted', 'matched'], meaning: 'Whether the bows of the boards of a bar are set against each other.', source: 'physics' },
  { path: 'frame.corner_cut', each: 'frame', unit: 'word', words: ['mitre', 'butt', 'half-lap', 'keyed'], meaning: 'How the corners are cut; keyed corners stay dry and are opened with keys.', source: 'physics' },
  { path: 'frame.corner_glue', each: 'frame', unit: 'word', meaning: 'The glue of the corners: its key on the shelf, or none.', source: 'physics' },
  { path: 'frame.corner_brace', each: 'frame', unit: 'word', words: ['none', 'timber', 'ply-gusset', 'steel-angle'], meaning: 'What stiffens the corners.', source: 'physics' },
  { path: 'cloth.fixed_to', each: 'cloth', unit: 'word', words: ['back', 'edge'], meaning: 'Where the cloth is fixed.', source: 'physics' },
  { path: 'bar.stock', each: 'bar', unit: 'word', meaning: 'What the bar is made of: its key on the shelf.', source: 'physics' },
  { path: 'bar.lay', each: 'bar', unit: 'word', words: ['flat', 'edge'], meaning: 'How the boards of the bar lie: flat against the cloth, or on edge.', source: 'physics' },
  { path: 'crossbar.stock', each: 'crossbar', unit: 'word', meaning: 'What the crossbar is made of: its key on the shelf.', source: 'physics' },
  { path: 'crossbar.w_mm', each: 'crossbar', unit: 'mm', meaning: 'Size of the built-up crossbar in the plane of the cloth.', source: 'physics' },
  { path: 'crossbar.d_mm', each: 'crossbar', unit: 'mm', meaning: 'Size of the built-up crossbar at right angles to the cloth.', source: 'physics' },
  { path: 'corner.cut', each: 'corner', unit: 'word', words: ['mitre', 'butt', 'half-lap', 'keyed'], meaning: 'How the corner is cut.', source: 'physics' },
  { path: 'corner.glue', each: 'corner', unit: 'word', meaning: 'The glue of the corner: its key on the shelf, or none.', source: 'physics' },
  { path: 'corner.nail', each: 'corner', unit: 'word', meaning: 'The nail of the corner: its key on the shelf, or none.', source: 'physics' },
  { path: 'corner.nails_count', each: 'corner', unit: 'count', meaning: 'How many nails hold the corner.', source: 'physics' },
  { path: 'corner.brace', each: 'corner', unit: 'word', words: ['none', 'timber', 'ply-gusset', 'steel-angle'], meaning: 'What stiffens the corner.', source: 'physics' },
  { path: 'cloth.use', each: 'cloth', unit: 'word', meaning: 'The cloth: its key on the shelf.', source: 'physics' },
  { path: 'cloth.ground', each: 'cloth', unit: 'word', words: ['bare', 'grounded'], meaning: 'Whether the cloth gets a ground.', source: 'physics' },
  { path: 'cloth.ground_coats_count', each: 'cloth', unit: 'count', meaning: 'How many coats of ground the cloth gets.', source: 'physics' },
];
