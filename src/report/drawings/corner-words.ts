import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { counted } from '../words/verdict.js';
import type { CornerBuild } from './corner-shape.js';

const plates = {
  timber: 'a timber brace',
  'ply-gusset': 'a plywood gusset on the back',
  'steel-angle': 'a flat steel angle on the back',
} as const;

/** The corner for who cannot see it. */
export function describeCorner({ units, cut, glued, nails: n, brace: b, ply_screws }: CornerBuild): string {
  const parts = [
    {
      mitre: 'The bars meet in a mitre',
      butt: 'The level bar butts against the upright one',
      'half-lap': 'The bars are half-lapped, the level one in front',
      keyed:
        'The tongue of the level bar sits in the slot of the upright one between mitred shoulders, with two keys from inside',
    }[cut],
    glued ? 'glued over the whole face' : 'without glue',
    ...(n === null ? [] : [`${n.name} from ${cut === 'half-lap' ? 'the back' : 'outside'}`]),
    ...(b === null ? [] : [`${plates[b.kind]}, leg ${formatLength(b.leg_mm, units)}`]),
    ...(ply_screws !== null ? ['screws through the plies'] : []),
  ];
  return `${parts.join('; ')}. Drawn to scale.`;
}

/** What the drawing shows, in a line each below it. */
export function cornerNotes({
  cut,
  nails: n,
  brace: b,
  plate_screws,
  ply_screws,
  units,
}: CornerBuild): readonly string[] {
  return [
    ...(cut === 'keyed' ? ['Tongue in slot, dry (dashed); two keys, driven last.'] : []),
    ...(n === null
      ? []
      : [
          `${counted(n.count, 'nail')} from ${cut === 'half-lap' ? 'the back' : 'outside'}, ${formatLength(n.length_mm, units)} long, ${formatLength(n.place_mm, units)} from the corner.`,
        ]),
    ...(b === null
      ? []
      : [
          b.kind === 'timber'
            ? 'Brace between the bars, ends at 45°.'
            : `${b.kind === 'ply-gusset' ? 'Gusset' : 'Steel angle'} on the back (dashed).`,
        ]),
    ...(plate_screws === null || plate_screws.places_mm.length === 0
      ? []
      : [
          b?.kind === 'timber'
            ? `Its screws ${formatLength(plate_screws.places_mm[0] ?? 0, units)} from the pointed toe.`
            : `Its screws ${plate_screws.places_mm.map((mm) => formatLength(mm, units)).join(', ')} from the corner.`,
        ]),
    ...(ply_screws === null
      ? []
      : [
          `Ply screws from the ${ply_screws.from === 'back' ? 'back' : 'inner edge'}, from the corner:`,
          `level bar ${placesSaid(ply_screws.level_mm, units)}; upright bar ${placesSaid(ply_screws.upright_mm, units)}.`,
        ]),
  ];
}

/** The first two places stand for all; the sheet lists them. */
const placesSaid = (mm: readonly number[], units: UnitSystem): string =>
  mm
    .slice(0, 2)
    .map((one) => formatLength(one, units))
    .join(', ');
