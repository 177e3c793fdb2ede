import { formatLength, formatSize } from '../base/units-format.js';
import { tidy, toCsv } from '../cutting/csv.js';
import { inventedOf, type Supplies } from './supplies.js';

/** The boards to take as CSV: one row per stock, length and price, whether the price is invented or yours, those to pick from besides by themselves; then the stocks that are unknown with the reason, then the sum. */
export function buyingListCsv({ boards, boards_to_buy, full_boards_cost, currency, cut }: Supplies): string {
  const header = ['stock', 'nominal', 'size', 'length', 'length mm', 'count', 'price each', 'cost', 'currency', 'price is', 'remark'];
  const proven = (stock: string): boolean => cut.stocks.some((one) => one.stock === stock && one.proven);
  const rows = boards.map((line): (string | number)[] => [
    line.stock,
    line.nominal ?? '',
    formatSize(line.thickness_mm, line.width_mm, cut.units),
    formatLength(line.length_mm, cut.units),
    tidy(line.length_mm),
    line.count,
    line.price,
    line.cost,
    currency,
    line.on_hand ? '' : line.invented ? 'invented' : 'yours',
    line.on_hand ? 'on hand' : line.role === 'spare' ? 'more to pick from' : proven(line.stock) ? 'least cost, proven' : 'least cost not proven',
  ]);
  const unknown = cut.uncut.map(({ stock, reason }): (string | number)[] => [stock, '', '', '', '', '', '', '', '', '', reason]);
  const invented = inventedOf({ boards, cloths: [], lines: [] });
  const total: (string | number)[] = ['wood in all', '', '', '', '', boards_to_buy ?? '', '', full_boards_cost ?? 'unknown', currency, invented === 'none' ? '' : `${invented} invented`, ''];
  return toCsv([header, ...rows, ...unknown, total]);
}
