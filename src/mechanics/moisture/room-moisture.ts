import { remembered } from '../../base/remembered.js';
import type { Plan } from '../../plan/plan.js';
import { equilibriumMoisture_pct } from './equilibrium.js';

/** Moistures that boards settle to in a room, percent. */
export interface RoomMoisture {
  readonly driest_pct: number;
  /** At the middle of the humidity range. */
  readonly middle_pct: number;
  readonly dampest_pct: number;
}

/** What the plan's room does to wood: equilibrium at the low, middle and high end of its humidity. */
export const roomMoisture = remembered((room: Plan['room']): RoomMoisture => {
  const at = (humidity: number): number => equilibriumMoisture_pct(humidity, room.temperature_C);
  return {
    driest_pct: at(room.humidity_low),
    middle_pct: at((room.humidity_low + room.humidity_high) / 2),
    dampest_pct: at(room.humidity_high),
  };
});
