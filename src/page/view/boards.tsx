import { useId } from 'preact/hooks';
import type { PlacedSeen } from '../engine/protocol.js';
import { bench } from '../state/answers.js';
import { nextMark, pile, pileBoards, placed, placing_s, setPile } from '../state/pile.js';
import { changeText, restHistory, told, valueAt, type Path } from '../state/plan.js';
import { view } from '../state/view.js';
import { Entry } from './entry.js';
import { Paper } from './paper.js';
import { YamlFile } from './yaml-file.js';

const tell = (done: boolean): void => {
  if (!done) told.value = 'Your boards are written in a way that only you can change: do it in their text.';
};
const at = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>)[key] : undefined;
const shown = (value: unknown): string => (typeof value === 'string' || typeof value === 'number' ? String(value) : '');

/**
 * The boards in hand: readings typed at the bench, and which board becomes which piece, large enough to read at arm's
 * length.
 */
export function Boards() {
  const boards = pileBoards.value;
  const lumber = bench.value?.sections['lumber'] ?? [];
  const add = (): void => {
    const last = boards.at(-1);
    tell(
      setPile(['boards', boards.length], {
        mark: nextMark(boards.map(({ mark }) => mark)),
        stock: shown(last?.['stock']) || shown(valueAt(['bars', 'stock'])) || (lumber[0]?.key ?? ''),
        length: shown(last?.['length']) || '2400 mm',
      }),
    );
  };
  return (
    <section class="view boards" aria-labelledby="boards-title">
      <h2 id="boards-title">Boards in hand</h2>
      <p>
        Chalk a letter on one wide face, a stroke across one end, and a stroke on the edge that lies upper when the
        letter looks at you with the marked end on your left. Then read each board; what you cannot read, leave empty.
      </p>
      <Placing />
      {boards.map((board, i) => (
        <Board key={i} board={board} i={i} />
      ))}
      <p>
        <button type="button" onClick={add}>
          {boards.length === 0 ? 'The first board' : 'One more board'}
        </button>
      </p>
      <YamlFile
        what="pile"
        file={pile.value}
        problems={placed.value?.problems ?? []}
        onChange={(file) => {
          pile.value = file;
        }}
      />
    </section>
  );
}

function Board({ board, i }: { readonly board: Readonly<Record<string, unknown>>; readonly i: number }) {
  const mark = shown(board['mark']) || String(i + 1);
  const { twist } = board;
  const sticks = typeof twist === 'object';
  const lumber = bench.value?.sections['lumber'] ?? [];
  const line = { mark, i };
  return (
    <fieldset class="entry board">
      <legend>{`Board ${mark}`}</legend>
      <div class="readings">
        <Reading {...line} label="Chalked on it" path={['mark']} value={board['mark']} example="A" />
        <Pick
          {...line}
          label="Kind"
          path={['stock']}
          value={shown(board['stock'])}
          options={lumber.map(({ key }) => [key, key])}
        />
        <Reading {...line} label="Length" path={['length']} value={board['length']} example="2400 mm" />
        <Reading {...line} label="Bow: rise of the wide face" path={['bow']} value={board['bow']} example="6 mm" />
        <Pick
          {...line}
          label="Hollow is"
          path={['hollow']}
          value={shown(board['hollow'])}
          options={[
            ['', 'the face with the letter'],
            ['other-face', 'the other face'],
          ]}
        />
        <Reading {...line} label="Crook: rise of the edge" path={['crook']} value={board['crook']} example="2 mm" />
        <Pick
          {...line}
          label="Hollow edge is"
          path={['hollow-edge']}
          value={shown(board['hollow-edge'])}
          options={[
            ['', 'the marked edge'],
            ['other-edge', 'the other edge'],
          ]}
        />
        <Reading
          {...line}
          label="Sticks disagree by"
          path={['twist', 'rise']}
          value={at(twist, 'rise')}
          example="3 mm"
        />
        {sticks && twist !== undefined && (
          <>
            <Reading
              {...line}
              label="Length of the sticks"
              path={['twist', 'width']}
              value={at(twist, 'width')}
              example="400 mm"
            />
            <Reading
              {...line}
              label="Sticks stand apart"
              path={['twist', 'over']}
              value={at(twist, 'over')}
              example="2000 mm"
            />
            <Pick
              {...line}
              label="Far stick, high on its"
              path={['twist', 'for']}
              value={shown(at(twist, 'for'))}
              options={[
                ['', 'choose'],
                ['right', 'left end'],
                ['left', 'right end'],
              ]}
            />
          </>
        )}
        {typeof twist === 'string' && (
          <Reading {...line} label="Twist, as a number" path={['twist']} value={twist} example="0.4 deg/m" />
        )}
      </div>
      <button type="button" onClick={() => tell(setPile(['boards', i], undefined))}>{`Take board ${mark} away`}</button>
    </fieldset>
  );
}

interface Line {
  readonly mark: string;
  readonly i: number;
  readonly label: string;
  readonly path: Path;
}

function Reading({
  mark,
  i,
  label,
  path,
  value,
  example,
}: Line & { readonly value: unknown; readonly example: string }) {
  const id = useId();
  const problem = placed.value?.problems.find((one) => one.path === `boards[${i}].${path.join('.')}`);
  return (
    <div class="field">
      <label for={id}>
        {label}
        <span class="ear">{`, board ${mark}`}</span>
      </label>
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
          tell(setPile(['boards', i, ...path], typed === '' ? undefined : typed));
          if (first) tell(setPile(['boards', i, 'twist', 'width'], '400 mm'));
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

function Pick({
  mark,
  i,
  label,
  path,
  value,
  options,
}: Line & { readonly value: string; readonly options: readonly (readonly [key: string, words: string])[] }) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>
        {label}
        <span class="ear">{`, board ${mark}`}</span>
      </label>
      <select
        id={id}
        value={value}
        onChange={({ currentTarget }) => tell(setPile(['boards', i, ...path], currentTarget.value || undefined))}
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

/** Which board becomes which piece: what to read from across the bench. */
function Placing() {
  const seen = placed.value;
  const busy_s = placing_s.value;
  const there = seen !== null && seen.outcome !== '';
  return (
    <div class="placing" aria-busy={busy_s !== null}>
      {there && <h3>Which board goes where</h3>}
      <p role="status">
        <strong>{busy_s === null ? (seen?.outcome ?? '') : placingWords(busy_s)}</strong>
      </p>
      {there && <Placed seen={seen} />}
    </div>
  );
}

/** An amount whose unit never stands on the next line. */
const kept = (amount: string): string => amount.replaceAll(' ', '\u00a0');

const placingWords = (busy_s: number): string =>
  `Placing the boards …${busy_s < 2 ? '' : ` ${busy_s} seconds so far. Many frames take minutes; everything else goes on meanwhile.`}`;

/** Every piece with its board, what has none, and what can be done with the placing. */
function Placed({ seen }: { readonly seen: PlacedSeen }) {
  const write = (): void => {
    if (seen.text === null) return;
    restHistory();
    changeText(seen.text);
    view.value = 'Frame';
    told.value = 'The boards stand in the plan now. “Undo” takes them out.';
  };
  return (
    <>
      <ul class="marks">
        {seen.pieces.map(({ board, tag, part, from, to, lies }) => (
          <li key={tag}>
            <span class="chalk">{board}</span>
            <div>
              <p class="part">{`${part} (${tag})`}</p>
              <p>{`from ${kept(from)} to ${kept(to)}`}</p>
              <p>{lies}</p>
            </div>
          </li>
        ))}
      </ul>
      {seen.missing.length > 0 && <p>{`Without a board: ${seen.missing.join('; ')}.`}</p>}
      {seen.left.map(({ boards, why }) => (
        <p key={why}>
          <strong>{boards}</strong>
          {`: ${why}`}
        </p>
      ))}
      <p class="buttons">
        <button type="button" disabled={seen.text === null || placing_s.value !== null} onClick={write}>
          Write these boards into the plan
        </button>
      </p>
      {seen.html !== null && (
        <details>
          <summary>The page for the bench</summary>
          <Paper
            html={seen.html}
            title="The page for the bench"
            print="Print the page for the bench"
            about="Chalk marks, cuts, the frame with its boards, what stays on the rack and what to buy."
          />
        </details>
      )}
    </>
  );
}
