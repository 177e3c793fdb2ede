import type { UnitSystem } from '../../base/names.js';
import { formatLength, formatQuantity, formatSize, formatVolumeUp } from '../../base/units-format.js';
import { inventedOf, type BoardLine, type ClothLine, type Supplies, type SupplyLine } from '../../cost/supplies.js';
import { upToTape } from '../../base/tape.js';
import { cents } from '../../cost/packs.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, setApart, strong, type Block, type Cell, type Column } from '../tree.js';
import { money } from './cost.js';
import { allOf, plural } from './plural.js';
import { stockName, stockNames } from './stock.js';

/** An amount of one thing, never rounded down: `24`, `1480 mm`, `85 ml`. */
export function amountInWords(amount: number, unit: SupplyLine['unit'], units: UnitSystem): string {
  if (unit === 'ml') return formatVolumeUp(amount, units);
  return unit === 'mm' ? formatLength(upToTape(amount, units), units) : String(Math.ceil(amount - 1e-9));
}

/** Whether a name tells the length already: `Wood screw No. 6 × 1-1/4 in`. */
const namesLength = (name: string, length_mm: number, units: UnitSystem): boolean =>
  name.endsWith(`× ${formatLength(length_mm, units)}`);

/** How long a nail or screw is: one that is made in inches is told to the whole millimetre. */
const long = (length_mm: number, units: UnitSystem): string =>
  `${formatLength(units === 'metric' ? Math.round(length_mm) : length_mm, units)} long`;

/** A nail or screw with its length, once: `Wood screw No. 6 × 1-1/4 in, 32 mm long`, `Brad 18 gauge × 25 mm`. */
export function withLength(name: string, length_mm: number, units: UnitSystem): string {
  const said = userText(name, 60);
  return namesLength(name, length_mm, units) ? said : `${said}, ${long(length_mm, units)}`;
}

const measureWords = { leg: 'leg', thickness: 'thick' } as const;

/** A thing with the sizes by which one finds it: `Tacker staples, leg 10 mm`. */
export function supplyName({ name, measures, kind }: SupplyLine, units: UnitSystem): string {
  const said = ({ of, mm }: SupplyLine['measures'][number]): string => {
    if (of === 'length') return long(mm, units);
    if (of === 'leg') return `${kind === 'plywood' ? 'legs' : measureWords.leg} ${formatLength(mm, units)}`;
    return `${formatLength(mm, units)} ${kind === 'lip' ? 'high' : measureWords[of]}`;
  };
  const sizes = measures.filter(({ of, mm }) => of !== 'length' || !namesLength(name, mm, units)).map(said);
  return [userText(name, 60), ...sizes].join(', ');
}

/** A length off a roll; whole half yards say so. */
export function rollLength(length_mm: number, units: UnitSystem): string {
  const halves = length_mm / 457.2;
  const text = formatLength(upToTape(length_mm, units), units);
  if (units === 'metric' || Math.abs(halves - Math.round(halves)) > 1e-6) return text;
  const whole = Math.floor(Math.round(halves) / 2);
  const yards = `${whole > 0 ? String(whole) : ''}${Math.round(halves) % 2 === 1 ? `${whole > 0 ? '-' : ''}1/2` : ''}`;
  return `${text} (${yards} ${halves > 2 ? 'yards' : 'yard'})`;
}

/** What to take to the till: `1 box of 100`, `2 bottles of 250 ml`, `1500 mm`. */
export function packsInWords(line: SupplyLine, units: UnitSystem): string {
  if (line.bought === null) return 'unknown';
  if (line.cut_from_mm !== null) {
    const n = line.packs.reduce((sum, { count, holds }) => sum + count * holds, 0);
    const [a = 0, b] = line.cut_from_mm;
    if (line.sheets !== undefined && b !== undefined)
      return `${packed(line, units)}${line.packs.every(({ holds }) => holds === 1) ? '' : ', sheets'} of ${formatSize(a, b, units)}`;
    return b === undefined
      ? `${n} ${plural('strip', n)} of ${formatLength(a, units)}`
      : `${n} ${plural('sheet', n)} of ${formatSize(a, b, units)}`;
  }
  if (line.packs.length === 0)
    return line.unit === 'mm' ? rollLength(line.bought, units) : amountInWords(line.bought, line.unit, units);
  return packed(line, units);
}

/** `2 bottles of 250 ml`, `1 roll of 10 and 2 sheets`. */
function packed(line: SupplyLine, units: UnitSystem): string {
  return line.packs
    .map(({ holds, called, count }) => {
      const inside = line.unit === 'ml' ? formatQuantity(holds, 'ml', units) : String(holds);
      const name = called === '' ? '' : ` ${plural(called, count)}`;
      if (line.unit === 'pieces' && holds === 1)
        return `${count}${called === '' && line.packs.length > 1 ? ' single' : name}`;
      return called === '' ? `${count} × ${inside}` : `${count}${name} of ${inside}`;
    })
    .join(' and ');
}

/** Money as a list prints it, starred where nobody asked for the price and somebody asked for another. */
export interface Prices {
  readonly money: (amount: number | null, invented?: boolean) => string;
  /** What to say of the prices under the lists; empty when all are asked for. */
  readonly remark: string;
}

/** How the prices of a bill are printed and what is said of them. */
export function pricesOf(bill: Pick<Supplies, 'boards' | 'cloths' | 'lines' | 'currency'>): Prices {
  const invented = inventedOf(bill);
  return {
    money: (amount, starred = false) =>
      `${money(amount, bill.currency)}${amount !== null && starred && invented === 'some' ? ' *' : ''}`,
    remark: {
      none: '',
      some: '* An invented price: put your shop’s own on the shelf.',
      all: 'All prices are invented for demonstration: put your shop’s own on the shelf.',
    }[invented],
  };
}

/** What to order where the shop has too few boards; nothing where it has enough. */
export function orderBlocks(
  { short, order_proven, currency, cut }: Pick<Supplies, 'short' | 'order_proven' | 'currency' | 'cut'>,
  units: UnitSystem,
): readonly Block[] {
  if (short.length === 0) return [];
  const costs = short.map(({ needed, available, price }) => cents((needed - available) * price));
  const said = (amount: number): string => money(amount, currency);
  const named = stockNames(cut);
  const all = said(costs.reduce((sum, cost) => sum + cost, 0));
  return [
    setApart(
      paragraph(
        strong('The shelf does not have enough boards.'),
        ' The lists are made as if what is missing had come.',
      ),
    ),
    bullets(
      short.map(
        ({ stock, length_mm, needed, available }, i): Cell =>
          `${named(stock, 2)}, ${formatLength(length_mm, units)}: ${needed} needed, ${available} there. Order ${needed - available} more, ${said(costs[i] as number)}.`,
      ),
    ),
    paragraph(
      `The boards that are there are used first, whatever their length; the order besides comes to ${all}. ${order_proven ? 'Of all lengths sold, no other order costs less; that was proven.' : 'The search was cut short: another order may cost less.'}`,
    ),
  ];
}

/** How the pieces that are cut out of sheets were counted; empty where one frame takes whole sheets. */
export function sheetsInWords({ lines, frames }: Pick<Supplies, 'lines' | 'frames'>): string {
  return lines
    .flatMap(({ name, for_all, sheets }) =>
      sheets === undefined || (frames === 1 && sheets.used === for_all)
        ? []
        : [
            `${userText(name, 60)}: ${for_all} ${plural('piece', for_all)} cut row by row out of ${sheets.used} ${plural('sheet', sheets.used)}${sheets.used === sheets.least ? ', as few as any way of cutting takes' : `; no way of cutting takes fewer than ${sheets.least}`}.`,
          ],
    )
    .join(' ');
}

/** Heads of the table of boards. */
export const boardColumns: readonly Column[] = [
  { head: 'Board' },
  { head: 'Length', align: 'right' },
  { head: 'Number', align: 'right' },
  { head: 'Each', align: 'right' },
  { head: 'Cost', align: 'right' },
];

/** A row of the table of boards. */
export function boardRow(line: BoardLine, units: UnitSystem, { money }: Prices): readonly Cell[] {
  const { stock, nominal, thickness_mm, width_mm, length_mm, price, count, on_hand, cost, role, invented } = line;
  const name = `${stockName(stock, { thickness_mm, width_mm }, units)}${nominal === null ? '' : ` (shops call it ${userText(nominal, 20)})`}${role === 'spare' ? ', more to pick from' : ''}`;
  return [
    name,
    formatLength(length_mm, units),
    String(count),
    on_hand ? 'on hand' : money(price, invented),
    money(cost, invented && !on_hand),
  ];
}

/**
 * Heads of the table of everything else; the column for one frame only where it differs from that for all and frames
 * are alike.
 */
export function besidesColumns({ frames, lines }: Pick<Supplies, 'frames' | 'lines'>): readonly Column[] {
  return [
    { head: 'And besides' },
    ...needColumns(frames, alike(lines)),
    { head: 'Buy', align: 'right' },
    { head: 'Cost', align: 'right' },
  ];
}

/** Frames of several plans have no amount for one. */
const alike = (lines: Supplies['lines']): boolean => lines.some(({ for_one }) => for_one !== null);

const needColumns = (frames: number, same: boolean): readonly Column[] =>
  frames === 1
    ? [{ head: 'Needed', align: 'right' }]
    : [
        ...(same ? [{ head: 'For one frame', align: 'right' as const }] : []),
        { head: `For ${allOf(frames)}`, align: 'right' },
      ];

/** Rows of the table of everything else: cloth first. */
export function besidesRows(
  { cloths, lines, frames }: Supplies,
  units: UnitSystem,
  { money }: Prices,
): readonly (readonly Cell[])[] {
  const cloth = ({ cloth: { name }, layout, bought_mm, bought_cost, invented }: ClothLine): readonly Cell[] => [
    `${userText(name, 60)}, roll ${formatLength(layout.roll_mm, units)} wide`,
    ...(frames === 1 || !alike(lines) ? [] : ['']),
    layout.too_wide.length > 0 ? 'too wide for the roll' : formatLength(upToTape(layout.length_mm, units), units),
    bought_cost === null ? '' : rollLength(bought_mm, units),
    money(bought_cost, invented),
  ];
  const other = (line: SupplyLine): readonly Cell[] => [
    supplyName(line, units),
    ...(frames === 1 || !alike(lines)
      ? []
      : [line.for_one === null ? '' : amountInWords(line.for_one, line.unit, units)]),
    amountInWords(line.for_all, line.unit, units),
    packsInWords(line, units),
    money(line.cost, line.invented),
  ];
  return [...cloths.map(cloth), ...lines.map(other)];
}

/** Head of a column that counts for every frame of the plan. */
export const numberFor = (frames: number): string => (frames === 1 ? 'Number' : `Number for ${allOf(frames)}`);
