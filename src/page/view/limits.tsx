import type { LimitRow } from '../engine/protocol.js';
import { bench } from '../state/answers.js';
import { chooseRules, ownLimits, ownRules, rulesEntry, setLimit, written, writtenLimit } from '../state/bench.js';
import { told } from '../state/plan.js';
import type { YamlValue } from '../../index.js';
import { Entry } from './entry.js';
import { YamlFile } from './yaml-file.js';

const amountWords: Readonly<Record<string, string>> = {
  value: '',
  stop: 'stop at',
  caution: 'caution at',
  inches: 'in inches',
};

/**
 * The limits that plans are judged by, each with who set it; a change is kept in a ruleset of one's own that builds on
 * the one below.
 */
export function Limits() {
  const limits = bench.value?.limits ?? [];
  const rulesets = written.value?.rules ?? [];
  return (
    <section class="view" aria-labelledby="limits-title">
      <h2 id="limits-title">Limits</h2>
      <p>{`Plans are judged by “${bench.value?.ruleset_name ?? ''}”. Change a number, and the verdict beside says at once what that does.`}</p>
      <p class="field">
        <label for="below">{ownRules.value === null ? 'Ruleset' : 'My limits build on'}</label>
        <select id="below" value={rulesEntry.value} onChange={({ currentTarget }) => chooseRules(currentTarget.value)}>
          {rulesets.map(({ file }) => (
            <option key={file} value={file}>
              {file.replace(/\.ya?ml$/u, '')}
            </option>
          ))}
        </select>
      </p>
      <div class="wide" tabIndex={0} role="region" aria-label="Table of limits">
        <table>
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col">Amount</th>
              <th scope="col">Of</th>
              <th scope="col">Source</th>
              <th scope="col">Set by</th>
            </tr>
          </thead>
          <tbody>
            {limits.map((limit) => (
              <Row key={limit.name} limit={limit} />
            ))}
          </tbody>
        </table>
      </div>
      <YamlFile
        what="ruleset"
        file={ownRules.value}
        problems={bench.value?.problems ?? []}
        onChange={(file) => {
          ownRules.value = file;
        }}
      />
    </section>
  );
}

function Row({ limit }: { readonly limit: LimitRow }) {
  const last = limit.history.at(-1);
  const raw = writtenLimit(limit.name, last?.file);
  const own = Object.hasOwn(ownLimits.value, limit.name);
  const amounts = Object.entries(raw).filter(
    ([key, value]) => key !== 'of' && key !== 'source' && (typeof value === 'string' || typeof value === 'number'),
  );
  const change = (key: string, typed: string): void => {
    if (typed.trim() === '') return;
    const latest = writtenLimit(limit.name, last?.file);
    const read = /^-?\d+(?:\.\d+)?$/u.test(typed.trim()) ? Number(typed) : typed.trim();
    if (!setLimit(limit.name, { ...(latest as Record<string, YamlValue>), [key]: read, source: 'practice' }))
      told.value = 'Your limits are written in a way that only you can change: do it in their text.';
  };
  return (
    <tr>
      <th scope="row">{limit.name.replaceAll('-', ' ')}</th>
      <td class="amounts-cell">
        {amounts.length === 0 && limit.said}
        {amounts.map(([key, value]) => (
          <label key={key}>
            {amountWords[key] ?? key}{' '}
            <Entry
              aria-label={`${limit.name}, ${key}`}
              value={String(value)}
              onEntered={(typed) => change(key, typed)}
            />
          </label>
        ))}
      </td>
      <td>{typeof raw['of'] === 'string' ? raw['of'] : ''}</td>
      <td>{limit.source}</td>
      <td>
        {limit.history.map(({ ruleset, said }, i) => (
          <p key={i}>{`${ruleset}: ${said}`}</p>
        ))}
        {own && (
          <button
            type="button"
            class="plain"
            aria-label={`${limit.name}: leave it to the ruleset below`}
            onClick={() => setLimit(limit.name, undefined)}
          >
            leave it to the ruleset below
          </button>
        )}
      </td>
    </tr>
  );
}
