import { createEditor, type PrismEditor } from 'prism-code-editor';
import { autoComplete, fuzzyFilter, registerCompletions } from 'prism-code-editor/autocomplete';
import { cursorPosition } from 'prism-code-editor/cursor';
import 'prism-code-editor/prism/languages/yaml';
import { offer, type Offered } from './offer.js';

/** An editor of YAML over a plain text field: what is typed, how it is coloured, what is offered. Tab leaves it, as it leaves any field. */
export function startEditor(into: HTMLElement, text: string, offered: () => Offered, onText: (text: string) => void): PrismEditor {
  registerCompletions(['yaml'], { sources: [(context) => offer(context, offered())] });
  const editor = createEditor(into, { language: 'yaml', value: text, tabSize: 2, insertSpaces: true, lineNumbers: true, wordWrap: false, onUpdate: onText }, cursorPosition(), autoComplete({ filter: fuzzyFilter }));
  const { textarea } = editor;
  textarea.setAttribute('aria-label', 'The plan as text');
  textarea.spellcheck = false;
  return editor;
}
