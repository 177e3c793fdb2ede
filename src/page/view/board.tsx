import type { YamlValue } from '../../index.js';
import { bench } from '../state/answers.js';
import { setPile, tellPile } from '../state/pile.js';
import { Pick, Reading, shown, type Line } from './reading.js';

const at = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>)[key] : undefined;
/** One board, or several alike that nobody read. */
export function Board({ board, i }: { readonly board: Readonly<Record<string, unknown>>; readonly i: number }) {
  const mark = shown(board['mark']) || String(i + 1);
  const several = board['count'] !== undefined;
  const lumber = bench.value?.sections['lumber'] ?? [];
  const line = { mark, i };
  return (
    <fieldset class="entry board">
      <legend>{several ? `Several alike, board ${mark}` : `Board ${mark}`}</legend>
      <div class="readings">
        {(!several || board['mark'] !== undefined) && (
          <Reading {...line} label="Chalked on it" path={['mark']} value={board['mark']} example="A" />
        )}
        <Pick
          {...line}
          label="Kind"
          path={['stock']}
          value={shown(board['stock'])}
          options={lumber.map(({ key }) => [key, key])}
        />
        <Reading {...line} label="Length" path={['length']} value={board['length']} example="2400 mm" />
        {several && (
          <Reading {...line} label="How many" path={['count']} value={board['count']} example="6" read={asCount} />
        )}
      </div>
      {(!several || readings.some((key) => board[key] !== undefined)) && <Read line={line} board={board} />}
      <button
        type="button"
        onClick={() => tellPile(setPile(['boards', i], undefined))}
      >{`Take board ${mark} away`}</button>
    </fieldset>
  );
}

/** What was read of one board, and what is seldom said of it. */
function Read({ line, board }: { readonly line: Line; readonly board: Readonly<Record<string, unknown>> }) {
  const { twist } = board;
  const sticks = typeof twist === 'object';
  return (
    <>
      <div class="readings">
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
        <Reading
          {...line}
          label="Bad places, from the marked end"
          path={['knots']}
          value={knotsShown(board['knots'])}
          example="310..340 mm; 900..920 mm"
          read={asKnots}
        />
      </div>
      <details class="rare">
        <summary>{`More of board ${line.mark}`}</summary>
        <div class="readings">
          <Reading {...line} label="Read over" path={['over']} value={board['over']} example="the whole board" />
          <Pick
            {...line}
            label="Ends"
            path={['cut']}
            value={shown(board['cut'])}
            options={[
              ['', 'to be cut'],
              ['square', 'cut already, square'],
              ['mitre', 'cut already, mitred across the wide face'],
              ['mitre-on-edge', 'cut already, mitred across the narrow face'],
            ]}
          />
        </div>
      </details>
    </>
  );
}

/** What is read of a single board. */
const readings = ['bow', 'hollow', 'crook', 'hollow-edge', 'twist', 'knots', 'over', 'cut'] as const;
const asCount = (typed: string): YamlValue => (/^\d+$/u.test(typed) ? Number(typed) : typed);
const asKnots = (typed: string): YamlValue => {
  const places = typed.split(/[,;]/u).map((place) => place.trim());
  return places.filter((place) => place !== '');
};
const knotsShown = (value: unknown): string => (Array.isArray(value) ? value.map(shown).join('; ') : shown(value));
