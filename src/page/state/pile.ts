import { computed, effect, signal } from '@preact/signals';
import { setInText, type YamlValue } from '../../index.js';
import type { Engine } from '../engine/client.js';
import { notPlaced } from '../engine/place.js';
import type { BenchTexts, NamedText, PlacedSeen } from '../engine/protocol.js';
import { benchTexts } from './answers.js';
import { dataOf } from './bench.js';
import { planFile, planText, told, type Path } from './plan.js';

/** The boards in hand, as text; null until there are any. */
export const pile = signal<NamedText | null>(null);
/** What becomes of them; null while there are none. */
export const placed = signal<PlacedSeen | null>(null);
/**
 * How long the placing under way has taken so far, seconds; null when what is shown stands for the boards as they are.
 */
export const placing_s = signal<number | null>(null);

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

/** Tells that a change could not be written. */
export const tellPile = (done: boolean): void => {
  if (!done) told.value = 'Your boards are written in a way that only you can change: do it in their text.';
};

/** The next letter to chalk on a board. */
export function nextMark(marks: readonly unknown[]): string {
  const letters = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));
  return letters.find((letter) => !marks.includes(letter)) ?? `B${marks.length + 1}`;
}

/** What is placed: a plan, a pile, and what they are judged with. */
interface Question {
  readonly bench: BenchTexts;
  readonly plan: NamedText;
  readonly boards: NamedText;
}

/**
 * Places the boards anew whenever plan, bench or pile change, while `watched` says that somebody looks; in an engine of
 * its own, so that no verdict waits for it.
 */
export function followPile(start: () => Engine, watched: () => boolean): void {
  let engine: Engine | null = null;
  let asked: Question | null = null;
  let clock = 0;
  const place = async ({ bench, plan, boards }: Question, fresh: boolean): Promise<PlacedSeen | null> => {
    engine ??= start();
    const { ask } = engine;
    if (fresh) await ask('bench', bench);
    return ask('place', { plan, pile: boards });
  };
  const rest = (): void => {
    clearInterval(clock);
    placing_s.value = null;
  };
  const follow = async (question: Question): Promise<void> => {
    const busy = placing_s.peek() !== null;
    if (busy) {
      engine?.end();
      engine = null;
    }
    const fresh = engine === null || asked?.bench !== question.bench;
    asked = question;
    rest();
    placing_s.value = 0;
    clock = setInterval(() => {
      placing_s.value = (placing_s.peek() ?? 0) + 1;
    }, 1000) as unknown as number;
    try {
      const seen = await place(question, fresh);
      if (asked !== question) return;
      placed.value = seen;
    } catch (error) {
      if (asked !== question) return;
      placed.value = notPlaced(
        `The boards could not be placed; this should not have happened: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
    rest();
  };
  effect(() => {
    const bench = benchTexts.value;
    const boards = pile.value;
    const plan = { text: planText.value, file: planFile.value };
    if (boards === null) {
      asked = null;
      engine?.end();
      engine = null;
      rest();
      placed.value = null;
    } else if (
      bench !== null &&
      watched() &&
      !(asked?.bench === bench && asked.boards === boards && asked.plan.text === plan.text)
    )
      void follow({ bench, plan, boards });
  });
}
