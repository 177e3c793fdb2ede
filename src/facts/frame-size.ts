import { fitsDoor, peopleToLift } from '../mechanics/lifting.js';
import { slip_deg, slipAngle } from '../what-if/slips.js';
import { diagonalsOfAngle_mm } from '../what-if/slips-geometry.js';
import { declareFacts } from './declare.js';

const usually = { source: 'physics', moved_by: 'build', known_from: 'plan' } as const;

/** The whole frame before any pull: its size, its weight, who lifts it and through which door it goes. */
export const frameSizeFacts = declareFacts(
  { each: 'frame', of: ({ model }) => [['frame', model]] as const },
  usually,
)({
  'frame.width_mm': {
    unit: 'mm',
    meaning: 'Outside width of the frame.',
    value: ({ plan }) => plan.face.width_mm,
  },
  'frame.height_mm': {
    unit: 'mm',
    meaning: 'Outside height of the frame.',
    value: ({ plan }) => plan.face.height_mm,
  },
  'frame.shorter_side_mm': {
    unit: 'mm',
    meaning: 'The shorter outside dimension.',
    value: ({ plan: { face } }) => Math.min(face.width_mm, face.height_mm),
  },
  'frame.longer_side_mm': {
    unit: 'mm',
    meaning: 'The longer outside dimension.',
    value: ({ plan: { face } }) => Math.max(face.width_mm, face.height_mm),
  },
  'frame.crossbars_count': {
    unit: 'count',
    meaning: 'How many crossbars the frame has.',
    value: ({ crossbars }) => crossbars.length,
  },
  'frame.diagonal_mm': {
    unit: 'mm',
    meaning: 'Corner-to-corner outside diagonal to measure when squaring the frame.',
    value: ({ plan: { face } }) => Math.hypot(face.width_mm, face.height_mm),
  },
  'frame.diagonal_difference_mm': {
    unit: 'mm',
    frame_by_frame: 'squaring',
    meaning: `How far the two diagonals would differ if the corners were cut ${slipAngle} off square.`,
    value: ({ plan: { face } }) => diagonalsOfAngle_mm(face.width_mm, face.height_mm, slip_deg),
  },
  'frame.weight_kg': {
    unit: 'kg',
    moved_by: 'hanging',
    frame_by_frame: 'lifting',
    meaning: 'Weight of the finished piece: wood, cloth, ground, paint and hardware.',
    value: ({ weight }) => weight.total_kg,
  },
  'frame.lift_people': {
    unit: 'count',
    source: 'niosh-94-110',
    moved_by: 'hanging',
    frame_by_frame: 'lifting',
    meaning: 'How many people should lift the finished piece.',
    value: ({ plan: { face }, weight }) => peopleToLift(weight.total_kg, face.width_mm, face.height_mm),
  },
  'frame.fits_door': {
    unit: 'word',
    words: ['yes', 'no', 'not-asked'],
    frame_by_frame: 'door',
    meaning: 'Whether the finished frame goes upright through the door the plan names.',
    value: ({ plan, bars }) =>
      fitsDoor(plan.face.width_mm, plan.face.height_mm, bars.top.section.d_mm + plan.bars.lip_mm, plan.door),
  },
});
