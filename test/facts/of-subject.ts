import { factsWanted } from '../../src/facts/fact-source.js';
import type { FactInput } from '../../src/facts/declare.js';
import type { Fact, FactPath } from '../../src/facts/fact.js';
import type { FactSettings, Model, Solution } from '../../src/model/model.js';

type OfSubject = (model: Model, solution?: Solution, settings?: FactSettings) => Fact[];

/** The facts of one subject, by the beginnings of their paths, as the audit works them out; what a subject does not read need not be there. */
export function ofSubject(...beginnings: readonly string[]): OfSubject {
  return (model, solution, settings) => {
    const there = <T>(part: T | undefined): T => {
      if (part === undefined) throw new Error(`${beginnings.join(', ')} read more than they were given`);
      return part;
    };
    const input: FactInput = { model, get solution() { return solution as Solution; }, get settings() { return settings as FactSettings; }, get cut() { return there<never>(undefined); }, get too_long() { return there<never>(undefined); }, get bought() { return there<never>(undefined); } };
    return factsWanted(input, (_, path: FactPath) => beginnings.some((one) => path.startsWith(one)));
  };
}

export const frameFacts = ofSubject(
  'frame.width', 'frame.height', 'frame.shorter', 'frame.longer', 'frame.crossbars_count', 'frame.diagonal', 'frame.weight', 'frame.lift', 'frame.fits_door', 'frame.dish', 'frame.load', 'frame.critical',
  'frame.twist', 'frame.long_term', 'frame.second', 'frame.mode', 'bar.span', 'bar.unsupported', 'bar.w_mm', 'bar.d_mm', 'bar.plies', 'bar.bond', 'bar.inward', 'bar.dish', 'bar.roll', 'bar.axial', 'bar.stress',
  'crossbar.');
export const clothFacts = ofSubject('cloth.');
export const cornerFacts = ofSubject('corner.');
export const fasteningFacts = ofSubject('fastening.');
export const glueFacts = ofSubject('frame.glue_ml', 'frame.clamps_count');
export const hangingFacts = ofSubject('hanging.');
export const lumberFacts = ofSubject('lumber.', 'bar.seasonal', 'corner.mitre_gap');
export const warpFacts = ofSubject('warp.', 'bar.natural_', 'board.');
/** What the plan chose, in its own words. */
export const choiceFacts = ofSubject(
  'frame.lay', 'frame.plies_count', 'frame.pairing', 'frame.corner_', 'cloth.fixed_to', 'cloth.use', 'cloth.ground', 'bar.stock', 'bar.lay', 'crossbar.stock', 'crossbar.w_mm', 'crossbar.d_mm',
  'corner.cut', 'corner.glue', 'corner.nail', 'corner.brace');
