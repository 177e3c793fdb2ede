import { barNames, type BarName } from '../../base/names.js';
import type { MemberBuild, Model } from '../../model/model.js';
import { usualLengths } from '../../plan/defaults.js';
import {
  byThickness,
  namesPlyScrew,
  plyScrewFit,
  plyScrewFor,
  plyStack,
  sameStack,
  type PlyStack,
} from '../../plan/ply-screw.js';
import { beforePlyScrews } from '../occupancy/before-ply-screws.js';
import { inLine, inTheWayAt, type Occupant } from '../occupancy/occupant.js';
import { plyScrewBoxes, type PlyScrewSize } from '../occupancy/ply-screw-boxes.js';
import { screwLateral_N } from './design-load.js';
import { screwHoles } from './hole-plan.js';
import type { FasteningRow, PlannedFastening } from './planned-fastening.js';
import { freePlaces_mm, rowPlaces_mm } from './row-places.js';
import { screwFields } from './screw-fields.js';

/** Faces at least this high take two staggered lines of screws (proposal). */
const TWO_LINES_FROM_MM = 60;

const upTo5 = (mm: number): number => Math.ceil(mm / 5 - 1e-9) * 5;

const across = ({ stock, lay, plies, stack }: MemberBuild): PlyStack => plyStack(stock, { lay, plies }, stack);

/**
 * The screws that hold plies together: those of the bars, with every crossbar that is built like them, and those of
 * crossbars built of thinner or
 * thicker plies, which need a screw of their own and are judged by the thinnest. Empty when the plan has none.
 */
export function planPlyScrews(model: Model): readonly PlannedFastening[] {
  const { bond } = model.plan.bars;
  if (bond !== 'screws' && bond !== 'glue+screws') return [];
  const bars = barNames.map((name) => model.bars[name]);
  const like =
    bars[0]?.plies === 1
      ? []
      : [...bars, ...model.crossbars.filter((crossbar) => sameStack(across(crossbar), across(model.bars.top)))];
  const others = model.crossbars.filter((crossbar) => crossbar.plies > 1 && !like.includes(crossbar));
  const thinnestFirst = [...others].sort((p, q) => byThickness(across(p), across(q)));
  return [
    like.length > 0 ? plyScrews('ply-screws', like, model) : null,
    others.length > 0 ? plyScrews('crossbar-ply-screws', thinnestFirst, model) : null,
  ].filter((f) => f !== null);
}

/** Screws of members that take the same ones; the first of them decides. Null when no screw fits. */
function plyScrews(
  name: 'ply-screws' | 'crossbar-ply-screws',
  built: readonly MemberBuild[],
  model: Model,
): PlannedFastening | null {
  const { plan, shelf } = model;
  const { bond } = plan.bars;
  const bars: readonly MemberBuild[] = barNames.map((bar) => model.bars[bar]);
  const lead = built[0];
  if (lead === undefined) return null;
  const screw = plyScrewFor(plan, shelf, across(lead));
  if (screw === null) return null;
  const named = namesPlyScrew(plan);
  const every_mm = plan.ply_screws?.every_mm ?? usualLengths[plan.units].ply_screw_every_mm;
  const role = bond === 'screws' ? 'load' : 'clamp';
  const { ply_mm, face_mm } = across(lead);
  const fit = plyScrewFit(screw.length_mm, ply_mm, lead.plies);
  const sets = fit.passes === 0 ? 1 : Math.ceil((lead.plies - 1) / fit.passes);
  const two = face_mm >= TWO_LINES_FROM_MM;
  const end_mm = upTo5(10 * screw.shank_mm);
  const edge_mm = two ? face_mm / 4 : face_mm / 2;
  const rows = built.map((member): FasteningRow => {
    const isBar = bars.includes(member);
    const length = isBar ? member.span_mm + member.section.w_mm : member.span_mm - model.bars.top.section.w_mm;
    const places_mm = rowPlaces_mm(
      length,
      (isBar ? upTo5(member.section.w_mm) : 0) + end_mm,
      every_mm,
      10 * screw.shank_mm,
    );
    return {
      piece: member.name,
      places_mm: isBar
        ? outOfTheWay(
            model,
            member.name as BarName,
            { shank_mm: screw.shank_mm, length_mm: screw.length_mm, edge_mm },
            places_mm,
            length,
          )
        : places_mm,
    };
  });
  let least_mm = Infinity;
  for (const { places_mm } of rows)
    for (let i = 1; i < places_mm.length; i++) least_mm = Math.min(least_mm, places_mm[i]! - places_mm[i - 1]!);
  const G = lead.stock.species.specific_gravity;
  const side = lead.stack === 'side-by-side';
  return {
    name,
    ...screwFields(screw),
    role,
    G,
    density_kg_per_m3: lead.stock.density_kg_per_m3,
    through_mm: fit.passes * ply_mm,
    reach_mm: fit.passes === 0 ? screw.length_mm - ply_mm : fit.penetration_mm,
    penetration_mm: fit.penetration_mm,
    exit_mm: fit.exit_mm,
    along_grain: false,
    edge_mm,
    end_mm,
    spacing_mm: least_mm === Infinity ? lead.span_mm : least_mm,
    thinnest_mm: ply_mm,
    ...screwHoles(
      screw,
      G,
      role,
      plan,
      shelf,
      named || name === 'ply-screws' ? (plan.ply_screws?.pilot_mm ?? null) : null,
    ),
    lateral_N: screwLateral_N(screw, { G_side: G, G_main: G, side_mm: ply_mm, main_mm: fit.penetration_mm }),
    count: sets * rows.reduce((sum, row) => sum + row.places_mm.length, 0),
    rows,
    way: { into: 'plies', lines: two ? 2 : 1, from: side ? 'inner-face' : 'back', sets },
  };
}

/**
 * Places of a bar's ply screws with those moved that would meet a brace, a crossbar, a hanging point or their screws,
 * on either of two lines.
 */
function outOfTheWay(
  model: Model,
  bar: BarName,
  screw: PlyScrewSize,
  places_mm: readonly number[],
  length_mm: number,
): readonly number[] {
  const [near, far] = plyScrewBoxes(model, bar, screw, [0, 0]) as [Occupant, Occupant];
  const beside = beforePlyScrews(model).filter((other) => inLine(near, other) || inLine(far, other));
  const blocked = (mm: number): boolean => {
    for (const other of beside) if (inTheWayAt(near, mm, other)) return true;
    return false;
  };
  return freePlaces_mm(places_mm, blocked, length_mm, 10 * screw.shank_mm, model.plan.units === 'inch' ? 25.4 / 16 : 1);
}
