import { barFacts } from './bars.js';
import { boardFacts } from './boards.js';
import { choiceFacts } from './choices.js';
import { clothFacts } from './cloth.js';
import { cornerFacts } from './corners.js';
import { crossbarFacts } from './crossbars.js';
import { cuttingFacts } from './cutting.js';
import { fasteningFacts } from './fastenings.js';
import { frameSizeFacts } from './frame-size.js';
import { glueFacts } from './glue.js';
import { hangingFacts } from './hanging.js';
import { lumberFacts, seasonFacts } from './lumber.js';
import { stabilityFacts } from './stability.js';
import { barWarpFacts, causeFacts, warpFacts } from './warp.js';

/** Every group of facts, in the order in which they are listed. A new group needs no other line than its own here. */
export const factGroups = [
  frameSizeFacts,
  stabilityFacts,
  choiceFacts,
  barFacts,
  crossbarFacts,
  warpFacts,
  causeFacts,
  barWarpFacts,
  boardFacts,
  lumberFacts,
  seasonFacts,
  cornerFacts,
  fasteningFacts,
  glueFacts,
  clothFacts,
  hangingFacts,
  cuttingFacts,
] as const;

type PathsOf<Group> = Group extends { readonly declared: ReadonlyMap<infer Path, unknown> } ? Path : never;

/** The path of a fact that is declared: `bar.inward_bow_mm`. */
export type FactPath = PathsOf<(typeof factGroups)[number]>;
