import { spokenName } from '../base/names.js';
import { lipPieces } from '../cutting/pieces/pieces.js';
import { tilesOf, type Flat } from './cut-sheets.js';
import { KEYS_PER_CORNER } from '../fit/keyed-sizes.js';
import { groundOf, groundVolume_ml } from '../mechanics/cloth/shelf-numbers.js';
import { staplesPerSide } from '../mechanics/cloth/cloth-sheet.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { hangingState } from '../mechanics/hanging/hanging-state.js';
import { upToTape } from '../base/tape.js';
import { gussets, pickAngle, pickKeys, pickLip, pickStaple } from '../mechanics/bench/pick-supply.js';
import type { Model } from '../model/model.js';
import type { Hardware, Pack, Supply } from '../shelf/shelf.js';
import type { Measure, Need, NeedKind, Sold } from './need.js';

/** Spare wire for the knots at both ends, mm (`practice`). */
const spareWire_mm = { metric: 300, inch: 12 * 25.4 } as const;

const loose = (price: number): readonly Pack[] => [{ holds: 1, price, called: '' }];

/**
 * Everything but boards and cloth that one frame of a plan takes, in the order in which it is used. Tools and paint are
 * not in it.
 */
export function needsOf(model: Model): readonly Need[] {
  return [
    ...glue(model),
    ...fastenings(model),
    ...plates(model),
    ...keys(model),
    ...lip(model),
    staples(model),
    ...ground(model),
    ...backing(model),
    ...hanging(model),
  ];
}

function glue(model: Model): readonly Need[] {
  const sheet = glueSheet(model);
  if (sheet === null) return [];
  const {
    glue: { key, name, packs, price_per_100ml },
    amount_ml,
  } = sheet;
  const sold: Sold =
    packs.length > 0 ? { by: 'pack', packs } : { by: 'measure', price_per_unit: price_per_100ml / 100 };
  return [
    {
      kind: 'glue',
      entry: `glues.${key}`,
      name,
      measures: [],
      unit: 'ml',
      amount: amount_ml,
      used_for: sheet.lines.map(({ what }) => spokenName(what)),
      sold,
    },
  ];
}

/** Nails and screws; what is used in two places is one thing. */
function fastenings(model: Model): readonly Need[] {
  const found = new Map<string, Need>();
  for (const f of plannedFastenings(model)) {
    const entry = `${f.kind === 'nail' ? 'nails' : 'screws'}.${f.key}`;
    const before = found.get(entry);
    const shelved = f.kind === 'nail' ? model.shelf.nails[f.key] : model.shelf.screws[f.key];
    const packs = shelved === undefined ? [] : shelved.packs.length > 0 ? shelved.packs : loose(shelved.price);
    found.set(entry, {
      kind: f.kind,
      entry,
      name: f.label,
      measures: [{ of: 'length', mm: f.length_mm }],
      unit: 'pieces',
      amount: (before?.amount ?? 0) + f.count,
      used_for: [...(before?.used_for ?? []), f.name],
      sold: { by: 'pack', packs },
    });
  }
  return [...found.values()];
}

function plates(model: Model): readonly Need[] {
  const triangles = gussets(model);
  const used_for = ['corners'];
  if (triangles !== null) {
    const { leg_mm, thickness_mm, sheets } = triangles;
    const measures: Measure[] = [
      { of: 'thickness', mm: thickness_mm },
      { of: 'leg', mm: leg_mm },
    ];
    const sold: Sold =
      sheets.length > 0
        ? { by: 'sheet', sheets, leg_mm }
        : { by: 'unknown', reason: 'The shelf has no plywood of this thickness.' };
    return [
      { kind: 'plywood', entry: null, name: 'Plywood gussets', measures, unit: 'pieces', amount: 4, used_for, sold },
    ];
  }
  if (model.plan.corners.brace?.kind !== 'steel-angle') return [];
  return [supplied(pickAngle(model), 'angle', 'Flat steel angle', 4, used_for)];
}

/** Only keyed corners are opened with keys. */
function keys(model: Model): readonly Need[] {
  return model.plan.corners.cut === 'keyed'
    ? [supplied(pickKeys(model), 'key', 'Corner keys', 4 * KEYS_PER_CORNER, ['corners'])]
    : [];
}

function supplied(
  supply: Supply | null,
  kind: NeedKind,
  name: string,
  amount: number,
  used_for: readonly string[],
): Need {
  const measures =
    supply === null
      ? []
      : (
          [
            ['leg', supply.leg_mm],
            ['thickness', supply.thickness_mm],
          ] as const
        ).flatMap(([of, mm]): Measure[] => (mm === null ? [] : [{ of, mm }]));
  const sold: Sold =
    supply !== null && supply.packs.length > 0
      ? { by: 'pack', packs: supply.packs }
      : { by: 'unknown', reason: `The shelf gives no price for ${name.toLowerCase()}.` };
  return {
    kind,
    entry: supply === null ? null : `supplies.${supply.key}`,
    name: supply?.name ?? name,
    measures,
    unit: 'pieces',
    amount,
    used_for,
    sold,
  };
}

function lip(model: Model): readonly Need[] {
  const { bars } = model.plan;
  const pieces_mm = lipPieces(model.plan).map(({ cut_mm }) => cut_mm);
  if (pieces_mm.length === 0) return [];
  const strip = pickLip(model);
  const base = {
    kind: 'lip' as const,
    measures: [{ of: 'thickness' as const, mm: bars.lip_mm }],
    unit: 'mm' as const,
    amount: pieces_mm.reduce((sum, mm) => sum + mm, 0),
    used_for: ['lip'],
  };
  if (strip === null || strip.length_mm === null)
    return [
      {
        ...base,
        entry: null,
        name: 'Strip for the lip',
        sold: { by: 'unknown', reason: 'The shelf has no strip for a lip.' },
      },
    ];
  return [{ ...base, entry: `supplies.${strip.key}`, name: strip.name, sold: { by: 'strip', strip, pieces_mm } }];
}

function staples(model: Model): Need {
  const count = Object.values(staplesPerSide(model)).reduce((sum, n) => sum + n, 0);
  return supplied(pickStaple(model), 'staple', 'Staples', count, ['cloth']);
}

/** Wet ground for one frame, ml; null where the plan has none or the shelf. */
function ground(model: Model): readonly Need[] {
  const found = groundOf(model);
  const amount = groundVolume_ml(model);
  if (found === null || amount === 0) return [];
  const sold: Sold =
    found.packs.length > 0
      ? { by: 'pack', packs: found.packs }
      : { by: 'measure', price_per_unit: found.price_per_100ml / 100 };
  return [
    {
      kind: 'ground',
      entry: `grounds.${found.key}`,
      name: found.name,
      measures: [],
      unit: 'ml',
      amount,
      used_for: ['ground'],
      sold,
    },
  ];
}

/**
 * What closes the back against dust: the area of the face in pieces no larger than a sheet, edge to edge; nothing where
 * the shelf has none.
 */
function backing(model: Model): readonly Need[] {
  const paper = Object.values(model.shelf.supplies).find(({ kind }) => kind === 'backing');
  if (paper === undefined || paper.sheet_mm === null) return [];
  const { width_mm, height_mm } = model.plan.face;
  const area_mm: Flat = [width_mm, height_mm];
  return [
    {
      ...supplied(paper, 'backing', paper.name, tilesOf(area_mm, paper.sheet_mm).length, ['back']),
      sold: { by: 'cut-sheet', sheet: paper, area_mm },
    },
  ];
}

function hanging(model: Model): readonly Need[] {
  const state = hangingState(model);
  if (state === null) return [];
  const { ring, wire, hook } = state.picked;
  const piece = (part: Hardware | null, kind: NeedKind, amount: number): readonly Need[] =>
    part === null
      ? []
      : [
          {
            kind,
            entry: `hardware.${part.key}`,
            name: part.name,
            measures: [],
            unit: 'pieces',
            amount,
            used_for: ['hanging'],
            sold: { by: 'pack', packs: part.packs.length > 0 ? part.packs : loose(part.price) },
          },
        ];
  return [
    ...piece(ring, 'ring', 2),
    ...(wire === null || state.wire === null
      ? []
      : [
          {
            kind: 'wire' as const,
            entry: `hardware.${wire.key}`,
            name: wire.name,
            measures: [],
            unit: 'mm' as const,
            amount: upToTape(state.wire.wire_mm, model.plan.units) + spareWire_mm[model.plan.units],
            used_for: ['hanging'],
            sold: { by: 'length' as const, price_per_m: wire.price, step_mm: wire.sold_by_mm },
          },
        ]),
    ...piece(hook, 'hook', state.hook_pieces),
  ];
}
