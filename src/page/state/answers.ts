import { batch, effect, signal } from '@preact/signals';
import type { Ask, Engine } from '../engine/client.js';
import type { Answer, BenchSeen, BenchTexts, ChangeSeen, NamedText } from '../engine/protocol.js';
import { edits, planFile, planText } from './plan.js';

/** What plans are judged with; null until the page knows. */
export const benchTexts = signal<BenchTexts | null>(null);
/** Shelf and rules as read. */
export const bench = signal<BenchSeen | null>(null);
/** The keys of a part of the shelf. */
export const shelfKeys = (section: string): readonly string[] =>
  (bench.peek()?.sections[section] ?? []).map(({ key }) => key);
/** The answer to a plan, and how many edits it stands for. */
export const answer = signal<Answer | null>(null);
export const answeredEdit = signal(-1);
/** What could be changed; null while it is worked out. */
export const changes = signal<readonly ChangeSeen[] | null>(null);
/** How many edits everything shown stands for. */
export const settledEdit = signal(-1);
/** A bug that the engine met, in its own words. */
export const failure = signal<string | null>(null);

/** So long the plan has to rest before changes are looked for, ms: who types on is not held up by the search. */
const rest_ms = 120;

/**
 * Keeps the answers in step with plan, shelf and rules: one verdict at a time, always about the latest; changes are
 * looked for once the plan rests, by an engine of
 * their own (`searchEngine`, started when first needed), so that no edit waits for a trial, and given up for the next
 * edit.
 */
export function followPlan(ask: Ask, searchEngine: () => Engine): void {
  let running = false;
  let search: Ask | null = null;
  let searchedBench: BenchTexts | null = null;
  let searching = false;
  let askedBench: BenchTexts | null = null;
  let timer = 0;
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
    const done = given.glance === null || given.glance.verdict === 'clear';
    batch(() => {
      answer.value = given;
      answeredEdit.value = edit;
      changes.value = done ? [] : null;
      failure.value = null;
      if (done) settledEdit.value = edit;
    });
    if (!done) timer = setTimeout(() => void lookForChanges(edit, plan).catch(failed), rest_ms) as unknown as number;
  };
  const lookForChanges = async (edit: number, plan: NamedText): Promise<void> => {
    if (stale(edit) || askedBench === null) return;
    search ??= searchEngine().ask;
    if (searchedBench !== askedBench) {
      searchedBench = askedBench;
      void search('bench', askedBench).catch(failed);
    }
    searching = true;
    const found = await search('changes', plan);
    if (stale(edit)) return;
    searching = false;
    batch(() => {
      changes.value = found ?? [];
      settledEdit.value = edit;
    });
  };
  const failed = (error: unknown): void =>
    batch(() => {
      failure.value = error instanceof Error ? error.message : String(error);
      // No verdict stands for a plan that it was not given to.
      answer.value = { glance: null, problems: [], assumed: [] };
      changes.value = [];
    });
  const run = async (): Promise<void> => {
    clearTimeout(timer);
    if (searching) void search?.('rest', null).catch(failed);
    searching = false;
    if (running) return;
    running = true;
    try {
      do await judge();
      while (askedBench !== null && stale(answeredEdit.peek()));
    } catch (error) {
      failed(error);
    }
    running = false;
  };
  effect(() => {
    void benchTexts.value;
    void edits.value;
    void run();
  });
}
