import { planData, restHistory, setAt, valueAt } from '../state/plan.js';
import { groups, labelOf, type Control } from '../controls/table.js';
import { isAsked } from '../controls/values.js';
import { Field, problemAt } from './field.js';

/** Everything a plan can say, by parts of the frame; rare things folded away. */
export function Controls({ controls }: { readonly controls: readonly Control[] }) {
  const roomy = matchMedia('(min-width: 46rem)').matches;
  const allInSight = matchMedia('(min-width: 150rem)').matches;
  return (
    <section class="controls" aria-labelledby="controls-title">
      <h2 id="controls-title" class="ear">
        Set the frame
      </h2>
      {!planData.value.readable && (
        <p class="problem" role="status">
          The text of the plan cannot be read as it stands, so the controls wait. What is wrong is said at the text.
        </p>
      )}
      {groups.map((group) => {
        const own = controls.filter((control) => control.group === group && isAsked(control));
        if (own.length === 0) return null;
        const common = own.filter(({ rare }) => !rare);
        const rare = own.filter((control) => control.rare);
        return (
          <details
            class="group"
            key={group}
            open={group === 'The frame' || allInSight || (roomy && (group === 'Bars' || group === 'Corners'))}
          >
            <summary>
              <h3>{group}</h3>
            </summary>
            {common.map((control) => (
              <Any key={control.leaf.path} control={control} />
            ))}
            {rare.length > 0 && (
              <details class="rare">
                <summary>{common.length === 0 ? 'Rarely changed' : 'More'}</summary>
                {rare.map((control) => (
                  <Any key={control.leaf.path} control={control} />
                ))}
              </details>
            )}
          </details>
        );
      })}
    </section>
  );
}

const Any = ({ control }: { readonly control: Control }) =>
  control.leaf.type === 'list' ? <Entries control={control} /> : <Field control={control} />;

const firstEntries: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  crossbars: { runs: 'upright', at: '1/2' },
  boards: { for: 'top' },
};
const singular: Readonly<Record<string, string>> = { crossbars: 'crossbar', boards: 'board' };
const entryWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  runs: { upright: 'Upright', level: 'Level' },
  lay: { flat: 'Flat', edge: 'On edge' },
  for: { top: 'Top', bottom: 'Bottom', left: 'Left', right: 'Right' },
};
const entryLabels: Readonly<Record<string, string>> = {
  runs: 'Runs',
  at: 'Where',
  stock: 'Board',
  lay: 'How it lies',
  plies: 'Boards',
  setback: 'Behind the front of the bars',
  for: 'For',
  ply: 'Which board of the bar',
  twist: 'Twist',
  bow: 'Bow',
  crook: 'Crook',
  over: 'Read over',
};
const seldom = new Set(['plies', 'setback', 'give', 'give.plane', 'give.out', 'give.twist']);

/** A list of the plan, such as its crossbars: each entry with its own controls, one more, one less. */
function Entries({ control: { leaf, label } }: { readonly control: Control }) {
  const list = valueAt([leaf.path]);
  const count = Array.isArray(list) ? list.length : 0;
  const one = singular[leaf.path] ?? 'entry';
  const problem = problemAt(leaf.path);
  const asControl = (item: Control['leaf'], i: number): Control => ({
    leaf: { ...item, path: `${leaf.path}.${i}.${item.path}` },
    group: 'More',
    label: entryLabels[item.path] ?? labelOf(item),
    words: entryWords[item.path] ?? {},
    rare: seldom.has(item.path),
    drawn: false,
    absent: null,
    when: null,
    bare: false,
  });
  return (
    <div class="entries">
      {Array.from({ length: count }, (_, i) => {
        const items = leaf.items.map((item) => asControl(item, i));
        return (
          <fieldset class="entry" key={i}>
            <legend>{`${one} ${i + 1}`}</legend>
            {items
              .filter(({ rare }) => !rare)
              .map((item) => (
                <Field key={item.leaf.path} control={item} />
              ))}
            {items.some(({ rare }) => rare) && (
              <details class="rare">
                <summary>More</summary>
                {items
                  .filter(({ rare }) => rare)
                  .map((item) => (
                    <Field key={item.leaf.path} control={item} />
                  ))}
              </details>
            )}
            <button
              type="button"
              onClick={() => {
                setAt([leaf.path, i], undefined);
                restHistory();
              }}
            >{`Take ${one} ${i + 1} out`}</button>
          </fieldset>
        );
      })}
      {problem !== null && <p class="problem">{problem}</p>}
      <button
        type="button"
        disabled={!planData.value.readable}
        onClick={() => {
          setAt([leaf.path, count], firstEntries[leaf.path] ?? {});
          restHistory();
        }}
      >
        {count === 0 ? `Put in a ${one}` : `One more ${one}`}
      </button>
      {count === 0 && <p class="note">{`no ${label.toLowerCase()}`}</p>}
    </div>
  );
}
