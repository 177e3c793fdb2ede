import { useId, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../index.js';
import type { NamedText } from '../engine/protocol.js';
import { readFiles, saveText } from '../state/files.js';
import { told } from '../state/plan.js';

interface YamlFileProps {
  readonly what: string;
  readonly file: NamedText | null;
  /** What is wrong with it. */
  readonly problems: readonly Problem[];
  readonly onChange: (file: NamedText | null) => void;
}

/** A file of one's own behind a table: opened, saved, and changed as text. */
export function YamlFile({ what, file, problems, onChange }: YamlFileProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const open = async (files: FileList | null): Promise<void> => {
    const [read] = await readFiles([...(files ?? [])]);
    if (read === undefined) told.value = `That is no ${what}: it should be a file that ends in .yaml.`;
    else onChange(read);
  };
  return (
    <div class="yaml-file">
      <input ref={picker} type="file" accept=".yaml,.yml" hidden aria-label={`${what} file`} onChange={({ currentTarget }) => { void open(currentTarget.files); currentTarget.value = ''; }} />
      <p class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>{`Open a ${what}…`}</button>
        <button type="button" disabled={file === null} onClick={() => { if (file !== null) void saveText(file).then((done) => { if (done !== null) told.value = `Saved: ${done.name}.`; }); }}>{`Save my ${what}`}</button>
        <button type="button" disabled={file === null} onClick={() => onChange(null)}>{`Put my ${what} away`}</button>
      </p>
      {problems.length > 0 && <ul class="problems">{problems.map((problem, i) => <li key={i}>{`${problem.file}${problem.line > 0 ? `, line ${problem.line}` : ''}: ${problem.path === '' ? '' : `${problem.path}: `}found ${problem.found}; allowed: ${problem.allowed}. ${problem.hint}`}</li>)}</ul>}
      {file !== null && (
        <details>
          <summary>{`My ${what} as text`}</summary>
          <label class="ear" for={id}>{`My ${what} as text`}</label>
          <textarea id={id} rows={14} spellcheck={false} value={typed ?? file.text} onInput={({ currentTarget }) => setTyped(currentTarget.value)} onChange={({ currentTarget }) => { onChange({ ...file, text: currentTarget.value }); setTyped(null); }} />
        </details>
      )}
    </div>
  );
}
