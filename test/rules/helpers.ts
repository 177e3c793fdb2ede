import type { Problem } from '../../src/base/problem.js';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import type { Fact, FactPath } from '../../src/facts/fact.js';
import { loadRuleset, type LoadOptions } from '../../src/rules/read/load-ruleset.js';
import type { Ruleset } from '../../src/rules/ruleset.js';

/** A ruleset from texts by file name; the last is the entry. Throws its problems. */
export function rulesetFrom(texts: Readonly<Record<string, string>> | string, options: LoadOptions = {}): Ruleset {
  const files = typeof texts === 'string' ? { 'own.yaml': texts } : texts;
  const loaded = loadRuleset(new Map(Object.entries(files)), Object.keys(files).at(-1)!, options);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 1));
  return loaded.value;
}

/** The problems of a ruleset that must not load. */
export function problemsOf(texts: Readonly<Record<string, string>> | string, options: LoadOptions = {}): readonly Problem[] {
  const files = typeof texts === 'string' ? { 'own.yaml': texts } : texts;
  const loaded = loadRuleset(new Map(Object.entries(files)), Object.keys(files).at(-1)!, options);
  if (loaded.ok) throw new Error('the ruleset loaded, though it must not');
  return loaded.problems;
}

/** Rules as YAML under a head; each rule is given as one flow map without `say`, `do` and `source`, which are filled in. */
export function rulesText(rules: readonly string[], limits: readonly string[] = []): string {
  const limitLines = limits.length === 0 ? '' : `limits:\n${limits.map((limit) => `  ${limit}\n`).join('')}`;
  return `ruleset: 1\nname: Test rules\n${limitLines}rules:\n${rules.map((rule) => `  - { ${rule}, say: "{about}: {actual}, limit {limit}", do: [ "Change it." ], source: proposal }\n`).join('')}`;
}

/** A fact of the catalogue, unit filled in. */
export function fact(path: FactPath, about: string, value: number | string | null, reason?: string): Fact {
  return { path, about, value, unit: catalogueByPath.get(path)!.unit, ...(reason === undefined ? {} : { reason }) };
}

/** The same fact for all four bars. */
export function ofBars(path: FactPath, values: Readonly<Record<'top' | 'bottom' | 'left' | 'right', number | string | null>>): readonly Fact[] {
  return Object.entries(values).map(([about, value]) => fact(path, about, value));
}
