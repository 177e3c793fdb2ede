import type { BarName } from './base/names.js';
import type { Source } from './base/sources.js';
import type { FactPath } from './facts/fact.js';
import type { ToolsAtHand } from './order-of-work/tools-at-hand.js';
import type { FactSettings, Model } from './model/model.js';
import { rulesIn } from './rules/in-system.js';
import { limitValue } from './rules/limit-value.js';
import type { Ruleset } from './rules/ruleset.js';
import type { Shelf } from './shelf/shelf.js';

/** What a plan is judged with. What is sampled is as sure as from counting `samples` imagined frames, and the same from the same seed. */
export interface Bench {
  readonly shelf: Shelf;
  readonly ruleset: Ruleset;
  readonly seed: number;
  readonly samples: number;
  /** What a ruleset is held against to say what it relaxes; left out, the lowest file it builds on. */
  readonly baseline?: Ruleset;
  /** What the workshop has; left out, everything is taken to be there. */
  readonly tools?: ToolsAtHand;
  /** The list of sources, by which a report names them in full. */
  readonly sources?: readonly Source[];
}

/**
 * What counts as a lifted corner (share of the shorter side) and as a bowed bar (share of its span) where a ruleset
 * sets no limit: the baseline's own (`proposal`).
 */
const usualShare = { corner_lift: 1 / 150, bar_bow: 1 / 400 };

/**
 * The limits that define a chance: they come from the ruleset and are needed before the facts exist. NaN, and the
 * chance unknown, where one cannot be told.
 */
export function factSettings(model: Model, { ruleset: given, seed, samples }: Bench): FactSettings {
  const ruleset = rulesIn(given, model.plan.units);
  const { width_mm, height_mm } = model.plan.face;
  const shorter_mm = Math.min(width_mm, height_mm);
  const longer_mm = Math.max(width_mm, height_mm);
  const limit_mm = (name: string, span_mm: number): number => {
    const known: Readonly<Partial<Record<FactPath, number>>> = {
      'frame.shorter_side_mm': shorter_mm,
      'frame.longer_side_mm': longer_mm,
      'bar.span_mm': span_mm,
    };
    return limitValue(ruleset, name, (path) => known[path] ?? null)?.value ?? Number.NaN;
  };
  const bow_mm = (name: BarName): number =>
    ruleset.limits.has('bar-bow')
      ? limit_mm('bar-bow', model.bars[name].span_mm)
      : usualShare.bar_bow * model.bars[name].span_mm;
  return {
    corner_lift_limit_mm: ruleset.limits.has('corner-lift')
      ? limit_mm('corner-lift', longer_mm)
      : usualShare.corner_lift * shorter_mm,
    bar_bow_limit_mm: { top: bow_mm('top'), bottom: bow_mm('bottom'), left: bow_mm('left'), right: bow_mm('right') },
    seed,
    samples,
  };
}
