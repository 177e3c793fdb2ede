import { countInWords } from '../base/count-words.js';
import type { UnitSystem } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import type { FasteningLine } from '../mechanics/fasteners/fastening-sheet.js';
import type { FasteningWay } from '../mechanics/fasteners/planned-fastening.js';

/** Where fastenings go and from where they are driven, as half sentences, and what else there is to say of them. */
export interface WayWords {
  readonly where: string;
  readonly from: string;
  /** Empty where there is nothing more to say. */
  readonly note: string;
}

const joins: Readonly<Record<FasteningWay['into'], string>> = {
  plies: 'Plies together',
  'crossbar-ends': 'Crossbars to the bars',
  corners: 'Corners',
  'brace-ends': 'Corner braces',
  gussets: 'Corner gussets',
  angles: 'Corner angles',
};

/** What a fastening is for. */
export const forWhat = ({ name, way }: Pick<FasteningLine, 'name' | 'way'>): string =>
  name === 'crossbar-ply-screws' ? 'Plies of the crossbars' : joins[way.into];

/** A way of fastening in words, lengths in the reader's own units. */
export function wayInWords(way: FasteningWay, units: UnitSystem): WayWords {
  switch (way.into) {
    case 'plies':
      return {
        where:
          way.lines === 2
            ? 'two staggered lines, a quarter of the face in from each edge'
            : 'one line along the middle of the face',
        from:
          way.from === 'inner-face'
            ? 'the inner face of the bar, so that the heads stay off the cloth'
            : 'the back of the bar, so that the tips stay short of the cloth',
        note: way.sets === 1 ? '' : `${way.sets} sets: one ply at a time, or from both faces in turn.`,
      };
    case 'crossbar-ends':
      return {
        where:
          way.each === 1
            ? 'one in each end, in the middle'
            : 'two in each end, a quarter of the depth from front and back',
        from: way.straight
          ? 'the outer edge of the bar into the end of the crossbar'
          : 'the side of the crossbar, slanting into the bar',
        note: way.straight
          ? 'Sink the head below the edge: the cloth passes over it. In end grain a screw holds sideways only.'
          : 'They go in slantwise because no screw on the shelf that reaches through the bar is thin enough for the end of the crossbar.',
      };
    case 'corners':
      return {
        where:
          way.each === 1
            ? 'one, in the middle of the thickness'
            : `${countInWords(way.each)}, spread over the thickness, from either side in turn`,
        from: way.from === 'back' ? 'the back' : 'the outer edge, square to it, across the joint',
        note: cornerNote(way),
      };
    case 'brace-ends':
      return {
        where: `one in each end, square to the bar, ${formatLength(way.toe_mm, units)} from the toe of the mitred end`,
        from: 'the edge of the brace that looks to the middle of the frame',
        note: 'The brace sits between the bars, flush with their backs, ends cut at 45 degrees.',
      };
    case 'gussets':
      return {
        where: 'one line along the middle of the bar',
        from: 'the back',
        note: `Each gusset is a right-angled triangle with legs of ${formatLength(way.leg_mm, units)}, its right angle on the corner of the frame.`,
      };
    case 'angles':
      return { where: 'one line along the middle of the bar', from: 'the back', note: '' };
  }
}

function cornerNote({ from, glued }: { readonly from: 'outer-edge' | 'back'; readonly glued: boolean }): string {
  if (from === 'back') return '';
  return glued
    ? 'Drive it when the glue has held in the clamps, so that the joint does not slide.'
    : 'Clamp the corner while you drive it, so that the joint does not slide.';
}
