import { createEditor, type PrismEditor } from 'prism-code-editor';
import { autoComplete, fuzzyFilter, registerCompletions } from 'prism-code-editor/autocomplete';
import { cursorPosition } from 'prism-code-editor/cursor';
import 'prism-code-editor/prism/languages/yaml';
import { offer, type Offered } from './offer.js';

/** Marks the lines in which something is wrong or doubtful. */
export function markLines(
  editor: PrismEditor,
  problems: readonly { readonly line: number; readonly severity: string }[],
): void {
  const lines = new Map(problems.map(({ line, severity }) => [line, severity]));
  for (const [i, line] of [...editor.lines].entries()) {
    if (i === 0) continue;
    line.classList.toggle('wrong', lines.get(i) === 'error');
    line.classList.toggle('doubtful', lines.get(i) === 'warning');
  }
}

/** Puts a text in place of the one that is there, the cursor where it was. */
export function showText(editor: PrismEditor, text: string): void {
  if (editor.value === text) return;
  const [start, end] = editor.getSelection();
  editor.setOptions({ value: text });
  editor.textarea.setSelectionRange(Math.min(start, text.length), Math.min(end, text.length));
}

/** What each editor at work may offer: the library knows languages, and every file here is YAML. */
const offers = new WeakMap<PrismEditor, () => Offered>();
registerCompletions(['yaml'], {
  sources: [
    (context, editor) => {
      const offered = offers.get(editor);
      return offered === undefined ? null : offer(context, offered());
    },
  ],
});

/**
 * An editor of YAML over a plain text field: what is typed, how it is coloured, what is offered. Tab leaves it, as it
 * leaves any field.
 */
export function startEditor(
  into: HTMLElement,
  label: string,
  text: string,
  offered: () => Offered,
  onText: (text: string) => void,
): PrismEditor {
  const editor = createEditor(
    into,
    {
      language: 'yaml',
      value: text,
      tabSize: 2,
      insertSpaces: true,
      lineNumbers: true,
      wordWrap: true,
      onUpdate: onText,
    },
    cursorPosition(),
    autoComplete({ filter: fuzzyFilter }),
  );
  const { textarea } = editor;
  textarea.setAttribute('aria-label', label);
  textarea.spellcheck = false;
  offers.set(editor, offered);
  return editor;
}
