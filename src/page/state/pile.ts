import { computed, effect, signal } from '@preact/signals';
import { setInText, type YamlValue } from '../../index.js';
import type { Ask } from '../engine/client.js';
import type { NamedText, PlacedSeen } from '../engine/protocol.js';
import { answer } from './answers.js';
import { dataOf } from './bench.js';
import { planFile, planText, type Path } from './plan.js';

/** The boards in hand, as text; null until there are any. */
export const pile = signal<NamedText | null>(null);
/** What becomes of them; null while there are none or it is worked out. */
export const placed = signal<PlacedSeen | null>(null);

/** The boards as the text says them. */
export const pileBoards = computed((): readonly Readonly<Record<string, unknown>>[] => {
  const { boards } = dataOf(pile.value?.text);
  return Array.isArray(boards) ? (boards as readonly Readonly<Record<string, unknown>>[]) : [];
});

const blank = { file: 'my-boards.yaml', text: 'pile: 1\nname: My boards\n' };

/** Writes into the pile; false where its text cannot be changed that way. */
export function setPile(path: Path, value: YamlValue): boolean {
  const { file, text } = pile.peek() ?? blank;
  const changed = setInText(text, path, value);
  if (changed !== null) pile.value = { file, text: changed };
  return changed !== null;
}

/** The next letter to chalk on a board. */
export function nextMark(marks: readonly unknown[]): string {
  const letters = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));
  return letters.find((letter) => !marks.includes(letter)) ?? `B${marks.length + 1}`;
}

/** Places the boards anew whenever plan, bench or pile change, while `watched` says that somebody looks. */
export function followPile(ask: Ask, watched: () => boolean): void {
  let last = 0;
  effect(() => {
    void answer.value;
    const boards = pile.value;
    if (boards === null || !watched()) {
      if (boards === null) placed.value = null;
      return;
    }
    const mine = ++last;
    void ask('place', { plan: { text: planText.peek(), file: planFile.peek() }, pile: boards }).then((seen) => {
      if (mine === last) placed.value = seen;
    });
  });
}
