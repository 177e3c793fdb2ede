import { barNames, cornerNames } from '../base/names.js';
import type { Model } from '../model/model.js';
import type { Fact } from './fact.js';

/** Facts about what the plan chose: stock, joints, cloth and ground. Nothing here is computed. */
export function choiceFacts({ plan, bars, crossbars }: Model): Fact[] {
  const fact = (path: string, about: string, value: string | number, unit: Fact['unit'] = 'word'): Fact => ({ path, about, value, unit });
  const { corners, cloth, ground } = plan;
  const lumber = bars.top.stock;
  return [
    fact('frame.lay', 'frame', lumber.thickness_mm === lumber.width_mm ? 'square' : plan.bars.lay),
    fact('frame.plies_count', 'frame', plan.bars.plies, 'count'),
    fact('frame.pairing', 'frame', plan.bars.plies > 1 ? plan.bars.pairing : 'single'),
    fact('frame.corner_cut', 'frame', corners.cut),
    fact('frame.corner_glue', 'frame', corners.glue ?? 'none'),
    fact('frame.corner_brace', 'frame', corners.brace?.kind ?? 'none'),
    fact('cloth.fixed_to', 'cloth', cloth.fixing.to),
    ...barNames.flatMap((bar) => [fact('bar.stock', bar, plan.bars.stock), fact('bar.lay', bar, plan.bars.lay)]),
    ...crossbars.flatMap(({ name, stock, section }) => [
      fact('crossbar.stock', name, stock.key),
      fact('crossbar.w_mm', name, section.w_mm, 'mm'),
      fact('crossbar.d_mm', name, section.d_mm, 'mm'),
    ]),
    ...cornerNames.flatMap((corner) => [
      fact('corner.cut', corner, corners.cut),
      fact('corner.glue', corner, corners.glue ?? 'none'),
      fact('corner.nail', corner, corners.nails?.use ?? 'none'),
      fact('corner.nails_count', corner, corners.nails?.each ?? 0, 'count'),
      fact('corner.brace', corner, corners.brace?.kind ?? 'none'),
    ]),
    fact('cloth.use', 'cloth', cloth.use),
    fact('cloth.ground', 'cloth', ground.coats > 0 ? 'grounded' : 'bare'),
    fact('cloth.ground_coats_count', 'cloth', ground.coats, 'count'),
  ];
}
