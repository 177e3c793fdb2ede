import { createEditor, type PrismEditor } from 'prism-code-editor';
import { autoComplete, fuzzyFilter, registerCompletions } from 'prism-code-editor/autocomplete';
import { cursorPosition } from 'prism-code-editor/cursor';
import 'prism-code-editor/prism/languages/yaml';
import { leftOut } from '../state/files.js';
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

/** From so many characters on a browser takes too long to paste into a text field itself. */
const long = 5000;

/** Puts a long text in at once; one that no reader would take stays out, and is told. */
function pasteLong(event: ClipboardEvent, editor: PrismEditor, onText: (text: string) => void): void {
  const pasted = event.clipboardData?.getData('text/plain').replaceAll('\r\n', '\n') ?? '';
  if (pasted.length < long) return;
  event.preventDefault();
  if (leftOut(pasted, 'pasted')) return;
  const { value } = editor;
  const [start, end] = editor.getSelection();
  const text = value.slice(0, start) + pasted + value.slice(end);
  editor.setOptions({ value: text });
  editor.textarea.setSelectionRange(start + pasted.length, start + pasted.length);
  onText(text);
}

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
  textarea.addEventListener('paste', (event) => pasteLong(event, editor, onText));
  offers.set(editor, offered);
  return editor;
}
