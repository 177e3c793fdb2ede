import type { Model } from './model.js';
import { builtSize } from '../plan/build-up.js';
import type { Plan } from '../plan/plan.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Shelf } from '../shelf/shelf.js';

/** Mass of steel, kg per mm³. */
const STEEL_KG_PER_MM3 = 7.85e-6;
/** One tacker staple, g, and one flat steel angle with its screws, g (proposals). */
const STAPLE_G = 0.15;
const ANGLE_G = 60;

/** Mass of a round steel fastening, kg, from its diameter and length in mm (its head counted as a tenth more). */
function steelPin_kg(diameter_mm: number, length_mm: number): number {
  return 1.1 * STEEL_KG_PER_MM3 * (Math.PI / 4) * diameter_mm ** 2 * length_mm;
}

/** What is screwed into the frame for it to hang by. */
const holders = { none: null, wire: 'ring', 'two-hooks': 'ring', 'd-rings': 'strap', cleat: 'cleat' } as const;

function heaviest_g(shelf: Shelf, kind: 'ring' | 'wire' | 'strap' | 'cleat'): number {
  let most = 0;
  for (const one of Object.values(shelf.hardware)) if (one.kind === kind) most = Math.max(most, one.mass_g);
  return most;
}

function hardwareMass_kg(plan: Plan, shelf: Shelf): number {
  const around_mm = 2 * (plan.face.width_mm + plan.face.height_mm);
  const { by } = plan.hang;
  const holder = holders[by];
  const holding_g = holder === null ? 0 : (by === 'cleat' ? 1 : 2) * heaviest_g(shelf, holder);
  const wire_g = by === 'wire' ? (plan.face.width_mm / 1000) * heaviest_g(shelf, 'wire') : 0;
  const hanging = (holding_g + wire_g) / 1000;
  const staples = ((around_mm / plan.cloth.fixing.every_mm) * STAPLE_G) / 1000;
  const { nails: named } = plan.corners;
  const nail = named ? shelf.nails[named.use] : undefined;
  const nails = named && nail ? 4 * named.each * steelPin_kg(nail.diameter_mm, nail.length_mm) : 0;
  const screw = plan.ply_screws ? shelf.screws[plan.ply_screws.use] : undefined;
  const screwed = plan.bars.plies > 1 && (plan.bars.bond === 'screws' || plan.bars.bond === 'glue+screws');
  const screws =
    screw && plan.ply_screws && screwed
      ? (around_mm / plan.ply_screws.every_mm) * steelPin_kg(screw.root_mm, screw.length_mm)
      : 0;
  const angles = plan.corners.brace?.kind === 'steel-angle' ? (4 * ANGLE_G) / 1000 : 0;
  return hanging + staples + nails + screws + angles;
}

/**
 * Area of the cloth on the frame with what is turned over the edge and hemmed, m²: face + 2 (d + wrap + turn), wrap = w
 * when fixed to the back. Source: physics.
 */
function clothArea_m2(plan: Plan, shelf: Shelf): number {
  const { lay, plies, stack } = plan.bars;
  const stock = shelf.lumber[plan.bars.stock];
  const size = stock ? builtSize(stock, lay, plies, stack) : { w_mm: 0, d_mm: 0 };
  const wrap = plan.cloth.fixing.to === 'back' ? size.w_mm : 0;
  const extra = 2 * (size.d_mm + plan.bars.lip_mm + wrap + plan.cloth.fixing.turn_mm);
  return ((plan.face.width_mm + extra) * (plan.face.height_mm + extra)) / 1e6;
}

/**
 * Mass of the finished piece by part, kg: the wood as given, the cloth with its turned edges, the dry ground by coats
 * (the shelf's first ground), an allowance
 * for dry paint on the face (the shelf's `paint-mass`, a proposal: thick impasto weighs several times more), and steel:
 * hanging hardware (the heaviest on the shelf), staples, nails, screws, angles.
 * A cloth the shelf lacks weighs nothing here: the plan reader refuses it before.
 */
export function weightParts(plan: Plan, shelf: Shelf, wood_kg: number): Model['weight'] {
  const face_m2 = (plan.face.width_mm * plan.face.height_mm) / 1e6;
  const ground = Object.values(shelf.grounds)[0];
  const cloth_kg = ((shelf.cloths[plan.cloth.use]?.mass_g_per_m2 ?? 0) * clothArea_m2(plan, shelf)) / 1000;
  const ground_kg = ((ground?.mass_g_per_m2_per_coat ?? 0) * plan.ground.coats * face_m2) / 1000;
  const paint_kg = (shelfNumber(shelf, 'paint-mass') * face_m2) / 1000;
  const hardware_kg = hardwareMass_kg(plan, shelf);
  return {
    wood_kg,
    cloth_kg,
    ground_kg,
    paint_kg,
    hardware_kg,
    total_kg: wood_kg + cloth_kg + ground_kg + paint_kg + hardware_kg,
  };
}
