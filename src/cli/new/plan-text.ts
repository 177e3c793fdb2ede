import { yamlText, yamlValue } from './yaml-words.js';

/** What a new plan says; lengths as the user wrote them. */
export interface NewPlan {
  readonly name: string;
  readonly width: string;
  readonly height: string;
  readonly stock: string;
  readonly lay: 'flat' | 'edge';
  readonly plies: number;
  readonly crossbar: 'none' | 'upright' | 'level';
  readonly chosen: 'unsorted' | 'plain' | 'picked';
  readonly moisture: string;
  readonly hang: 'wire' | 'two-hooks' | 'none';
}

/** A plan and the file it goes to. */
export interface Wanted {
  readonly plan: NewPlan;
  readonly file: string;
}

/**
 * The text of a plan with a remark on every line that is easy to get wrong. `schema` is the file an editor may check it
 * by, seen from the plan; `setback` puts a crossbar laid flat that far behind the cloth.
 */
export function planText(plan: NewPlan, schema: string | null, setback: string | null = null): string {
  const lines = [
    ...(schema === null ? [] : [`# yaml-language-server: $schema=${schema}`]),
    '# Before you cut: sightdown audit on this file.',
    '# Lengths carry their units: 900 mm, 1.2 m, 35-3/8 in, 2 ft 11 in.',
    'plan: 1',
    `name: ${yamlText(plan.name)}`,
    `face: { width: ${yamlValue(plan.width)}, height: ${yamlValue(plan.height)} } # outside size; its units are those of the report`,
    'bars:',
    `  stock: ${yamlValue(plan.stock)} # key of the lumber on the shelf`,
    `  lay: ${plan.lay} # flat: wide side against the cloth; edge: wide side off the wall`,
    `  plies: ${plan.plies} # boards that make up one bar`,
    ...(plan.plies > 1 ? ['  pairing: opposed # bow of one board set against the bow of its partner'] : []),
    ...(plan.crossbar === 'none'
      ? []
      : [
          'crossbars:',
          `  - { runs: ${plan.crossbar}, at: 1/2${setback === null ? '' : `, lay: flat, setback: ${setback}`} } # across the middle${setback === null ? '' : ', its back level with the back of the bars: so the brush does not press the cloth against it'}`,
        ]),
    `lumber: { chosen: ${plan.chosen}, moisture: ${yamlValue(plan.moisture)} } # chosen: unsorted, plain (a glance along each) or picked (sighted, and checked with winding sticks)`,
    `hang: { by: ${plan.hang} } # wire, two-hooks or none`,
    '# What is not said here is assumed, and the report lists it: corners, cloth and pull, ground, room, spend, door …',
  ];
  return `${lines.join('\n')}\n`;
}
