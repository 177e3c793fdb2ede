import { audit, type Bench } from '../audit.js';
import { nearest } from '../base/schema-problems.js';
import { catalogue } from '../facts/catalogue.js';
import { userText } from '../report/clean-text.js';
import { checkRuleset } from '../rules/check/check.js';
import { changeInWords, compareVerdicts, type VerdictChange } from '../rules/say/compare.js';
import { examplesThatHold } from '../rules/check/examples.js';
import { rulePage, rulePageText, ruleList } from '../rules/check/show.js';
import { loadBench } from './bench.js';
import { readPlans } from './cut-run.js';
import { exitCode } from './exit.js';
import { readText } from './read-text.js';
import { loadRules, sourceKeys, textsBeside } from './load.js';
import { progress } from './progress.js';
import { rulesFile, shippedRulesets, withShippedNames } from './rules-file.js';
import type { CompareOptions } from './option-types.js';
import { complain, printJson, tell, warn } from './terminal.js';

const several = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** `rules check`: every problem on stderr, one line of summary. Resolves to the exit code. */
export async function runCheck(named: string): Promise<number> {
  const entry = rulesFile(named);
  const first = readText(entry);
  if ('problem' in first) {
    complain([withShippedNames(named, first.problem)]);
    return exitCode.error;
  }
  const { ruleset, problems, examples } = await checkRuleset(textsBeside(entry, first.text), entry, {
    sources: sourceKeys(),
    names: shippedRulesets,
  });
  complain(problems);
  const errors = problems.filter(({ severity }) => severity === 'error').length;
  const found = `${several(errors, 'error')}, ${several(problems.length - errors, 'warning')}`;
  tell(
    ruleset === null
      ? `${named}: does not load; ${found}.`
      : `${named}: “${ruleset.name}”, ${several(ruleset.rules.length, 'rule')}, ${several(ruleset.limits.size, 'limit')}, ${several(examples.length, 'example')} tried; ${found}.`,
  );
  return errors > 0 ? exitCode.error : exitCode.fine;
}

/** `rules show`: the list of rules, or the page of one. Resolves to the exit code. */
export async function runShow(id: string | undefined, named: string | undefined): Promise<number> {
  const loaded = loadRules(named === undefined ? undefined : rulesFile(named));
  complain(loaded.ok ? loaded.warnings : loaded.problems);
  if (!loaded.ok) return exitCode.error;
  const list = ruleList(loaded.value);
  if (id === undefined) {
    tell(`${loaded.value.name}: ${several(list.length, 'rule')}\n`);
    for (const rule of list) tell(`${rule.id}\n    ${rule.requires}`);
    return exitCode.fine;
  }
  const page = rulePage(loaded.value, id, await examplesThatHold(loaded.value, id));
  if (page !== null) {
    tell(rulePageText(page).trimEnd());
    return exitCode.fine;
  }
  const close = nearest(
    id,
    list.map((rule) => rule.id),
  );
  warn(
    `No rule is called \`${id.slice(0, 100)}\`${close === undefined ? '.' : `; did you mean ${close}?`} \`sightdown rules show\` lists them all.`,
  );
  return exitCode.error;
}

/** `rules compare`: every verdict that changes, plan by plan. Resolves to the exit code. */
export async function runCompare(
  before: string,
  after: string,
  named: readonly string[],
  options: CompareOptions,
): Promise<number> {
  const [old, next] = [loadBench({ ...options, rules: before }), loadBench({ ...options, rules: after })];
  if (old === null || next === null) return exitCode.error;
  const { plans, bad } = readPlans(named, next.shelf);
  if (plans.length === 0) return exitCode.error;
  const bar = await progress(plans.length, 'plans');
  const lines: string[] = [];
  let changed = 0;
  for (const plan of plans) {
    const findings = async (bench: Bench) => (await audit(plan, bench)).findings;
    const compared = compareVerdicts(await findings(old), await findings(next), plan.units, next.shelf.currency);
    if (compared.before !== compared.after) changed += 1;
    const title =
      compared.before === compared.after ? `still ${compared.after}` : `${compared.before} → ${compared.after}`;
    const quiet = compared.changes.filter(isQuiet).length;
    const loud = compared.changes.filter((change) => !isQuiet(change));
    lines.push(
      `${userText(plan.name)}: ${title}${compared.changes.length === 0 ? ', nothing changes' : ''}`,
      ...loud.map((change) => `    ${changeInWords(change)}`),
    );
    if (quiet > 0)
      lines.push(
        `    ${several(quiet, 'check')} that ${quiet === 1 ? 'is' : 'are'} clear ${quiet === 1 ? 'is' : 'are'} new or no longer made.`,
      );
    bar.step();
  }
  bar.end();
  tell(
    `From “${old.ruleset.name}” to “${next.ruleset.name}”: ${changed} of ${several(plans.length, 'plan')} ${changed === 1 ? 'gets' : 'get'} another verdict.\n`,
  );
  lines.forEach(tell);
  if (bad > 0) tell(`\nNot compared, because ${bad === 1 ? 'it' : 'they'} could not be read: ${several(bad, 'file')}.`);
  return bad > 0 ? exitCode.error : exitCode.fine;
}

/** A check that is new and clear, or was clear and is no longer made, changes nothing for the plan. */
const isQuiet = ({ before, after }: VerdictChange): boolean =>
  (before === null && after === 'clear') || (before === 'clear' && after === null);

/** `rules facts`: the catalogue, or the part of it with a word in it. Gives the exit code. */
export function runFacts(word: string | undefined, format: 'text' | 'json'): number {
  const wanted = word?.toLowerCase();
  const facts = catalogue.filter(
    ({ path, meaning }) => wanted === undefined || `${path} ${meaning}`.toLowerCase().includes(wanted),
  );
  if (format === 'json') printJson(`${JSON.stringify({ format: 'facts/1', facts }, null, 2)}\n`);
  else if (facts.length === 0)
    tell(`No fact has “${word?.slice(0, 60) ?? ''}” in its path or meaning. \`sightdown rules facts\` lists them all.`);
  else
    for (const { path, each, unit, meaning, words, signed, source } of facts)
      tell(
        `${path}  (${words === undefined ? unit : words.join(' | ')}; for each ${each}${signed === true ? '; signed' : ''}; source ${source})\n    ${meaning}`,
      );
  return facts.length === 0 ? exitCode.unknown : exitCode.fine;
}
