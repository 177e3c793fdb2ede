import { useEffect, useRef } from 'preact/hooks';
import type { PrismEditor } from 'prism-code-editor';
import type { Problem } from '../../index.js';
import type { NamedText } from '../engine/protocol.js';
import { shelfKeys } from '../state/answers.js';
import { shapeFor } from '../state/bench.js';
import { leftOut, readFiles, saveText } from '../state/files.js';
import { told } from '../state/plan.js';
import { markLines, showText, startEditor } from './editor.js';

interface YamlFileProps {
  readonly what: 'shelf' | 'ruleset' | 'pile';
  readonly file: NamedText | null;
  /** What is wrong with it. */
  readonly problems: readonly Problem[];
  readonly onChange: (file: NamedText | null) => void;
}

/** A file of one's own behind a table: opened, saved, and changed as text. */
export function YamlFile({ what, file, problems, onChange }: YamlFileProps) {
  const picker = useRef<HTMLInputElement>(null);
  const open = async (files: FileList | null): Promise<void> => {
    const [read] = await readFiles([...(files ?? [])]);
    if (read === undefined) told.value = `That is no ${what}: it should be a file that ends in .yaml.`;
    else if (!leftOut(read.text, 'opened')) onChange(read);
  };
  return (
    <div class="yaml-file">
      <input
        ref={picker}
        type="file"
        accept=".yaml,.yml"
        hidden
        aria-label={`${what} file`}
        onChange={({ currentTarget }) => {
          void open(currentTarget.files);
          currentTarget.value = '';
        }}
      />
      <p class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>{`Open a ${what}…`}</button>
        <button
          type="button"
          disabled={file === null}
          onClick={() => {
            if (file !== null)
              void saveText(file).then((done) => {
                if (done !== null) told.value = `Saved: ${done.name}.`;
              });
          }}
        >{`Save my ${what}`}</button>
        <button type="button" disabled={file === null} onClick={() => onChange(null)}>{`Put my ${what} away`}</button>
      </p>
      {problems.length > 0 && (
        <ul class="problems">
          {problems.map((problem, i) => (
            <li
              key={i}
            >{`${problem.file}${problem.line > 0 ? `, line ${problem.line}` : ''}: ${problem.path === '' ? '' : `${problem.path}: `}found ${problem.found}; allowed: ${problem.allowed}. ${problem.hint}`}</li>
          ))}
        </ul>
      )}
      {file !== null && (
        <details>
          <summary>{`My ${what} as text`}</summary>
          <FileText what={what} file={file} problems={problems} onText={(text) => onChange({ ...file, text })} />
        </details>
      )}
    </div>
  );
}

interface FileTextProps {
  readonly what: YamlFileProps['what'];
  readonly file: NamedText;
  readonly problems: readonly Problem[];
  readonly onText: (text: string) => void;
}

/** The text of the file; it counts when it is left. */
function FileText({ what, file, problems, onText }: FileTextProps) {
  const into = useRef<HTMLDivElement>(null);
  const editor = useRef<PrismEditor | null>(null);
  const latest = useRef({ file, onText });
  latest.current = { file, onText };
  useEffect(() => {
    const made = startEditor(
      into.current as HTMLElement,
      `My ${what} as text`,
      file.text,
      () => ({ shape: shapeFor(what), keys: shelfKeys }),
      () => {},
    );
    made.textarea.addEventListener('blur', () => {
      if (made.value !== latest.current.file.text) latest.current.onText(made.value);
    });
    editor.current = made;
    return () => made.remove();
  }, []);
  useEffect(() => {
    if (editor.current !== null) showText(editor.current, file.text);
  }, [file.text]);
  useEffect(() => {
    if (editor.current !== null)
      markLines(
        editor.current,
        problems.filter((problem) => problem.file === file.file),
      );
  }, [problems, file]);
  return <div class="editor" ref={into} />;
}
