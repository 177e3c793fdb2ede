import { barNames } from '../base/names.js';
import { waitForBoards } from '../mechanics/moisture/board-drying.js';
import { movement_mm } from '../mechanics/moisture/movement.js';
import { roomMoisture } from '../mechanics/moisture/room-moisture.js';
import type { Model } from '../model/model.js';
import { declareFacts } from './declare.js';

/** The boards in their room. */
const inRoom = (model: Model) => ({ model, room: roomMoisture(model.plan.room) });

const usually = { moved_by: 'boards', known_from: 'plan', frame_by_frame: 'boards' } as const;

/** The wood as chosen, and what the room does to it: moisture, days to wait, knots, way of choosing. */
export const lumberFacts = declareFacts(
  { each: 'frame', of: ({ model }) => [['frame', inRoom(model)]] as const },
  usually,
)({
  'lumber.moisture_pct': {
    unit: 'pct',
    source: 'physics',
    meaning: 'Moisture of the boards when they are chosen and cut.',
    value: ({ model: { plan } }) => plan.lumber.moisture_pct,
  },
  'lumber.room_moisture_pct': {
    unit: 'pct',
    source: 'wood-handbook-2010',
    meaning: 'Moisture the boards settle to in the room (middle of its humidity range).',
    value: ({ room }) => room.middle_pct,
  },
  'lumber.moisture_gap_pct': {
    unit: 'pct',
    source: 'wood-handbook-2010',
    signed: true,
    told: 'points',
    meaning:
      'Moisture of the boards now less the moisture they settle to, in percentage points; drying to come is positive.',
    value: ({ model: { plan }, room }) => plan.lumber.moisture_pct - room.middle_pct,
  },
  'lumber.wait_days': {
    unit: 'days',
    source: 'crank',
    meaning:
      'Days for the boards to go nine tenths of the way to the room’s moisture, unglued and with all faces open.',
    value: ({ model }) => waitForBoards(model).days,
  },
  'lumber.knots': {
    unit: 'word',
    source: 'practice',
    words: ['none', 'few', 'many'],
    meaning: 'Knots in the boards as the plan says.',
    value: ({ model: { plan } }) => plan.lumber.knots,
  },
  'lumber.chosen': {
    unit: 'word',
    source: 'practice',
    words: ['unsorted', 'plain', 'picked'],
    meaning:
      'How the boards are chosen: unsorted, plain (a glance along each), picked (sighted and checked with winding sticks).',
    value: ({ model: { plan } }) => plan.lumber.chosen,
  },
});

/**
 * Each bar as the room swells and shrinks it: across the rings as its species does tangentially, the larger of its two
 * movements, since which way the rings lie is not known.
 */
export const seasonFacts = declareFacts(
  {
    each: 'bar',
    of: ({ model }) =>
      barNames.map((name) => [name, { build: model.bars[name], room: roomMoisture(model.plan.room) }] as const),
  },
  { source: 'wood-handbook-2010', moved_by: 'build', known_from: 'plan' },
)({
  'bar.seasonal_width_mm': {
    unit: 'mm',
    meaning: 'How much the bar swells and shrinks across its width between the room’s driest and dampest.',
    value: ({ build: { section, stock }, room }) =>
      movement_mm(section.w_mm, stock.species.change_tangential, room.driest_pct, room.dampest_pct),
  },
});
