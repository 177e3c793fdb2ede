import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { canRedo, changeText, followText, openPlan, planText, redo, restHistory, setAt, undo } from '../../src/page/state/plan.js';

const plan = 'plan: 1\nname: Jug\nface: { width: 410 mm, height: 300 mm } # of the jug\n';

/** A text field as the editor is one: it shows what it is given and tells every change of its text, also one that it was given. */
function field(): { readonly text: () => string; readonly type: (typed: string) => void; readonly leave: () => void } {
  let text = '';
  const put = (next: string): void => {
    text = next;
    changeText(text, 'text');
  };
  const leave = followText((next) => {
    if (next !== text) put(next);
  });
  return { text: () => text, type: (typed) => put(`${text}${typed}`), leave };
}

beforeEach(() => openPlan(plan, 'jug.yaml'));

describe('what is taken back can be done again', () => {
  test('at once, with the text open beside the controls: no frame of the screen passes between', () => {
    const { text, leave } = field();
    setAt(['face', 'width'], '55 cm');
    const after = planText.peek();
    expect(text()).toBe(after);
    undo();
    expect(text()).toBe(plan);
    expect(canRedo.value).toBe(true);
    redo();
    expect(text()).toBe(after);
    leave();
  });

  test('and a key typed right after a change goes into the changed text', () => {
    const { text, type, leave } = field();
    setAt(['face', 'width'], '55 cm');
    type('count: 2\n');
    expect(planText.peek()).toBe('plan: 1\nname: Jug\nface: { width: 55 cm, height: 300 mm } # of the jug\ncount: 2\n');
    expect(text()).toBe(planText.peek());
    undo();
    undo();
    expect(text()).toBe(plan);
    leave();
    setAt(['name'], 'Mug');
    expect(text()).toBe(plan);
  });

  test('for any row of changes, typing, undo and redo: as a list of texts would have it', () => {
    const step = fc.oneof({ weight: 3, arbitrary: fc.record({ width: fc.integer({ min: 200, max: 900 }) }) }, { weight: 3, arbitrary: fc.record({ typed: fc.constantFrom('#', ' ', 'x', '\n') }) }, fc.constant('undo' as const), fc.constant('redo' as const));
    fc.assert(fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
      openPlan(plan, 'jug.yaml');
      const { text, type, leave } = field();
      const texts = [plan];
      let at = 0;
      for (const one of steps) {
        restHistory();
        const before = planText.peek();
        if (one === 'undo') undo();
        else if (one === 'redo') redo();
        else if ('width' in one) setAt(['face', 'width'], `${one.width} mm`);
        else type(one.typed);
        if (one === 'undo') at = Math.max(0, at - 1);
        else if (one === 'redo') at = Math.min(texts.length - 1, at + 1);
        else if (planText.peek() !== before) texts.splice(++at, texts.length, planText.peek());
        expect(planText.peek()).toBe(texts[at]);
        expect(text()).toBe(texts[at]);
      }
      leave();
    }), { seed: 7, numRuns: 200 });
  });
});
