import { batch, effect, signal } from '@preact/signals';
import type { Ask } from '../engine/client.js';
import type { Answer, BenchSeen, BenchTexts, ChangeSeen } from '../engine/protocol.js';
import { edits, planFile, planText } from './plan.js';

/** What plans are judged with; null until the page knows. */
export const benchTexts = signal<BenchTexts | null>(null);
/** Shelf and rules as read. */
export const bench = signal<BenchSeen | null>(null);
/** The answer to a plan, and how many edits it stands for. */
export const answer = signal<Answer | null>(null);
export const answeredEdit = signal(-1);
/** What could be changed; null while it is worked out. */
export const changes = signal<readonly ChangeSeen[] | null>(null);
/** How many edits everything shown stands for. */
export const settledEdit = signal(-1);
/** A bug that the engine met, in its own words. */
export const failure = signal<string | null>(null);

/** Keeps the answers in step with plan, shelf and rules: one question at a time, always about the latest. */
export function followPlan(ask: Ask): void {
  let running = false;
  let askedBench: BenchTexts | null = null;
  const stale = (edit: number): boolean => edit !== edits.peek() || askedBench !== benchTexts.peek();
  const judge = async (): Promise<void> => {
    if (askedBench !== benchTexts.peek()) {
      askedBench = benchTexts.peek();
      if (askedBench === null) return;
      const seen = await ask('bench', askedBench);
      // The table of limits stays while they cannot be read, so that they can be put right in it.
      bench.value = seen.limits.length > 0 ? seen : { ...seen, limits: bench.peek()?.limits ?? [] };
    }
    const edit = edits.peek();
    const plan = { text: planText.peek(), file: planFile.peek() };
    const given = await ask('audit', plan);
    if (stale(edit)) return;
    batch(() => {
      answer.value = given;
      answeredEdit.value = edit;
      changes.value = given.glance === null || given.glance.verdict === 'clear' ? [] : null;
    });
    const found = given.glance === null ? [] : await ask('changes', plan);
    if (stale(edit)) return;
    batch(() => {
      changes.value = found ?? [];
      settledEdit.value = edit;
    });
  };
  const run = async (): Promise<void> => {
    if (running) return;
    running = true;
    try {
      do await judge(); while (stale(settledEdit.peek()));
      failure.value = null;
    } catch (error) {
      batch(() => {
        failure.value = error instanceof Error ? error.message : String(error);
        // No verdict stands for a plan that it was not given to.
        answer.value = { glance: null, problems: [], assumed: [] };
        changes.value = [];
      });
    }
    running = false;
  };
  effect(() => {
    void benchTexts.value;
    void edits.value;
    void run();
  });
}
