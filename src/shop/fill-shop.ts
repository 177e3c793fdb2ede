import { dayNumber, weekdayOf } from '../base/days.js';
import { readQuantity } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';
import type { ShopInput } from './shop-schema.js';
import { longest_sessions, type Session, type Shop } from './shop.js';

type Sessions = NonNullable<ShopInput['sessions']>;

/**
 * The hour at which sessions begin where the file does not say, minutes after midnight (proposal): it matters only for
 * waits from one day to the next.
 */
const usual_start_min = 18 * 60;
const day_min = 24 * 60;

function quantity(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

function dayOf(text: string): number {
  const day = dayNumber(text);
  if (day === null) throw new Error(`the schema let a day through that is none: ${text}`);
  return day;
}

const minutesOf = (at: string | undefined): number => {
  const [hours = 0, minutes = 0] = (at ?? '').split(':').map(Number);
  return at === undefined ? usual_start_min : hours * 60 + minutes;
};

function sessionOn(
  day: number,
  one: { readonly at?: string | undefined; readonly length: string; readonly people?: number | undefined },
): Session {
  return {
    day,
    start_min: day * day_min + minutesOf(one.at),
    length_min: Math.floor(quantity(one.length, 'time') * 60 + 1e-6),
    people: one.people ?? null,
  };
}

/** The sessions of a checked input in order of time. */
export function sessionsOf(sessions: Sessions | undefined): readonly Session[] {
  if (sessions === undefined) return [];
  if (Array.isArray(sessions))
    return sessions.map((one) => sessionOn(dayOf(one.date), one)).sort((a, b) => a.start_min - b.start_min);
  const off = new Set((sessions['not-on'] ?? []).map(dayOf));
  const found: Session[] = [];
  for (let day = dayOf(sessions.from); found.length < longest_sessions; day++)
    if (sessions.on.includes(weekdayOf(day)) && !off.has(day)) found.push(sessionOn(day, sessions));
  return found;
}

/** The workshop of a checked input. */
export function fillShop(input: ShopInput): Shop {
  const { sessions, clamps, saws, 'compare-with': compared } = input;
  const length = compared?.for.width ?? saws?.find(({ most }) => most !== undefined)?.most;
  const first = length === undefined ? null : readQuantity(length, 'length');
  return {
    name: input.name?.trim() ?? 'The workshop',
    units: first?.ok === true && first.system === 'inch' ? 'inch' : 'metric',
    sessions: sessionsOf(sessions),
    repeated: sessions !== undefined && !Array.isArray(sessions),
    at_known:
      sessions !== undefined &&
      (Array.isArray(sessions) ? sessions.every(({ at }) => at !== undefined) : sessions.at !== undefined),
    corner_clamps: clamps?.corner ?? null,
    bar_clamps: clamps?.bar ?? null,
    saws:
      saws?.map(({ kind, count = 1, most }) => ({
        kind,
        count: kind === 'none' ? 0 : count,
        most_mm: most === undefined ? null : quantity(most, 'length'),
      })) ?? null,
    flat_places: input['flat-places'] ?? null,
    moisture_meter: input['moisture-meter'] ?? null,
    tools: (input.tools ?? []).map(({ name, price, count = 1 }) => ({ name, price, count })),
    compare_with:
      compared === undefined
        ? null
        : {
            price: compared.price,
            width_mm: quantity(compared.for.width, 'length'),
            height_mm: quantity(compared.for.height, 'length'),
          },
  };
}
