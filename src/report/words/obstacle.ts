import { spokenName } from '../../base/names.js';
import type { Obstacle } from '../../mechanics/occupancy/occupant.js';

const words: Readonly<Record<Obstacle['kind'], (of: string) => string>> = {
  brace: (corner) => `the foot of the ${corner} brace`,
  'brace-screw': (corner) => `the screw of the ${corner} brace`,
  gusset: (corner) => `the ${corner} gusset`,
  'gusset-screw': (corner) => `a screw of the ${corner} gusset`,
  angle: (corner) => `the ${corner} angle`,
  'angle-screw': (corner) => `a screw of the ${corner} angle`,
  crossbar: (crossbar) => `the end of ${crossbar}`,
  'crossbar-screw': (crossbar) => `a screw of ${crossbar}`,
  'corner-nail': (corner) => `the nail of the ${corner} corner`,
  ring: (bar) => `the hanging point on the ${bar} bar`,
  'ply-screw': (bar) => `a ply screw of the ${bar} bar`,
  'whole-crossbar': (crossbar) => crossbar,
  'top-braces': () => 'the braces of the top corners',
  'side-bars': () => 'the side bars',
  'all-gussets': () => 'the gussets',
  'all-angles': () => 'the steel angles',
};

/** What is in the way, as one says it: `the foot of the top left brace`. */
export const obstacleInWords = ({ kind, of }: Obstacle): string => words[kind](spokenName(of));
