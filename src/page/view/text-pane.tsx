import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { PrismEditor } from 'prism-code-editor';
import { answer, shelfKeys } from '../state/answers.js';
import { shapeFor } from '../state/bench.js';
import { changeText, followText, planText, redo, restHistory, undo } from '../state/plan.js';
import { markLines, showText, startEditor } from './editor.js';

/** The plan's text, in step with the controls both ways; what is wrong is marked in its line and said below. */
export function TextPane() {
  const into = useRef<HTMLDivElement>(null);
  const editor = useRef<PrismEditor | null>(null);
  useEffect(() => {
    const made = startEditor(
      into.current as HTMLElement,
      'The plan as text',
      planText.peek(),
      () => ({ shape: shapeFor('plan'), keys: shelfKeys }),
      (text) => changeText(text, 'text'),
    );
    const { textarea } = made;
    const keep = (event: InputEvent): void => {
      if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return;
      event.preventDefault();
      (event.inputType === 'historyUndo' ? undo : redo)();
    };
    textarea.addEventListener('beforeinput', keep);
    textarea.addEventListener('blur', restHistory);
    editor.current = made;
    const leave = followText((text) => showText(made, text));
    return () => {
      leave();
      made.remove();
    };
  }, []);
  useSignalEffect(() => {
    const problems = answer.value?.problems ?? [];
    if (editor.current !== null) markLines(editor.current, problems);
  });
  const problems = answer.value?.problems ?? [];
  return (
    <section class="text" aria-labelledby="text-title">
      <h2 id="text-title">The plan as text</h2>
      <div class="editor" ref={into} />
      <ul class="problems" aria-label="What is wrong with the text">
        {problems.map((problem, i) => (
          <li key={i} class={problem.severity}>
            {problem.line > 0 && (
              <button
                type="button"
                class="plain"
                onClick={() => goTo(editor.current, problem.line, problem.column)}
              >{`Line ${problem.line}`}</button>
            )}
            <span>{`${problem.line > 0 ? ', ' : ''}${problem.severity}: ${problem.path === '' ? '' : `${problem.path}: `}found ${problem.found}; allowed: ${problem.allowed}. ${problem.hint}`}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Puts the cursor where something is wrong. */
function goTo(editor: PrismEditor | null, line: number, column: number): void {
  if (editor === null) return;
  const before = editor.value
    .split('\n')
    .slice(0, line - 1)
    .reduce((sum, text) => sum + text.length + 1, 0);
  const at = before + Math.max(0, column - 1);
  editor.textarea.focus();
  editor.textarea.setSelectionRange(at, at);
}
