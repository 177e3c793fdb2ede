import { computed, signal } from '@preact/signals';
import { parse } from 'yaml';
import {
  fileShape,
  plainYaml,
  readSources,
  setInText,
  type EditedKind,
  type FileShape,
  type YamlValue,
} from '../../index.js';
import type { BenchTexts, NamedText, PageData } from '../engine/protocol.js';
import type { Path } from './plan.js';

/** What the page was written with. */
export const written = signal<PageData | null>(null);
/** One's own shelf and limits, laid over what the page was written with; null while there are none. */
export const ownShelf = signal<NamedText | null>(null);
export const ownRules = signal<NamedText | null>(null);
/** The ruleset that judges, or that one's own limits build on. */
export const rulesEntry = signal('');

const ownRulesFile = 'my-limits.yaml';
const blankShelf: NamedText = { file: 'my-shelf.yaml', text: 'shelf: 1\nname: My shelf\n' };

/** Everything plans are judged with, as texts. */
export const chosenBench = computed((): BenchTexts | null => {
  const data = written.value;
  if (data === null) return null;
  const own = ownRules.value;
  return {
    shelf: data.shelf,
    own_shelf: ownShelf.value,
    sources: data.sources,
    rules: own === null ? data.rules : [...data.rules.filter(({ file }) => file !== own.file), own],
    entry: own === null ? rulesEntry.value : own.file,
  };
});

const shapes = new Map<EditedKind, FileShape>();

/** What a kind of file may say, worked out when it is first asked for. */
export function shapeFor(kind: EditedKind): FileShape {
  const shape =
    shapes.get(kind) ??
    fileShape(
      kind,
      readSources(written.peek()?.sources ?? '').map(({ key }) => key),
    );
  shapes.set(kind, shape);
  return shape;
}

/** A YAML text as plain data; an empty map where it cannot be read. */
export function dataOf(text: string | undefined): Readonly<Record<string, unknown>> {
  try {
    const data: unknown = parse(text ?? '', { ...plainYaml, maxAliasCount: 100 });
    return typeof data === 'object' && data !== null && !Array.isArray(data)
      ? (data as Readonly<Record<string, unknown>>)
      : {};
  } catch {
    return {};
  }
}

/** A block of a file, such as its `lumber`. */
export function block(
  data: Readonly<Record<string, unknown>>,
  name: string,
): Readonly<Record<string, Readonly<Record<string, unknown>>>> {
  const found = Object.hasOwn(data, name) ? data[name] : undefined;
  return typeof found === 'object' && found !== null
    ? (found as Readonly<Record<string, Readonly<Record<string, unknown>>>>)
    : {};
}

/** The lumber of the shelf the page was written with, and one's own. */
export const writtenLumber = computed(() => block(dataOf(written.value?.shelf.text), 'lumber'));
export const ownLumber = computed(() => block(dataOf(ownShelf.value?.text), 'lumber'));

/** Writes into one's own shelf, making it when there is none; false where the text cannot be changed that way. */
export function setOwnShelf(path: Path, value: YamlValue): boolean {
  const { file, text } = ownShelf.peek() ?? blankShelf;
  const changed = setInText(text, path, value);
  if (changed !== null) ownShelf.value = { file, text: changed };
  return changed !== null;
}

/** Changes a board; one of the shelf below is copied up first, without its source: it is one's own from then on. */
export function setBoard(key: string, path: Path, value: YamlValue): boolean {
  if (!Object.hasOwn(ownLumber.peek(), key)) {
    const { source: _, ...entry } = (writtenLumber.peek()[key] ?? {}) as Record<string, YamlValue>;
    if (!setOwnShelf(['lumber', key], entry)) return false;
  }
  return setOwnShelf(['lumber', key, ...path], value);
}

/** One's own limits. */
export const ownLimits = computed(() => block(dataOf(ownRules.value?.text), 'limits'));

/** The limit as one's own ruleset says it, or else the file that set it last. */
export function writtenLimit(name: string, file: string | undefined): Readonly<Record<string, unknown>> {
  if (Object.hasOwn(ownLimits.value, name)) return ownLimits.value[name] ?? {};
  return block(dataOf(written.value?.rules.find((one) => one.file === file)?.text), 'limits')[name] ?? {};
}

/**
 * Sets a limit in one's own ruleset, which builds on the one that judged until now; undefined leaves it to that one
 * again.
 */
export function setLimit(name: string, limit: YamlValue): boolean {
  const below = rulesEntry.peek();
  const { file, text } = ownRules.peek() ?? {
    file: ownRulesFile,
    text: `ruleset: 1\nname: My limits\nbuilds-on: [ ${below.replace(/\.ya?ml$/u, '')} ]\n`,
  };
  const changed = setInText(text, ['limits', name], limit);
  if (changed !== null) ownRules.value = { file, text: changed };
  return changed !== null;
}

/** Chooses the ruleset below: one's own limits build on it. */
export function chooseRules(entry: string): void {
  rulesEntry.value = entry;
  const own = ownRules.peek();
  const changed = own === null ? null : setInText(own.text, ['builds-on', 0], entry.replace(/\.ya?ml$/u, ''));
  if (own !== null && changed !== null) ownRules.value = { ...own, text: changed };
}
