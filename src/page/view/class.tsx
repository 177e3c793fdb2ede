import { useEffect, useRef, useState } from 'preact/hooks';
import { verdictWord } from '../../index.js';
import type { Ask } from '../engine/client.js';
import type { PackSeen } from '../engine/protocol.js';
import { classBefore, classPack, classPlans, classRows, openClass } from '../state/class.js';
import { droppedFiles, filesOfFolder, readFiles } from '../state/files.js';
import { openPlan, told } from '../state/plan.js';
import { view } from '../state/view.js';
import { VerdictShape } from './glyphs.js';
import { Paper } from './paper.js';

/** The plans of a class at a glance; a click opens one. They stay on this device like everything here. */
export function Class({ ask }: { readonly ask: Ask }) {
  const picker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  // The types of views do not know the attribute, which every browser has.
  useEffect(() => folderPicker.current?.setAttribute('webkitdirectory', ''), []);
  const load = async (files: readonly File[] | null): Promise<void> => {
    if (files === null) {
      told.value =
        'This browser does not let the page look into a folder that is dropped: choose the folder, or drop the plans in it.';
      return;
    }
    const plans = await readFiles(files);
    if (plans.length === 0) told.value = 'There is no plan among these files: plans end in .yaml.';
    else {
      openClass(plans, ask);
      const beside = files.length - plans.length;
      told.value =
        beside === 0
          ? ''
          : `${beside} ${beside === 1 ? 'file beside them is' : 'files beside them are'} left out: plans end in .yaml.`;
    }
  };
  const open = (file: string): void => {
    const plan = classPlans.peek().find((one) => one.file === file);
    if (plan === undefined) return;
    openPlan(plan.text, plan.file);
    view.value = 'Frame';
  };
  const rows = classRows.value;
  const count = classPlans.value.length;
  return (
    <section class="view" aria-labelledby="class-title">
      <h2 id="class-title">A class</h2>
      <div
        class={`drop${over ? ' over' : ''}`}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          event.stopPropagation();
          setOver(false);
          if (event.dataTransfer !== null) void droppedFiles(event.dataTransfer).then(load);
        }}
      >
        <p>Drop a folder of plans here, or choose them.</p>
        <input
          ref={picker}
          type="file"
          multiple
          accept=".yaml,.yml"
          hidden
          aria-label="Plan files of the class"
          onChange={({ currentTarget }) => {
            void load([...(currentTarget.files ?? [])]);
            currentTarget.value = '';
          }}
        />
        <input
          ref={folderPicker}
          type="file"
          hidden
          aria-label="Folder of the class"
          onChange={({ currentTarget }) => {
            void load(filesOfFolder([...(currentTarget.files ?? [])]));
            currentTarget.value = '';
          }}
        />
        <p class="buttons">
          <button type="button" onClick={() => picker.current?.click()}>
            Choose plans…
          </button>
          <button type="button" onClick={() => folderPicker.current?.click()}>
            Choose a folder…
          </button>
        </p>
      </div>
      <p role="status">
        {count === 0
          ? ''
          : rows.length < count
            ? `${rows.length} of ${count} looked at …`
            : summary(rows.map(({ word }) => word))}
      </p>
      {rows.length > 0 && (
        <div class="wide" tabIndex={0} role="region" aria-label="Table of the class">
          <table>
            <thead>
              <tr>
                <th scope="col">Plan</th>
                <th scope="col">Verdict</th>
                <th scope="col">Gravest</th>
                <th scope="col">Lifted corner</th>
                <th scope="col">Cost</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ file, name, verdict, word, worst, chance, cost, problems }) => {
                const before = classBefore.value.get(file);
                const [first] = problems;
                return (
                  <tr key={file}>
                    <th scope="row">
                      <button type="button" class="plain" onClick={() => open(file)}>
                        {name === '' ? file : name}
                      </button>
                    </th>
                    <td class="verdict-cell">
                      <VerdictShape verdict={verdict ?? 'none'} />
                      {` ${word}`}
                      {before !== undefined && before !== word && <em>{` (was ${before.toLowerCase()})`}</em>}
                    </td>
                    <td class="gravest">
                      {verdict === null && first !== undefined
                        ? `Line ${first.line}: found ${first.found}; allowed: ${first.allowed}.`
                        : worst}
                    </td>
                    <td>{chance}</td>
                    <td>{cost}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      <Marks />
      {classPack.value !== null && <Pack pack={classPack.value} />}
    </section>
  );
}

/** How each plan stands to each rule that some plan does not meet. */
function Marks() {
  const read = classRows.value.filter(({ verdict }) => verdict !== null);
  const rules = [
    ...new Set(
      read.flatMap(({ marks }) => [...marks].filter(([, { verdict }]) => verdict !== 'clear').map(([rule]) => rule)),
    ),
  ].sort();
  if (rules.length === 0) return null;
  return (
    <>
      <h3>Rule by rule</h3>
      <p class="note">
        {'Rules that every plan meets are left out; no mark: the rule does not apply. '}
        {(['clear', 'caution', 'unknown', 'stop'] as const).map((verdict) => (
          <span class="verdict-cell" key={verdict}>
            <VerdictShape verdict={verdict} />
            {` ${verdictWord[verdict]} `}
          </span>
        ))}
      </p>
      <div class="wide" tabIndex={0} role="region" aria-label="Rule by rule">
        <table>
          <thead>
            <tr>
              <th scope="col">Rule</th>
              {read.map(({ file, name }) => (
                <th scope="col" key={file}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rules.map((rule) => (
              <tr key={rule}>
                <th scope="row">{rule}</th>
                {read.map(({ file, marks }) => {
                  const mark = marks.get(rule);
                  return (
                    <td class="verdict-cell" key={file}>
                      {mark !== undefined && (
                        <>
                          <VerdictShape verdict={mark.verdict} />
                          <span class="ear">{verdictWord[mark.verdict]}</span>
                        </>
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

/** What the class buys together, and everything to print for it. */
function Pack({ pack }: { readonly pack: PackSeen }) {
  return (
    <>
      <h3>For all of them</h3>
      <p>{pack.buying}</p>
      <Paper
        html={pack.html}
        title="The class pack"
        print="Print the class pack"
        about="A sheet for each plan, then one buying list, the boards with their cuts, the cloth on the roll and the order at the saw."
      />
    </>
  );
}

/** `10 plans: 4 clear, 3 caution, 3 stop.` */
function summary(words: readonly string[]): string {
  const counts = [...new Set(words)].map(
    (word) => `${words.filter((one) => one === word).length} ${word.toLowerCase()}`,
  );
  return `${words.length} ${words.length === 1 ? 'plan' : 'plans'}: ${counts.join(', ')}.`;
}
