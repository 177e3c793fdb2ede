import { useId } from 'preact/hooks';
import type { YamlValue } from '../../index.js';
import { pileBoards, placed, setPile, tellPile } from '../state/pile.js';
import type { Path } from '../state/plan.js';
import { Entry } from './entry.js';

/** A value of the pile as its field shows it. */
export const shown = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';

/** Which board of the pile is meant. */
export interface Line {
  readonly mark: string;
  readonly i: number;
}
interface Asked extends Line {
  readonly label: string;
  readonly path: Path;
}

/** What is asked; whoever listens is told of which board. */
const BoardLabel = ({ id, label, mark }: { readonly id: string } & Omit<Asked, 'i' | 'path'>) => (
  <label for={id}>
    {label}
    <span class="ear">{`, board ${mark}`}</span>
  </label>
);

/** A field for something read of a board. */
export function Reading({
  mark,
  i,
  label,
  path,
  value,
  example,
  read = (typed) => typed,
}: Asked & {
  readonly value: unknown;
  readonly example: string;
  /** What is written for what was typed. */
  readonly read?: (typed: string) => YamlValue;
}) {
  const id = useId();
  const own = `boards[${i}].${path.join('.')}`;
  const problem = placed.value?.problems.find((one) => one.path === own || one.path.startsWith(`${own}[`));
  return (
    <div class="field">
      <BoardLabel {...{ id, label, mark }} />
      <Entry
        id={id}
        placeholder={example}
        value={shown(value)}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onEntered={(entered) => {
          const typed = entered.trim();
          const first =
            path[0] === 'twist' && path[1] === 'rise' && pileBoards.peek()[i]?.['twist'] === undefined && typed !== '';
          tellPile(setPile(['boards', i, ...path], typed === '' ? undefined : read(typed)));
          if (first) tellPile(setPile(['boards', i, 'twist', 'width'], '400 mm'));
        }}
      />
      {problem !== undefined && (
        <p
          class="problem"
          id={`${id}-problem`}
        >{`Found ${problem.found}; allowed: ${problem.allowed}. ${problem.hint}`}</p>
      )}
    </div>
  );
}

/** A choice of what is read of a board. */
export function Pick({
  mark,
  i,
  label,
  path,
  value,
  options,
}: Asked & { readonly value: string; readonly options: readonly (readonly [key: string, words: string])[] }) {
  const id = useId();
  return (
    <div class="field">
      <BoardLabel {...{ id, label, mark }} />
      <select
        id={id}
        value={value}
        onChange={({ currentTarget }) => tellPile(setPile(['boards', i, ...path], currentTarget.value || undefined))}
      >
        {!options.some(([key]) => key === value) && <option value={value}>{value}</option>}
        {options.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
