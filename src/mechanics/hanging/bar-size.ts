import type { Plan } from '../../plan/plan.js';
import type { Lumber, Shelf } from '../../shelf/shelf.js';

/** Sizes of one ply and of the built-up bar: `w` in the plane of the cloth, `d` at right angles to it, mm. */
export interface BarSize {
  readonly ply_w_mm: number;
  readonly ply_d_mm: number;
  readonly w_mm: number;
  readonly d_mm: number;
}

/** The size a built-up bar has on the frame. */
export function barSize(stock: Pick<Lumber, 'thickness_mm' | 'width_mm'>, bars: Pick<Plan['bars'], 'lay' | 'plies' | 'stack'>): BarSize {
  const flat = bars.lay === 'flat';
  const ply_w_mm = flat ? stock.width_mm : stock.thickness_mm;
  const ply_d_mm = flat ? stock.thickness_mm : stock.width_mm;
  const side = bars.stack === 'side-by-side';
  return { ply_w_mm, ply_d_mm, w_mm: ply_w_mm * (side ? bars.plies : 1), d_mm: ply_d_mm * (side ? 1 : bars.plies) };
}

/** The same from a plan and its shelf; null when the shelf lacks the stock. */
export function planBarSize(plan: Plan, shelf: Shelf): BarSize | null {
  const stock = shelf.lumber[plan.bars.stock];
  return stock ? barSize(stock, plan.bars) : null;
}
