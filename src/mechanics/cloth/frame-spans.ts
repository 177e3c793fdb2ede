import type { Model } from '../../model/model.js';
import type { ClothSpan } from '../../fit/span.js';

/**
 * The rectangle whose note is heard when the cloth is tapped, mm. Over a raised lip the whole face swings. Without one
 * the cloth swings from the outer
 * edges on its way out and from the inner edges on its way in, so on average from the bars' centre lines.
 */
export function tapSpan(model: Model): ClothSpan {
  if (model.plan.bars.lip_mm > 0) return face(model);
  return {
    width_mm: model.plan.face.width_mm - model.bars.left.section.w_mm,
    height_mm: model.plan.face.height_mm - model.bars.top.section.w_mm,
  };
}

/**
 * The rectangle that a push from the front leans on, mm: the face over a raised lip, else the opening between the bars'
 * inner edges.
 */
export function pushSpan(model: Model): ClothSpan {
  if (model.plan.bars.lip_mm > 0) return face(model);
  return {
    width_mm: model.plan.face.width_mm - 2 * model.bars.left.section.w_mm,
    height_mm: model.plan.face.height_mm - 2 * model.bars.top.section.w_mm,
  };
}

function face(model: Model): ClothSpan {
  return { width_mm: model.plan.face.width_mm, height_mm: model.plan.face.height_mm };
}
