import { thinnestUnbored_mm } from '../../fit/distances.js';

/** What decides whether wood splits at a fastening. */
export interface SplitCase {
  readonly diameter_mm: number;
  /** Thickness of the thinner piece along the fastening. */
  readonly thickness_mm: number;
  readonly density_kg_per_m3: number;
  readonly G: number;
  readonly moisture_pct: number;
  /** Drilled first, and how wide against the widest hole allowed; null = not drilled. */
  readonly pilot_share: number | null;
  readonly end_share: number;
  readonly edge_share: number;
}

/**
 * How likely the wood splits: counts what speaks for it. Thinner than may be nailed undrilled counts two; a hole under
 * 60 % of the widest allowed, too near an end,
 * too near an edge, dense and dry wood (over 0.5, under 10 %), wet wood that will shrink onto the fastening (19 % and
 * more) count one each. None: low; one: some; more: high.
 * Source: proposal, around the thickness rule of en1995-1-1-memory 8.3.1.2(6).
 */
export function splitRisk(c: SplitCase): 'low' | 'some' | 'high' {
  const signs = [
    c.pilot_share === null && c.thickness_mm < thinnestUnbored_mm(c.diameter_mm, c.density_kg_per_m3) ? 2 : 0,
    c.pilot_share !== null && c.pilot_share < 0.6 ? 1 : 0,
    c.end_share < 1 ? 1 : 0,
    c.edge_share < 1 ? 1 : 0,
    c.G > 0.5 && c.moisture_pct < 10 ? 1 : 0,
    c.moisture_pct >= 19 ? 1 : 0,
  ].reduce((sum, n) => sum + n, 0);
  return signs === 0 ? 'low' : signs === 1 ? 'some' : 'high';
}
