import type { CutPlan } from '../../cutting/purchase.js';
import type { Piece } from '../../cutting/piece.js';
import { userText } from '../clean-text.js';
import type { Cell } from '../tree.js';
import type { Telling } from '../telling.js';

/** Rows of the cut list: equal pieces share a row. The number counts every frame of the plan. */
export function pieceRows(told: Telling, cut: CutPlan): readonly (readonly Cell[])[] {
  const pieces = cut.lists[0]?.pieces ?? [];
  const equal = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = [piece.stock, piece.cut_mm, piece.short_mm, piece.ends, piece.face_up, piece.later?.cut_mm, piece.later?.ends, piece.note].join('/');
    equal.set(key, [...(equal.get(key) ?? []), piece]);
  }
  return [...equal.values()].map((group) => row(told, group));
}

function row(told: Telling, group: readonly Piece[]): readonly Cell[] {
  const first = group[0] as Piece;
  const ends = first.ends === 'mitre' ? '45° both ends' : 'square';
  const later = first.later === null ? '' : `; when the plies are joined, ${first.later.ends === 'mitre' ? '45° at both ends' : 'square'} to ${told.length(first.later.cut_mm)}`;
  const note = first.note === '' ? '' : ` ${first.note}`;
  return [
    group.map((piece) => piece.label).join(', '),
    String(group.length * told.audit.plan.count),
    userText(first.stock, 40),
    told.length(first.cut_mm),
    first.ends === 'mitre' ? told.length(first.short_mm) : '',
    `${ends}${later}.${note}`,
    first.face_up,
  ];
}
