import type { UnitSystem } from '../base/names.js';
import { commonUnits } from '../cutting/pieces/pool.js';
import type { Model } from '../model/model.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf, Supply } from '../shelf/shelf.js';
import { cutSheets, leastSheets, tilesOf, type Flat } from './cut-sheets.js';
import { needKinds, type Need, type NeedKind, type Sold } from './need.js';
import { needsOf } from './needs.js';
import { buyPacks, cents, isInvented, stepsOf, type BoughtPack } from './packs.js';
import { buySheets, stripsFor } from './sheets.js';

/** One other thing to buy, all frames together. */
export interface SupplyLine {
  readonly kind: NeedKind;
  readonly entry: string | null;
  readonly name: string;
  readonly measures: Need['measures'];
  readonly unit: Need['unit'];
  readonly used_for: readonly string[];
  /** For one frame, where all frames are alike; else null. */
  readonly for_one: number | null;
  readonly for_all: number;
  /**
   * Packs, sheets or strips; one of `holds` the whole amount where it is sold by the length or measure. Empty when no
   * price is known.
   */
  readonly packs: readonly BoughtPack[];
  /** Size of the sheet or length of the strip that it is cut from, mm. */
  readonly cut_from_mm: readonly number[] | null;
  /**
   * Of pieces that are cut out of sheets together: how many they are, how many sheets they take, row by row, and how
   * few any way of cutting can take.
   */
  readonly sheets?: { readonly pieces: number; readonly used: number; readonly least: number };
  /** At least `for_all`, in its unit; of sheets and strips, how many. */
  readonly bought: number | null;
  /** Share of what is bought that these frames use. */
  readonly used_share: number;
  readonly cost: number | null;
  readonly reason: string | null;
  readonly invented: boolean;
}

/** What plans take of one thing, as it grows plan by plan. */
interface Gathered {
  /** As the last of the plans asks for it. */
  need: Need;
  readonly used_for: Set<string>;
  /** One amount for each frame that is different. */
  readonly each: { readonly amount: number; readonly count: number }[];
  readonly strips_mm: number[];
  readonly areas_mm: Flat[];
}

/** Everything but boards and cloth that these plans take together, in the order in which it is picked up. */
export function supplyLines(models: readonly Model[], shop: Shelf): readonly SupplyLine[] {
  const units = commonUnits(models.map(({ plan }) => plan));
  const shelf = shelfIn(shop, units);
  const gathered = new Map<string, Gathered>();
  for (const model of models)
    for (const need of needsOf(model)) {
      const { count } = model.plan;
      const key = [
        need.kind,
        need.entry ?? need.name,
        ...(need.entry === null ? need.measures.map(({ mm }) => mm) : []),
      ].join(' ');
      const one = gathered.get(key) ?? { need, used_for: new Set(), each: [], strips_mm: [], areas_mm: [] };
      gathered.set(key, one);
      one.need = need;
      const { sold } = need;
      for (const use of need.used_for) one.used_for.add(use);
      one.each.push({ amount: need.amount, count });
      for (let i = 0; i < count; i++) {
        if (sold.by === 'strip') one.strips_mm.push(...sold.pieces_mm);
        if (sold.by === 'cut-sheet') one.areas_mm.push(sold.area_mm);
      }
    }
  const lines = [...gathered.values()].map((one) => lineOf(one, models.length === 1, units, shelf));
  return lines.sort((a, b) => needKinds.indexOf(a.kind) - needKinds.indexOf(b.kind));
}

function lineOf(gathered: Gathered, alone: boolean, units: UnitSystem, shelf: Shelf): SupplyLine {
  const { need, used_for, each } = gathered;
  const { kind, entry, name, measures, unit, sold } = need;
  const for_all = each.reduce((all, { amount, count }) => all + amount * count, 0);
  const bought = buy(gathered, soldIn(sold, entry, shelf), for_all, units, shelf);
  return {
    kind,
    entry,
    name,
    measures,
    unit,
    used_for: [...used_for],
    for_one: alone ? need.amount : null,
    for_all: bought.sheets?.pieces ?? for_all,
    ...bought,
  };
}

/** The twin of what is sold that the pool buys; a plan of the other system named its own. */
function soldIn(sold: Sold, entry: string | null, { supplies, hardware }: Shelf): Sold {
  const twin = (supply: Supply): Supply => supplies[supply.key] ?? supply;
  switch (sold.by) {
    case 'length':
      return { ...sold, step_mm: hardware[entry?.replace('hardware.', '') ?? '']?.sold_by_mm ?? sold.step_mm };
    case 'sheet':
      return { ...sold, sheets: sold.sheets.map(twin) };
    case 'cut-sheet':
      return { ...sold, sheet: twin(sold.sheet) };
    case 'strip':
      return { ...sold, strip: twin(sold.strip) };
    default:
      return sold;
  }
}

type Bought = Pick<
  SupplyLine,
  'sheets' | 'packs' | 'cut_from_mm' | 'bought' | 'used_share' | 'cost' | 'reason' | 'invented'
>;

function buy(
  { need, areas_mm, strips_mm }: Gathered,
  sold: Sold,
  for_all: number,
  units: UnitSystem,
  shelf: Shelf,
): Bought {
  const unknown = (reason: string): Bought => ({
    packs: [],
    cut_from_mm: null,
    bought: null,
    used_share: 1,
    cost: null,
    reason,
    invented: false,
  });
  const kerf_mm = shelf.cutting.kerf_mm;
  if (sold.by === 'unknown') return unknown(sold.reason);
  if (sold.by === 'length') {
    const bought = stepsOf(for_all, sold.step_mm, units);
    return {
      packs: [],
      cut_from_mm: null,
      bought,
      used_share: for_all / bought,
      cost: cents((bought / 1000) * sold.price_per_m),
      reason: null,
      invented: isInvented(shelf, need.entry, 'price'),
    };
  }
  if (sold.by === 'measure')
    return {
      packs: [],
      cut_from_mm: null,
      bought: for_all,
      used_share: 1,
      cost: cents(for_all * sold.price_per_unit),
      reason: null,
      invented: isInvented(shelf, need.entry, 'price-per-100ml'),
    };
  if (sold.by === 'sheet') {
    const found = buySheets(sold.sheets, sold.leg_mm, for_all, kerf_mm);
    if (found === null) return unknown('No plywood sheet on the shelf is large enough for the gussets.');
    return {
      packs: found.bought.packs,
      cut_from_mm: found.sheet.sheet_mm,
      bought: found.bought.holds,
      used_share: 1,
      cost: found.bought.cost,
      reason: null,
      invented: isInvented(shelf, `supplies.${found.sheet.key}`, 'packs'),
    };
  }
  if (sold.by === 'cut-sheet') {
    const size = sold.sheet.sheet_mm as Flat;
    const pieces = areas_mm.flatMap((area_mm) => tilesOf(area_mm, size));
    const used = cutSheets(pieces, size).length;
    const found = buyPacks(sold.sheet.packs, used);
    if (found === null) return unknown(`The shelf gives no price for ${need.name}.`);
    return {
      packs: found.packs,
      cut_from_mm: size,
      bought: found.holds,
      sheets: { pieces: pieces.length, used, least: leastSheets(pieces, size) },
      used_share: used / found.holds,
      cost: found.cost,
      reason: null,
      invented: isInvented(shelf, need.entry, 'packs'),
    };
  }
  if (sold.by === 'strip') {
    const strips = stripsFor(strips_mm, sold.strip.length_mm ?? 0, kerf_mm);
    const found = strips === null ? null : buyPacks(sold.strip.packs, strips);
    if (found === null) return unknown('No strip on the shelf is long enough for the lip.');
    return {
      packs: found.packs,
      cut_from_mm: sold.strip.length_mm === null ? null : [sold.strip.length_mm],
      bought: found.holds,
      used_share: 1,
      cost: found.cost,
      reason: null,
      invented: isInvented(shelf, need.entry, 'packs'),
    };
  }
  const found = buyPacks(sold.packs, for_all);
  if (found === null) return unknown(`The shelf gives no price for ${need.name}.`);
  const priced = shelf.sources[`${need.entry}.packs`] === undefined ? 'price' : 'packs';
  return {
    packs: found.packs,
    cut_from_mm: null,
    bought: found.holds,
    used_share: for_all / found.holds,
    cost: found.cost,
    reason: null,
    invented: isInvented(shelf, need.entry, priced),
  };
}
