import type { GlueSheet } from '../../mechanics/glue/glue-sheet.js';
import type { Plan } from '../../plan/plan.js';

/** What to mind when gluing, for the joints and boards that this plan has. */
export function glueAdvice({ lines, damp }: GlueSheet, { lumber }: Plan): readonly string[] {
  const plies = lines.some((line) => line.what === 'plies');
  return [
    ...(lines.some((line) => line.end_grain)
      ? ['End grain drinks glue: brush a thin coat on the cut ends, wait five minutes, then glue as usual.']
      : []),
    ...(plies && lumber.rough_faces === 'inward'
      ? ['Put rough faces together and work the glue into the pits; the smooth faces stay outside.']
      : []),
    ...(plies && lumber.rough_faces === 'outward'
      ? ['The rough faces lie outside: plane or sand them before the cloth goes over them.']
      : []),
    ...(plies ? ['Spread one face thinly and evenly.'] : []),
    ...(damp
      ? [
          'This wood is damper than glue makers ask for (6 to 8 %): the time in the clamps is half as long again for it.',
        ]
      : []),
  ];
}
