import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { answer, bench } from '../state/answers.js';
import { planData, restHistory } from '../state/plan.js';
import type { Control } from '../controls/table.js';
import { assumedFor, chosenFor, looksRight, saidFor, say } from '../controls/values.js';
import { glyphs } from './glyphs.js';

/** What the reader of plans says against what stands at a place, without what it says of places further in. */
export function problemAt(path: string): string | null {
  const written = path.replace(/\.(\d+)(?=\.|$)/gu, '[$1]');
  const found = answer.value?.problems.find((problem) => problem.path === written);
  return found === undefined ? null : `Found ${found.found}; allowed: ${found.allowed}. ${found.hint}`;
}

/** One control, whatever it asks for. */
export function Field({ control }: { readonly control: Control }) {
  const { type, choices, section } = control.leaf;
  if (type === 'key' || type === 'choice' || type === 'whether') {
    const items = section === null ? [] : (bench.value?.sections[section] ?? []);
    const options = [
      ...(section === null || control.words['none'] !== undefined ? choices : []),
      ...items.map(({ key }) => key),
    ];
    const words = {
      ...Object.fromEntries(items.map(({ key, said }) => [key, said === '' || said === key ? key : `${key}: ${said}`])),
      ...control.words,
    };
    return options.length <= 5 && section === null ? (
      <Choice control={control} options={options} words={words} />
    ) : (
      <Menu control={control} options={options} words={words} />
    );
  }
  const { least, most } = control.leaf;
  if (type === 'whole' && control.drawn && least !== null && most !== null) {
    const options = Array.from({ length: most - least + 1 }, (_, i) => String(least + i));
    return <Choice control={control} options={options} words={{}} />;
  }
  return <Typed control={control} />;
}

interface Options {
  readonly control: Control;
  readonly options: readonly string[];
  readonly words: Readonly<Record<string, string>>;
}

/** Few choices, all seen at once, with their drawings. */
function Choice({ control, options, words }: Options) {
  const id = useId();
  const { path, required } = control.leaf;
  const chosen = chosenFor(control, options);
  const said = saidFor(control);
  const problem = problemAt(path);
  return (
    <fieldset
      class={`field choice${control.drawn ? ' drawn' : ''}`}
      data-path={path}
      disabled={!planData.value.readable}
      aria-describedby={problem === null ? undefined : `${id}-problem`}
    >
      <legend>{control.label}</legend>
      <div class="options">
        {options.map((option) => (
          <label key={option} class="option">
            <input
              type="radio"
              name={id}
              value={option}
              checked={chosen === option}
              onChange={() => {
                say(control, option);
                restHistory();
              }}
            />
            {control.drawn && glyphs[`${path} ${option}`]?.()}
            <span>{words[option] ?? option}</span>
          </label>
        ))}
      </div>
      <Below
        id={id}
        problem={problem}
        note={said === undefined && chosen !== null && !required ? 'as usual' : null}
        onUsual={
          said !== undefined && !required
            ? () => {
                say(control, '');
                restHistory();
              }
            : null
        }
        label={control.label}
      />
    </fieldset>
  );
}

/** Many choices in a menu; what the shelf does not have is still shown as chosen. */
function Menu({ control, options, words }: Options) {
  const id = useId();
  const { path, required } = control.leaf;
  const said = saidFor(control);
  const assumed = assumedFor(path);
  const problem = problemAt(path);
  const strange = said !== undefined && !options.includes(said);
  return (
    <div class="field" data-path={path}>
      <label for={id}>{control.label}</label>
      <select
        id={id}
        value={said ?? ''}
        disabled={!planData.value.readable}
        aria-invalid={problem !== null}
        aria-describedby={problem === null ? undefined : `${id}-problem`}
        onChange={({ currentTarget }) => {
          say(control, currentTarget.value);
          restHistory();
        }}
      >
        {(!required || said === undefined) && (
          <option value="">{required ? 'choose one' : `as usual${assumed === null ? '' : `: ${assumed}`}`}</option>
        )}
        {strange && <option value={said}>{said}</option>}
        {options.map((option) => (
          <option key={option} value={option}>
            {words[option] ?? option}
          </option>
        ))}
      </select>
      <Below id={id} problem={problem} note={null} onUsual={null} label={control.label} />
    </div>
  );
}

/**
 * Something typed as one says it: `35-3/8 in`, `90 cm`, `2 ft 11 in`. It counts as soon as it can be read, and on
 * leaving at the latest.
 */
function Typed({ control }: { readonly control: Control }) {
  const id = useId();
  const { leaf } = control;
  const said = saidFor(control) ?? '';
  const [typed, show] = useState<string | null>(null);
  // What is typed counts at once, drawn or not.
  const now = useRef<string | null>(null);
  const setTyped = (text: string | null): void => {
    now.current = text;
    show(text);
  };
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (typed !== null && field.current !== document.activeElement) setTyped(null);
  }, [said]);
  const assumed = assumedFor(leaf.path);
  const problem = problemAt(leaf.path);
  const short = leaf.type === 'whole' || leaf.type === 'number';
  const finish = (): void => {
    const text = now.current;
    if (text !== null && text.trim() !== (saidFor(control) ?? '') && !(leaf.required && text.trim() === ''))
      say(control, text);
    setTyped(null);
    if (field.current !== null) field.current.value = saidFor(control) ?? '';
    restHistory();
  };
  return (
    <div class={`field typed${short ? ' short' : ''}`} data-path={leaf.path}>
      <label for={id}>{control.label}</label>
      <input
        ref={field}
        id={id}
        type="text"
        inputMode={short ? 'decimal' : 'text'}
        autocomplete="off"
        spellcheck={false}
        value={typed ?? said}
        disabled={!planData.value.readable}
        placeholder={assumed ?? leaf.examples[0] ?? ''}
        aria-invalid={problem !== null}
        aria-describedby={problem === null ? undefined : `${id}-problem`}
        onInput={({ currentTarget: { value } }) => {
          setTyped(value);
          if (looksRight(leaf, value)) say(control, value);
        }}
        onBlur={finish}
        onKeyDown={({ key }) => {
          if (key === 'Enter') finish();
        }}
      />
      <Below
        id={id}
        problem={problem}
        note={said === '' && assumed !== null ? 'as usual' : null}
        onUsual={null}
        label={control.label}
      />
    </div>
  );
}

interface BelowField {
  readonly id: string;
  readonly problem: string | null;
  readonly note: string | null;
  readonly onUsual: (() => void) | null;
  readonly label: string;
}

/** What stands under a control: what is wrong with it, that it is only assumed, or the way back to what is usual. */
function Below({ id, problem, note, onUsual, label }: BelowField) {
  if (problem !== null)
    return (
      <p class="problem" id={`${id}-problem`}>
        {problem}
      </p>
    );
  if (onUsual !== null)
    return (
      <button type="button" class="plain" onClick={onUsual} aria-label={`${label}: back to usual`}>
        back to usual
      </button>
    );
  return note === null ? null : <p class="note">{note}</p>;
}
