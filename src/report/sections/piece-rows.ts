import { capital } from '../../base/capital.js';
import { upToTape } from '../../base/tape.js';
import type { CutPlan } from '../../cutting/boards/purchase.js';
import type { Piece } from '../../cutting/pieces/piece.js';
import { userText } from '../clean-text.js';
import type { Cell, Column } from '../tree.js';
import type { Telling } from '../telling.js';
import { stockNames } from '../words/stock.js';
import { numberFor } from '../words/supply.js';

/** Heads of the cut list of so many frames. */
export const pieceColumns = (frames: number): readonly Column[] => [
  { head: 'Piece' },
  { head: numberFor(frames), align: 'right' },
  { head: 'Stock' },
  { head: 'Cut to', align: 'right' },
  { head: 'Short side', align: 'right' },
  { head: 'Ends' },
];

/** Rows of the cut list: equal pieces share a row. The number counts every frame of the plan. */
export function pieceRows(told: Telling, cut: CutPlan): readonly (readonly Cell[])[] {
  const pieces = cut.lists[0]?.pieces ?? [];
  const equal = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = [
      piece.stock,
      piece.cut_mm,
      piece.short_mm,
      piece.ends,
      piece.face_up,
      piece.later?.cut_mm,
      piece.later?.ends,
      ...piece.notes,
    ].join('/');
    equal.set(key, [...(equal.get(key) ?? []), piece]);
  }
  const named = stockNames(cut);
  return [...[...equal.values()].map((group) => row(told, group, named)), ...lipRows(told, cut)];
}

function row(told: Telling, group: readonly Piece[], named: (stock: string) => string): readonly Cell[] {
  const first = group[0] as Piece;
  return [
    labels(group),
    String(group.length * told.audit.plan.count),
    named(first.stock),
    told.length(first.cut_mm),
    first.ends === 'mitre' ? told.length(upToTape(first.short_mm, told.units)) : '',
    first.ends === 'mitre' ? '45°' : 'square',
  ];
}

/** The strips of a raised lip, equal ones in a row. */
function lipRows({ length, audit: { plan, supplies } }: Telling, cut: CutPlan): readonly (readonly Cell[])[] {
  const lips = cut.lists[0]?.lips ?? [];
  const stock = supplies.lines.find(({ kind }) => kind === 'lip')?.name ?? 'strip for the lip';
  return [...new Set(lips.map(({ cut_mm }) => cut_mm))].map((cut_mm): readonly Cell[] => {
    const some = lips.filter((one) => one.cut_mm === cut_mm);
    return [
      some.map(({ label }) => label).join(', '),
      String(some.length * plan.count),
      userText(stock, 60),
      length(cut_mm),
      '',
      '45°',
    ];
  });
}

const labels = (group: readonly Piece[]): string => group.map((piece) => piece.label).join(', ');

/** What the table has no room for: later cuts, laps, which face is up; one line per kind of piece. */
export function pieceNotes(told: Telling, cut: CutPlan): readonly string[] {
  const notes = new Map<string, Piece[]>();
  for (const piece of cut.lists[0]?.pieces ?? []) {
    const later =
      piece.later === null
        ? ''
        : `join the plies first, then cut ${piece.later.ends === 'mitre' ? '45° at both ends' : 'square'} to ${told.length(piece.later.cut_mm)}`;
    const face = piece.face_up === 'either face' ? '' : `at the saw ${piece.face_up}`;
    const parts = [
      later,
      face,
      lapWords(told, piece),
      piece.notes.map((note, i) => (i === 0 ? note : capital(note))).join('. '),
    ].filter((part) => part !== '');
    if (parts.length > 0) notes.set(parts.join('; '), [...(notes.get(parts.join('; ')) ?? []), piece]);
  }
  return [...notes].map(([words, pieces]) => `${labels(pieces)}: ${words}.`);
}

/** How long and how deep each half-lap is; laps of one size are told once. */
function lapWords({ length }: Telling, { laps, part }: Piece): string {
  const sizes = [
    ...new Set(laps.map(({ width_mm, depth_mm }) => `${length(width_mm)} long and ${length(depth_mm)} deep`)),
  ];
  return sizes.length === 0
    ? ''
    : `${part === 'bar' ? 'at both ends a lap' : laps.length === 1 ? 'a lap' : 'laps'} ${sizes.join(' or ')}`;
}
