import type { FasteningLine } from '../../mechanics/fasteners/fastening-sheet.js';
import type { Drawn } from '../audit-view.js';
import type { CornerBuild } from '../drawings/corner-shape.js';
import { nailsInWords } from '../words/build.js';
import { seamsOf } from './picture-data.js';

/** The numbers the corner picture draws: the top left corner, with what the fastening sheet puts there. */
export function cornerBuildOf({ plan, model, shelf }: Drawn, lines: readonly FasteningLine[]): CornerBuild {
  const { corners } = plan;
  const line = (name: FasteningLine['name']): FasteningLine | undefined => lines.find((l) => l.name === name);
  const nails = line('corner-nails');
  const plate = line('brace-screws');
  const ply = line('ply-screws');
  const placesOn = (bar: string): readonly number[] => ply?.rows.find((row) => row.piece === bar)?.places_mm ?? [];
  return {
    units: plan.units,
    cut: corners.cut,
    glued: corners.glue !== null,
    level_w_mm: model.bars.top.section.w_mm,
    upright_w_mm: model.bars.left.section.w_mm,
    nails:
      nails === undefined
        ? null
        : {
            count: nails.count / 4,
            length_mm: nails.length_mm,
            name: nailsInWords(nails.count / 4, corners.nails?.use ?? '', { plan, shelf }),
            place_mm: nails.rows[0]?.places_mm[0] ?? nails.length_mm / 2,
          },
    brace:
      corners.brace === null
        ? null
        : {
            kind: corners.brace.kind,
            leg_mm: model.plate?.leg_mm ?? corners.brace.leg_mm,
            w_mm: model.braces[0]?.section.w_mm ?? model.plate?.wide_mm ?? 0,
          },
    plate_screws:
      plate === undefined ? null : { places_mm: plate.rows[0]?.places_mm ?? [], length_mm: plate.length_mm },
    ply_screws:
      ply === undefined
        ? null
        : {
            level_mm: placesOn('top'),
            upright_mm: placesOn('left')
              .map((mm) => plan.face.height_mm - mm)
              .reverse(),
            length_mm: ply.length_mm,
            from: model.bars.top.stack === 'side-by-side' ? 'inner-edge' : 'back',
          },
    seams_mm: seamsOf(model.bars.top),
  };
}
