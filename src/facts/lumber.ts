import { barNames, cornerNames } from '../base/names.js';
import { waitForBoards } from '../mechanics/moisture/board-drying.js';
import { lengthShrinkage, movement_mm } from '../mechanics/moisture/movement.js';
import { mitreGap_mm } from '../mechanics/moisture/mitre-gap.js';
import { roomMoisture, type RoomMoisture } from '../mechanics/moisture/room-moisture.js';
import type { Model } from '../model/model.js';
import type { Fact } from './fact.js';

/**
 * Facts about the wood as chosen and what the room does to it: moisture, days to wait, seasonal width, mitre gap, knots, way of choosing.
 * The bars move across the rings as their species does tangentially, the larger of its two movements: which way the rings lie is not known.
 */
export function lumberFacts(model: Model): Fact[] {
  const room = roomMoisture(model.plan.room);
  const { moisture_pct, knots, chosen } = model.plan.lumber;
  const frame = (path: string, value: number | string, unit: Fact['unit']): Fact => ({ path, about: 'frame', value, unit });
  return [
    frame('lumber.moisture_pct', moisture_pct, 'pct'),
    frame('lumber.room_moisture_pct', room.middle_pct, 'pct'),
    frame('lumber.moisture_gap_pct', moisture_pct - room.middle_pct, 'pct'),
    frame('lumber.wait_days', waitForBoards(model).days, 'days'),
    frame('lumber.knots', knots, 'word'),
    frame('lumber.chosen', chosen, 'word'),
    ...seasonalWidths(model, room),
    ...mitreGaps(model, room),
  ];
}

function seasonalWidths(model: Model, room: RoomMoisture): Fact[] {
  return barNames.map((name) => {
    const { section, stock } = model.bars[name];
    return { path: 'bar.seasonal_width_mm', about: name, value: movement_mm(section.w_mm, stock.species.change_tangential, room.driest_pct, room.dampest_pct), unit: 'mm' };
  });
}

/** Only a mitre opens: the square faces of a butt or half-lap joint stay parallel as the bars shrink. All four bars are alike, so all four corners are. */
function mitreGaps(model: Model, room: RoomMoisture): Fact[] {
  const { section, stock } = model.bars.top;
  const now_pct = model.plan.lumber.moisture_pct;
  const dries = model.plan.corners.cut === 'mitre' && now_pct > room.driest_pct;
  const across = dries ? -movement_mm(1, stock.species.change_tangential, now_pct, room.driest_pct) : 0;
  const along = dries ? lengthShrinkage((now_pct - room.driest_pct) / 100) : 0;
  const gap_mm = mitreGap_mm(section.w_mm, across, along);
  return cornerNames.map((name) => ({ path: 'corner.mitre_gap_mm', about: name, value: gap_mm, unit: 'mm' }));
}
