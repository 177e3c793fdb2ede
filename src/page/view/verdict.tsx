import type { Reason } from '../../index.js';
import type { Ask } from '../engine/client.js';
import type { ChangeSeen } from '../engine/protocol.js';
import { answer, answeredEdit, bench, changes, failure } from '../state/answers.js';
import { changeText, edits, planFile, restHistory, told } from '../state/plan.js';
import { lookedAt } from '../state/view.js';
import { VerdictShape } from './glyphs.js';
import { Drawing } from './picture.js';

/** So many reasons are seen before one asks for the rest. */
const saidAtOnce = 4;

/** The verdict on the slate: the word, its reasons, the amounts one asks for, what to change, and what to mind. */
export function VerdictSlate({ ask }: { readonly ask: Ask }) {
  const given = answer.value;
  const glance = given?.glance ?? null;
  const unfit = (bench.value?.problems ?? []).filter(({ severity }) => severity === 'error');
  const waiting = answeredEdit.value !== edits.value;
  return (
    <section class="slate" aria-labelledby="verdict-title" tabIndex={0} aria-busy={waiting}>
      <h2 id="verdict-title" class="ear">
        Verdict
      </h2>
      {failure.value !== null && (
        <p class="problem" role="alert">{`This should not have happened: ${failure.value}`}</p>
      )}
      <div class="said" role="status">
        <VerdictShape verdict={glance?.verdict ?? 'none'} />
        <p class="word">{glance?.word ?? (given === null ? 'One moment' : 'No verdict')}</p>
        <p class="sentence">
          {glance?.sentence ??
            (given === null
              ? 'The plan is being looked at.'
              : failure.value !== null
                ? 'Nothing is judged. Save the plan, and open the page again.'
                : unfit.length > 0
                  ? 'Shelf or limits cannot be read as they stand, so nothing is judged.'
                  : 'The plan cannot be read as it stands.')}
        </p>
      </div>
      {glance === null && given !== null && (unfit.length > 0 || given.problems.length > 0) && (
        <ul class="reasons">
          {[...unfit, ...given.problems].map((problem, i) => (
            <li key={i}>
              <div>
                <strong>{problem.path === '' ? `Line ${problem.line}` : problem.path}</strong>
                {`: found ${problem.found}; allowed: ${problem.allowed}. ${problem.hint}`}
              </div>
            </li>
          ))}
        </ul>
      )}
      {glance !== null && (
        <>
          <dl class="amounts">
            {glance.amounts.map(({ name, said }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{said}</dd>
              </div>
            ))}
          </dl>
          {glance.reasons.length > 0 && (
            <>
              <h3>Why</h3>
              <Reasons reasons={glance.reasons.slice(0, saidAtOnce)} />
              {glance.reasons.length > saidAtOnce && (
                <details>
                  <summary>{`${glance.reasons.length - saidAtOnce} more`}</summary>
                  <Reasons reasons={glance.reasons.slice(saidAtOnce)} />
                </details>
              )}
            </>
          )}
          <Changes ask={ask} />
          <h3>Work safely</h3>
          <ul class="cautions">
            {glance.cautions.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <p class="professional">
            <strong>{glance.professional}</strong>
          </p>
          <p class="note">{`Judged by ${glance.judged_by.ruleset}; shelf “${glance.judged_by.shelf}”.`}</p>
        </>
      )}
    </section>
  );
}

const Reasons = ({ reasons }: { readonly reasons: readonly Reason[] }) => (
  <ul class="reasons">
    {reasons.map(({ rule, verdict, word, say, do: next }) => (
      <li key={`${rule} ${verdict}`}>
        <VerdictShape verdict={verdict} />
        <div>
          <p>
            <strong>{word}. </strong>
            {say}
          </p>
          {next.length > 0 && <p class="next">{next.join(' ')}</p>}
        </div>
      </li>
    ))}
  </ul>
);

/** What could be changed, most useful first: looked at, done, and taken back. */
function Changes({ ask }: { readonly ask: Ask }) {
  const found = changes.value;
  if (found !== null && found.length === 0) return null;
  const look = async (change: ChangeSeen): Promise<void> => {
    if (lookedAt.peek()?.change === change || change.text === null) {
      lookedAt.value = null;
      return;
    }
    const edit = edits.peek();
    const svg = await ask('front', { text: change.text, file: planFile.peek() });
    if (svg !== null && edit === edits.peek()) lookedAt.value = { change, svg };
  };
  const make = ({ words, text }: ChangeSeen): void => {
    if (text === null) return;
    restHistory();
    changeText(text);
    lookedAt.value = null;
    told.value = `Done: ${words} “Undo” takes it back.`;
  };
  return (
    <>
      <h3>What to change</h3>
      {found === null && <p class="note">Trying what usually helps …</p>}
      <ol class="changes">
        {(found ?? []).map((change, i) => (
          <li key={change.words}>
            <p class="words">
              <VerdictShape verdict={change.verdict} />
              <span>{change.words}</span>
            </p>
            <p class="effect">{`${change.word}. Reserve ${change.reserve}; lifted corner: ${change.chance}; ${change.cost}; ${change.weight}.`}</p>
            <p class="buttons">
              <button
                type="button"
                disabled={change.text === null}
                onClick={() => make(change)}
                aria-label={`Do it, change ${i + 1}: ${change.words}`}
              >
                Do it
              </button>
              <button
                type="button"
                disabled={change.text === null}
                aria-pressed={lookedAt.value?.change === change}
                onClick={() => void look(change)}
                aria-label={`See it drawn, change ${i + 1}: ${change.words}`}
              >
                See it drawn
              </button>
            </p>
            {lookedAt.value?.change === change && (
              <figure class="sheet here" ref={(figure) => figure?.scrollIntoView({ block: 'nearest' })}>
                <Drawing svg={lookedAt.value.svg} as="here" />
                <figcaption>With this change</figcaption>
              </figure>
            )}
          </li>
        ))}
      </ol>
    </>
  );
}
