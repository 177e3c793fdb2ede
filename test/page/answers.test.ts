import { describe, expect, test } from 'vitest';
import type { Ask } from '../../src/page/engine/client.js';
import type { Asks, BenchTexts, Kind } from '../../src/page/engine/protocol.js';
import { answer, answeredEdit, benchTexts, changes, followPlan, settledEdit } from '../../src/page/state/answers.js';
import { changeText, edits, openPlan, planText } from '../../src/page/state/plan.js';

/** An engine that answers when the test says so. */
function heldEngine(): { readonly ask: Ask; readonly open: { readonly kind: Kind; readonly about: unknown; readonly reply: (given: unknown) => void }[] } {
  const open: { kind: Kind; about: unknown; reply: (given: unknown) => void }[] = [];
  const ask = (<K extends Kind>(kind: K, about: Asks[K]['ask']) => new Promise<unknown>((done) => open.push({ kind, about, reply: done }))) as Ask;
  return { ask, open };
}

const turn = (ms = 0): Promise<void> => new Promise((done) => setTimeout(done, ms));
const texts: BenchTexts = { shelf: { file: 'shelf.yaml', text: '' }, own_shelf: null, rules: [], entry: 'baseline.yaml', sources: '' };
const glance = { verdict: 'stop', word: 'Stop', reasons: [], amounts: [] };
const given = { glance, problems: [], assumed: [] };

describe('verdict and changes', () => {
  test('an edit during the search for changes is judged at once by the first engine; the search is told to rest, and what it found of the plan before is not shown', async () => {
    const [first, side] = [heldEngine(), heldEngine()];
    let started = 0;
    openPlan('plan: 1\nname: Jug\n', 'jug.yaml');
    benchTexts.value = texts;
    followPlan(first.ask, () => {
      started++;
      return { ask: side.ask, end: () => {} };
    });
    await turn();
    expect(first.open.map(({ kind }) => kind)).toEqual(['bench']);
    first.open[0]!.reply({ limits: [], sections: {} });
    await turn();
    first.open[1]!.reply(given);
    await turn();
    expect(answer.value).toBe(given);
    expect(started).toBe(0);
    await turn(200);
    expect(started).toBe(1);
    expect(side.open.map(({ kind }) => kind)).toEqual(['bench', 'changes']);
    expect(side.open[1]!.about).toEqual({ file: 'jug.yaml', text: 'plan: 1\nname: Jug\n' });

    changeText('plan: 1\nname: Mug\n');
    await turn();
    expect(first.open.map(({ kind }) => kind)).toEqual(['bench', 'audit', 'audit']);
    expect(first.open[2]!.about).toEqual({ file: 'jug.yaml', text: 'plan: 1\nname: Mug\n' });
    expect(side.open.map(({ kind }) => kind)).toEqual(['bench', 'changes', 'rest']);
    first.open[2]!.reply(given);
    await turn();
    expect(answeredEdit.value).toBe(edits.value);
    side.open[1]!.reply([{ words: 'of the plan before' }]);
    await turn();
    expect(changes.value).toBeNull();

    await turn(200);
    expect(side.open.map(({ kind }) => kind)).toEqual(['bench', 'changes', 'rest', 'changes']);
    side.open[3]!.reply([{ words: 'of this plan' }]);
    await turn();
    expect(changes.value).toEqual([{ words: 'of this plan' }]);
    expect(settledEdit.value).toBe(edits.value);
    expect(started).toBe(1);
    expect(planText.value).toContain('Mug');
  });
});
