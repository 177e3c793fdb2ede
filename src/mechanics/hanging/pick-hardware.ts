import type { Hardware, Shelf } from '../../shelf/shelf.js';
import { remembered } from '../../base/remembered.js';
import { LEAST_EXIT_MM } from '../../fit/pick-screw.js';
import { ringUse, type RingLoad } from './ring.js';

/**
 * Hardware is picked with this many times the least factor where the shelf has it, so that a stricter ruleset is met as
 * well (proposal).
 */
const SPARE = 2;

const byStrength = (a: Hardware, b: Hardware): number => a.rating_N - b.rating_N || (a.key < b.key ? -1 : 1);

/** Hardware of each kind, the weakest first. */
const kindsOf = remembered((hardware: Shelf['hardware']) => {
  const kinds: { [kind in Hardware['kind']]?: Hardware[] } = {};
  for (const one of Object.values(hardware).sort(byStrength)) (kinds[one.kind] ??= []).push(one);
  return kinds;
});

/**
 * The weakest hook, wire or cleat on the shelf that carries `load_N` with twice the wanted factor; the strongest when
 * none does; null when the shelf has none.
 */
export function pickRated(
  shelf: Shelf,
  kind: 'hook' | 'wire' | 'cleat',
  load_N: number,
  factor: number,
): Hardware | null {
  const list = kindsOf(shelf.hardware)[kind] ?? [];
  return list.find((h) => h.rating_N >= SPARE * factor * load_N) ?? list.at(-1) ?? null;
}

/**
 * The ring screw, or the strap hanger: among those that leave LEAST_EXIT_MM of the wood, the weakest that uses half
 * its strength or less, else the strongest; when all would come out, the shortest.
 * Null when the shelf has none.
 */
export function pickRing(
  shelf: Shelf,
  load: RingLoad,
  G: number,
  wood_mm: number,
  kind: 'ring' | 'strap' = 'ring',
): Hardware | null {
  const rings = kindsOf(shelf.hardware)[kind] ?? [];
  const inside = rings.filter((h) => wood_mm - h.thread_length_mm >= LEAST_EXIT_MM);
  if (inside.length === 0)
    return [...rings].sort((a, b) => a.thread_length_mm - b.thread_length_mm || byStrength(a, b))[0] ?? null;
  const use = (h: Hardware): number => ringUse(h, load, G, wood_mm);
  return inside.find((h) => use(h) <= 1 / SPARE) ?? inside.reduce((a, b) => (use(b) < use(a) ? b : a));
}
