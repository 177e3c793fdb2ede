import { factOf, limitOn, type Promised } from './promised.js';

/** Most points of moisture between boards and room when no rule says (`proposal`). */
const usual_gap_pct = 4;

/** Moisture at which the boards may be cut, per cent. */
export interface MoisturePromise {
  readonly planned_pct: number;
  /** What the room settles them to; null when unknown. */
  readonly room_pct: number | null;
  /** Most points between boards and room that the ruleset lets pass. */
  readonly most_gap_pct: number;
  /** No more than this when cut: the plan's own, or the ruleset's most above the room where that is drier. */
  readonly most_pct: number;
  /** And no less than this. */
  readonly least_pct: number;
}

/** One number for the order of work, the bench sheet and the judgement of a reading. */
export function moisturePromise(promised: Promised): MoisturePromise {
  const planned_pct = promised.plan.lumber.moisture_pct;
  const room_pct = factOf(promised, 'lumber.room_moisture_pct');
  const most_gap_pct = limitOn(promised, 'lumber.moisture_gap_pct') ?? usual_gap_pct;
  const most_pct = room_pct === null ? planned_pct : Math.min(planned_pct, room_pct + most_gap_pct);
  return {
    planned_pct,
    room_pct,
    most_gap_pct,
    most_pct,
    least_pct: room_pct === null ? 0 : Math.min(most_pct, Math.max(0, room_pct - most_gap_pct)),
  };
}
