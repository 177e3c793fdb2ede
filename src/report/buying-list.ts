import { upToTape } from '../base/tape.js';
import { formatLength, formatSize } from '../base/units-format.js';
import { cents } from '../cost/packs.js';
import { inventedOf, type BoardLine, type ClothLine, type Supplies, type SupplyLine } from '../cost/supplies.js';
import { tidy, toCsv } from '../cutting/csv.js';
import { amountInWords, packsInWords, rollLength, supplyName } from './words/supply.js';

type Row = readonly (string | number)[];

const header: Row = [
  'stock',
  'nominal',
  'size',
  'length',
  'length mm',
  'count',
  'price each',
  'cost',
  'currency',
  'price is',
  'remark',
];
const yours = (invented: boolean): string => (invented ? 'invented' : 'yours');

/**
 * Everything to buy as CSV. Boards first: one row per stock, length and price, those to pick from besides by
 * themselves, then the stocks that are unknown with the reason, and the wood in all.
 * Then cloths and supplies, one row per kind of pack, with what it is in the column of nominal names; last, everything
 * together. Each row says whether its price is invented or yours.
 */
export function buyingListCsv(bill: Supplies): string {
  const { boards, boards_to_buy, full_boards_cost, full_cost, currency, cut, cloths, lines, reason } = bill;
  const unknown = cut.uncut.map((one): Row => [one.stock, '', '', '', '', '', '', '', '', '', one.reason]);
  const total = (
    name: string,
    count: number | string,
    cost: number | null,
    of: Pick<Supplies, 'boards' | 'cloths' | 'lines'>,
    remark: string,
  ): Row => {
    const invented = inventedOf(of);
    return [
      name,
      '',
      '',
      '',
      '',
      count,
      '',
      cost ?? 'unknown',
      currency,
      invented === 'none' ? '' : `${invented} invented`,
      remark,
    ];
  };
  return toCsv([
    header,
    ...boards.map((line) => boardRow(line, bill)),
    ...unknown,
    total('wood in all', boards_to_buy ?? '', full_boards_cost, { boards, cloths: [], lines: [] }, ''),
    ...cloths.map((line) => clothRow(line, bill)),
    ...lines.flatMap((line) => supplyRows(line, bill)),
    total('everything together', '', full_cost, bill, reason ?? ''),
  ]);
}

function boardRow(line: BoardLine, { cut, currency }: Supplies): Row {
  const proven = cut.stocks.some(({ stock, proven: settled }) => stock === line.stock && settled);
  return [
    line.stock,
    line.nominal ?? '',
    formatSize(line.thickness_mm, line.width_mm, cut.units),
    formatLength(line.length_mm, cut.units),
    tidy(line.length_mm),
    line.count,
    line.price,
    line.cost,
    currency,
    line.on_hand ? '' : yours(line.invented),
    line.on_hand
      ? 'on hand'
      : line.role === 'spare'
        ? 'more to pick from'
        : proven
          ? 'least cost, proven'
          : 'least cost not proven',
  ];
}

function clothRow(
  { cloth, layout, bought_mm, bought_cost, invented }: ClothLine,
  { cut: { units }, currency }: Supplies,
): Row {
  const start = [cloth.key, cloth.name, `roll ${formatLength(layout.roll_mm, units)} wide`];
  if (bought_cost === null)
    return [...start, '', '', '', '', 'unknown', currency, '', `too wide for the roll: ${layout.too_wide.join(', ')}`];
  return [
    ...start,
    rollLength(bought_mm, units),
    tidy(bought_mm),
    1,
    bought_cost,
    bought_cost,
    currency,
    yours(invented),
    `needed: ${formatLength(upToTape(layout.length_mm, units), units)}`,
  ];
}

/** One row for each size of pack; where nothing is sold in packs, one for the whole amount. */
function supplyRows(line: SupplyLine, { cut: { units }, currency }: Supplies): readonly Row[] {
  const start = [line.entry?.replace(/^.*?\./u, '') ?? '', supplyName(line, units)];
  const needed = `needed: ${amountInWords(line.for_all, line.unit, units)}`;
  if (line.cost === null || line.bought === null)
    return [
      [
        ...start,
        '',
        '',
        '',
        '',
        '',
        'unknown',
        currency,
        '',
        [needed, line.reason ?? ''].filter((text) => text !== '').join('; '),
      ],
    ];
  if (line.packs.length === 0) {
    const long =
      line.unit === 'mm' ? [rollLength(line.bought, units), tidy(line.bought)] : [packsInWords(line, units), ''];
    return [[...start, '', ...long, 1, line.cost, line.cost, currency, yours(line.invented), needed]];
  }
  return line.packs.map((pack, i): Row => [
    ...start,
    '',
    '',
    '',
    pack.count,
    pack.price,
    cents(pack.price * pack.count),
    currency,
    yours(line.invented),
    [packsInWords({ ...line, packs: [pack] }, units), ...(i === 0 ? [needed] : [])].join('; '),
  ]);
}
