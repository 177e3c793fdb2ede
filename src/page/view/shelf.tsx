import { useState } from 'preact/hooks';
import { bench } from '../state/answers.js';
import { ownLumber, ownShelf, setBoard, setOwnShelf, writtenLumber } from '../state/bench.js';
import { told } from '../state/plan.js';
import { Entry } from './entry.js';
import { YamlFile } from './yaml-file.js';

type Board = Readonly<Record<string, unknown>>;
interface Length {
  readonly length?: unknown;
  readonly price?: unknown;
  readonly available?: unknown;
}

const tell = (done: boolean): void => {
  if (!done) told.value = 'Your shelf is written in a way that only you can change: do it in its text.';
};
const number = (typed: string): number | string | undefined =>
  typed.trim() === '' ? undefined : /^\d+(?:\.\d+)?$/u.test(typed.trim()) ? Number(typed) : typed.trim();
const shown = (value: unknown): string => (typeof value === 'string' || typeof value === 'number' ? String(value) : '');

/**
 * The boards one can buy, with sizes and prices; a change is kept in a shelf of one's own, laid over the one the page
 * came with.
 */
export function Shelf() {
  const keys = [...new Set([...Object.keys(writtenLumber.value), ...Object.keys(ownLumber.value)])];
  return (
    <section class="view" aria-labelledby="shelf-title">
      <h2 id="shelf-title">Boards on the shelf</h2>
      <p>{`Prices in ${bench.value?.currency || 'the currency of the shelf'}. A board that you change becomes your own; everything else stays as the page came with it.`}</p>
      <div class="wide" tabIndex={0} role="region" aria-label="Table of boards">
        <table>
          <thead>
            <tr>
              <th scope="col">Board</th>
              <th scope="col">Sold as</th>
              <th scope="col">Actual size</th>
              <th scope="col">Length</th>
              <th scope="col">Price</th>
              <th scope="col">In the shop</th>
              <th scope="col">Whose</th>
            </tr>
          </thead>
          <tbody>
            {keys.map((key) => (
              <BoardRows key={key} name={key} entry={ownLumber.value[key] ?? writtenLumber.value[key] ?? {}} />
            ))}
          </tbody>
        </table>
      </div>
      <NewBoard />
      <YamlFile
        what="shelf"
        file={ownShelf.value}
        problems={bench.value?.problems ?? []}
        onChange={(file) => {
          ownShelf.value = file;
        }}
      />
    </section>
  );
}

function BoardRows({ name, entry }: { readonly name: string; readonly entry: Board }) {
  const lengths = Array.isArray(entry['lengths']) ? (entry['lengths'] as readonly Length[]) : [];
  const own = Object.hasOwn(ownLumber.value, name);
  const cell = (
    label: string,
    path: readonly (string | number)[],
    value: unknown,
    read: (typed: string) => string | number | undefined = (typed) => typed.trim() || undefined,
  ) => (
    <Entry
      aria-label={`${name}, ${label}`}
      value={shown(value)}
      onEntered={(typed) => tell(setBoard(name, path, read(typed)))}
    />
  );
  return (
    <>
      {(lengths.length === 0 ? [null] : lengths).map((one, i) => (
        <tr key={i}>
          {i === 0 && (
            <th scope="rowgroup" rowSpan={Math.max(1, lengths.length)}>
              {name}
            </th>
          )}
          {i === 0 && <td rowSpan={Math.max(1, lengths.length)}>{cell('sold as', ['nominal'], entry['nominal'])}</td>}
          {i === 0 && <td rowSpan={Math.max(1, lengths.length)}>{cell('actual size', ['size'], entry['size'])}</td>}
          <td>
            {one === null ? (
              <button
                type="button"
                class="plain"
                aria-label={`${name}: say one, a length and its price`}
                onClick={() => tell(setBoard(name, ['lengths', 0], { length: '2400 mm', price: 1 }))}
              >
                say one
              </button>
            ) : (
              cell(`length ${i + 1}`, ['lengths', i, 'length'], one.length)
            )}
          </td>
          <td>{one !== null && cell(`price of length ${i + 1}`, ['lengths', i, 'price'], one.price, number)}</td>
          <td>
            {one !== null &&
              cell(`how many of length ${i + 1} are in the shop`, ['lengths', i, 'available'], one.available, number)}
          </td>
          {i === 0 && (
            <td rowSpan={Math.max(1, lengths.length)}>
              {own ? 'yours' : 'as it came'}
              {own && (
                <button
                  type="button"
                  class="plain"
                  aria-label={`${name}: ${Object.hasOwn(writtenLumber.value, name) ? 'as it came' : 'take off'}`}
                  onClick={() => tell(setOwnShelf(['lumber', name], undefined))}
                >
                  {Object.hasOwn(writtenLumber.value, name) ? 'as it came' : 'take off'}
                </button>
              )}
            </td>
          )}
        </tr>
      ))}
    </>
  );
}

/** A board that is not on the shelf yet: its size is all that has to be known. */
function NewBoard() {
  const [key, setKey] = useState('');
  const [size, setSize] = useState('');
  return (
    <form
      class="line"
      onSubmit={(event) => {
        event.preventDefault();
        tell(setOwnShelf(['lumber', key.trim()], { size: size.trim() }));
        setKey('');
        setSize('');
      }}
    >
      <h3>One more board</h3>
      <label>
        Call it
        <input
          type="text"
          required
          pattern="[A-Za-z0-9][A-Za-z0-9._\-]{0,59}"
          title="Letters, digits, points and hyphens"
          placeholder="strip-20x40"
          value={key}
          onInput={({ currentTarget }) => setKey(currentTarget.value)}
        />
      </label>
      <label>
        Actual size, smaller first
        <input
          type="text"
          required
          placeholder="20 x 40 mm"
          value={size}
          onInput={({ currentTarget }) => setSize(currentTarget.value)}
        />
      </label>
      <button type="submit">Put it on the shelf</button>
    </form>
  );
}
