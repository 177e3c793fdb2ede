import { frameName } from '../cutting/pieces/pool.js';
import { piecesOf } from '../cutting/pieces/pieces.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Slot } from './frame.js';

/** One frame of one plan, from 1; plans in the order given. */
export interface Copy {
  readonly plan: Plan;
  /** Index of the plan. */
  readonly index: number;
  readonly copy: number;
}

/** Every frame of every plan by itself. */
export const copiesOf = (plans: readonly Plan[]): readonly Copy[] =>
  plans.flatMap((plan, index) => Array.from({ length: plan.count }, (_, i) => ({ plan, index, copy: i + 1 })));

/**
 * The bars' and crossbars' pieces of every frame, tagged as in the cut list; braces are too short to matter and are cut
 * from what is left.
 */
export function slotsOf(plans: readonly Plan[], shelf: Shelf): readonly Slot[] {
  const lists = plans.map((plan) => piecesOf(plan, shelf));
  const copies = copiesOf(plans);
  return copies.flatMap(({ index, copy }, frame) => {
    const name = frameName(plans, index, copy);
    return (lists[index]?.pieces ?? [])
      .filter(({ part }) => part !== 'brace')
      .map((piece): Slot => ({ frame, piece, tag: name === '' ? piece.label : `${name}-${piece.label}` }));
  });
}
