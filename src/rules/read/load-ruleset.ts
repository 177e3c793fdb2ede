import { digest } from '../../base/digest.js';
import type { Place } from '../../base/wording.js';
import type { Problem, Result } from '../../base/problem.js';
import { nearest } from '../../base/schema-problems.js';
import { limitProblems } from '../../base/yaml-document.js';
import { overlay } from './overlay.js';
import { readLayer } from './read-layer.js';
import { ruleChecks } from './rule-checks.js';
import { ruleProblem } from './rule-problems.js';
import type { Layer, Ruleset, Thresholds } from '../ruleset.js';

/** Where the texts of rulesets come from: by name, or null when there is none. `from` is the file that asks. */
export type RulesetTexts = ReadonlyMap<string, string> | ((name: string, from: string | null) => string | null);

/** What a ruleset is held against while it is read. */
export interface LoadOptions {
  /** Keys of the list of sources; without it any readable key is taken. */
  readonly sources?: ReadonlySet<string>;
  /** Whether every rule must bring examples, as the baseline's do. */
  readonly examplesRequired?: boolean;
  /** Names of rulesets there are, to tell which one was meant. */
  readonly names?: () => readonly string[];
  /** Files that were read ahead of time; each is used only for the very same text, whatever its file is called. */
  readonly prepared?: readonly PreparedLayer[];
  /** Which of them were found sound, laid over each other. */
  readonly stacks?: readonly PreparedStack[];
}

/**
 * A ruleset file read ahead of time: plain data, to be kept as JSON beside the program. Reading YAML is most of what
 * loading costs.
 */
export interface PreparedLayer {
  /** Digest of the text it was read from. */
  readonly of: string;
  readonly layer: Layer;
}

/**
 * Prepared files that nothing is wrong with when they are laid over each other in this order, by their places in the
 * list, with what each of their limits comes to: checking that is most of what laying costs.
 */
export interface PreparedStack {
  readonly of: readonly number[];
  readonly thresholds: readonly (readonly [string, Thresholds])[];
}

const mostLayers = 20;
const plainName = /^[A-Za-z0-9][\w .-]{0,99}$/;

/**
 * Loads a ruleset and all it builds on, and lays them over each other. Pure: the texts are given.
 * Untrusted: no code, no path expressions, size and nesting limits. All problems come at once, each with its place.
 */
export function loadRuleset(texts: RulesetTexts, entryFile: string, options: LoadOptions = {}): Result<Ruleset> {
  const checks = ruleChecks(options.sources ?? null, options.examplesRequired ?? false);
  const lookUp = typeof texts === 'function' ? texts : (name: string) => texts.get(name) ?? null;
  const layers: Layer[] = [];
  const prepared = options.prepared ?? [];
  const places: number[] = [];
  const reads = new Set<string>();
  const problems: Problem[] = [];

  const visit = (name: string, from: string | null, place: Place, chain: readonly string[]): void => {
    if (chain.includes(name)) {
      problems.push(
        ruleProblem('builds-on-itself', place, {
          value: [...chain.slice(chain.indexOf(name)), name].map((file) => `\`${file}\``).join(' builds on '),
        }),
      );
      return;
    }
    if (reads.has(name)) return;
    reads.add(name);
    if (reads.size > mostLayers) {
      if (reads.size === mostLayers + 1)
        problems.push(ruleProblem('too-many-rulesets', place, { allowed: String(mostLayers) }));
      return;
    }
    const text = lookUp(name, from);
    if (text === null) {
      problems.push(
        ruleProblem('no-such-ruleset', place, {
          value: name,
          nearest: nearest(name.replace(/\.ya?ml$/u, ''), options.names?.() ?? []),
        }),
      );
      return;
    }
    const of = prepared.length === 0 ? '' : digest(text);
    const at = prepared.findIndex((one) => one.of === of);
    const ready = prepared[at];
    const { layer, problems: found } =
      ready === undefined ? readLayer(text, name, checks) : { layer: { ...ready.layer, file: name }, problems: [] };
    problems.push(...found);
    if (layer === null) return;
    for (const below of layer.builds_on) {
      if (plainName.test(below.written)) visit(below.file, name, below.place, [...chain, name]);
      else problems.push(ruleProblem('bad-ruleset-name', below.place, { value: below.written }));
    }
    layers.push(layer);
    places.push(at);
  };

  visit(entryFile, null, { file: entryFile, path: '', line: 0, column: 0 }, []);
  const stack = places.join();
  const sound = options.stacks?.find(({ of }) => of.join() === stack);
  const laid = overlay(layers, problems.length === 0, sound && new Map(sound.thresholds));
  const all = [...problems, ...laid.problems];
  const errors = all.filter(({ severity }) => severity === 'error');
  if (laid.ruleset === null || errors.length > 0) return { ok: false, problems: limitProblems(all) };
  return { ok: true, value: laid.ruleset, warnings: all };
}

/**
 * Reads a ruleset file ahead of time; null when anything is wrong with it, so that what is prepared is known to be
 * sound.
 */
export function prepareLayer(text: string, file: string, options: LoadOptions = {}): PreparedLayer | null {
  const { layer, problems } = readLayer(
    text,
    file,
    ruleChecks(options.sources ?? null, options.examplesRequired ?? false),
  );
  return layer === null || problems.length > 0 ? null : { of: digest(text), layer };
}

/** A ruleset and what it builds on, all prepared, checked together; null when there is anything to say of it. */
export function prepareStack(
  texts: RulesetTexts,
  entryFile: string,
  options: LoadOptions & Required<Pick<LoadOptions, 'prepared'>>,
): PreparedStack | null {
  const loaded = loadRuleset(texts, entryFile, options);
  if (!loaded.ok || loaded.warnings.length > 0) return null;
  const of = loaded.value.layers.map((layer) => options.prepared.findIndex(({ layer: one }) => isSame(one, layer)));
  return of.includes(-1) ? null : { of, thresholds: [...loaded.value.thresholds] };
}

/** A layer is taken over whole, but for the name of its file. */
const isSame = (one: Layer, other: Layer): boolean => one.rules === other.rules;
