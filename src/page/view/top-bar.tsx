import { useRef } from 'preact/hooks';
import { forget, keepAgain, keeping } from '../state/keep.js';
import {
  canRedo,
  canUndo,
  openPlan,
  planFile,
  planText,
  redo,
  savedText,
  setAside,
  takeBack,
  told,
  undo,
} from '../state/plan.js';
import { leftOut, readFiles, saveText } from '../state/files.js';
import { linkTo } from '../state/share.js';
import { view, views } from '../state/view.js';

const keepWords = {
  on: 'Kept on this device only, in this browser.',
  off: 'Not kept: save the plan as a file before you leave.',
  forbidden: 'This browser keeps nothing for this page: save the plan as a file before you leave.',
  full: 'There is no room left to keep the plan in this browser: save it as a file before you leave.',
} as const;

/** The edge of the bench: what is open, what can be done with it, and the way to the other parts. */
export function TopBar() {
  const picker = useRef<HTMLInputElement>(null);
  const saved = savedText.value === planText.value;
  const open = async (files: FileList | null): Promise<void> => {
    const [plan] = await readFiles([...(files ?? [])]);
    if (plan === undefined) told.value = 'That is no plan: a plan is a file that ends in .yaml.';
    else if (!leftOut(plan.text, 'opened')) {
      openPlan(plan.text, plan.file);
      view.value = 'Frame';
      told.value = `${plan.file} is open.`;
    }
  };
  const save = async (): Promise<void> => {
    const text = planText.peek();
    const done = await saveText({ text, file: planFile.peek() });
    if (done === null) return;
    savedText.value = text;
    told.value = done.how === 'written' ? `Saved as ${done.name}.` : `${done.name} is in your downloads.`;
  };
  const share = async (): Promise<void> => {
    const link = await linkTo(location.href, { text: planText.peek(), file: planFile.peek() });
    try {
      await navigator.clipboard.writeText(link);
      told.value =
        'The link is copied. It carries the plan behind its #, which no browser sends anywhere; it opens where this page is at the same place.';
    } catch {
      told.value = `Copy this link; it carries the plan behind its #: ${link}`;
    }
  };
  return (
    <header class="top">
      <p class="brand">
        <strong>sightdown</strong>
        <span>
          {planFile.value}
          {saved ? '' : ', not saved'}
        </span>
      </p>
      <div class="tools" role="group" aria-label="The plan">
        <input
          ref={picker}
          type="file"
          accept=".yaml,.yml"
          hidden
          aria-label="Plan file"
          onChange={({ currentTarget }) => {
            void open(currentTarget.files);
            currentTarget.value = '';
          }}
        />
        <button type="button" onClick={() => picker.current?.click()}>
          Open…
        </button>
        <button type="button" onClick={() => void save()}>
          Save
        </button>
        <button type="button" disabled={!canUndo.value} onClick={undo}>
          Undo
        </button>
        <button type="button" disabled={!canRedo.value} onClick={redo}>
          Redo
        </button>
        <button type="button" onClick={() => void share()}>
          Copy a link
        </button>
        {setAside.value !== null && (
          <button type="button" onClick={takeBack}>{`Back to ${setAside.value.file}`}</button>
        )}
      </div>
      <nav aria-label="Parts of the page">
        <ul class="tabs">
          {views.map((name) => (
            <li key={name}>
              <button
                type="button"
                aria-current={view.value === name ? 'page' : undefined}
                onClick={() => {
                  view.value = name;
                }}
              >
                {name}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <p class="kept">
        <span>{keepWords[keeping.value]}</span>{' '}
        {keeping.value === 'on' || keeping.value === 'full' ? (
          <button type="button" class="plain" onClick={forget}>
            Forget it
          </button>
        ) : keeping.value === 'off' ? (
          <button type="button" class="plain" onClick={keepAgain}>
            Keep it
          </button>
        ) : null}
      </p>
      <p class="told" role="status">
        {told.value}
      </p>
    </header>
  );
}
