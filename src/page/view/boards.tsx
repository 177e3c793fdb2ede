import { bench } from '../state/answers.js';
import { nextMark, pile, pileBoards, placed, setPile, tellPile } from '../state/pile.js';
import { valueAt } from '../state/plan.js';
import { Board } from './board.js';
import { Placing } from './placing.js';
import { shown } from './reading.js';
import { YamlFile } from './yaml-file.js';

/**
 * The boards in hand: readings typed at the bench, and which board becomes which piece, large enough to read at arm's
 * length.
 */
export function Boards() {
  const boards = pileBoards.value;
  const lumber = bench.value?.sections['lumber'] ?? [];
  const add = (several: boolean): void => {
    const last = boards.at(-1);
    tellPile(
      setPile(['boards', boards.length], {
        ...(several ? {} : { mark: nextMark(boards.map(({ mark }) => mark)) }),
        stock: shown(last?.['stock']) || shown(valueAt(['bars', 'stock'])) || (lumber[0]?.key ?? ''),
        length: shown(last?.['length']) || '2400 mm',
        ...(several ? { count: 2 } : {}),
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
      <p class="buttons">
        <button type="button" onClick={() => add(false)}>
          {boards.length === 0 ? 'The first board' : 'One more board'}
        </button>
        <button type="button" onClick={() => add(true)}>
          Several alike, not read
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
