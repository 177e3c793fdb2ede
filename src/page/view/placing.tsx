import type { PlacedSeen } from '../engine/protocol.js';
import { placed, placing_s } from '../state/pile.js';
import { changeText, restHistory, told } from '../state/plan.js';
import { view } from '../state/view.js';
import { Paper } from './paper.js';

/** Which board becomes which piece: what to read from across the bench. */
export function Placing() {
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
