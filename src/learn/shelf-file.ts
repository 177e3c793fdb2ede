import { isMap, isScalar, parseDocument, type Document, type Node, type YAMLMap } from 'yaml';
import { plainYaml } from '../base/plain-yaml.js';
import { digits } from '../measure/reading.js';
import { eachWay, type JointGive } from '../base/joint-give.js';
import type { JointBuild, Shelf } from '../shelf/shelf.js';
import { withPlane } from './answers.js';
import type { LearnedEntry } from './entries.js';

/** A number as a shelf writes it: alone, with its spread, or by direction. */
type ShelfNumber =
  | number
  | string
  | { readonly mean: string; readonly sd: string }
  | { readonly plane: number; readonly out: number; readonly twist: number };

/** A number of the shelf that the frames change: where it stands, what it becomes, what it was. */
export interface ShelfChange {
  /** As in the shelf's `learned:` block: `lumber.strip-19x38.spread.plain.twist`. */
  readonly place: readonly string[];
  readonly value: ShelfNumber;
  readonly before: ShelfNumber;
  readonly frames: number;
  readonly boards: number;
  readonly joints: number;
}

const unitText = { 'deg/m': ' deg/m', '/m': ' /m', 'N/m': ' N/m', 'bar-widths': '', pct: ' %' } as const;

/** What the entries mean for the shelf, in its own words. Moisture belongs into plans and is left out. */
export function shelfChanges(entries: readonly LearnedEntry[], shelf: Shelf): readonly ShelfChange[] {
  return entries.flatMap((entry): ShelfChange[] => {
    const { key, what, of, chosen, unit, from: frames, boards, joints, posterior } = entry;
    const counts = { frames, boards, joints };
    const said = (value: number): string => `${digits(value)}${unitText[unit]}`;
    if (what === 'give') {
      const usual = shelf.joints.give[key.replaceAll('-', '_') as JointBuild];
      const written = (give: JointGive): ShelfNumber =>
        give.plane === give.out && give.plane === give.twist ? give.plane : { ...give };
      return [
        {
          place: ['joints', 'give', key],
          value: written(eachWay(withPlane(usual, posterior.mean), (widths) => Number(digits(widths)))),
          before: written(usual),
          ...counts,
        },
      ];
    }
    if (what === 'pull')
      return [
        {
          place: ['cloths', key, 'pull'],
          value: `${digits(posterior.mean, 2)} N/m`,
          before: shelf.cloths[key]?.pull_N_per_m == null ? 'none' : said(entry.shelf),
          ...counts,
        },
      ];
    if (what === 'moisture' || of === 'mean') return [];
    const mean = entries.find(
      (other) => other.key === key && other.what === what && other.chosen === chosen && other.of === 'mean',
    );
    const pair = (middle: number, sd: number): { mean: string; sd: string } => ({ mean: said(middle), sd: said(sd) });
    return [
      {
        place: ['lumber', key, 'spread', chosen ?? 'plain', what],
        value: pair(mean?.posterior.mean ?? 0, posterior.mean),
        before: pair(mean?.shelf ?? 0, entry.shelf),
        ...counts,
      },
    ];
  });
}

/**
 * What changed, for the remark beside a number: `before: 0.5 ± 0.7 deg/m; learned 2027-03-04 from 20 frames and 12
 * boards`.
 */
function remark({ before, frames, boards, joints }: ShelfChange, date: string | null): string {
  const old =
    typeof before === 'object'
      ? Object.entries(before)
          .map(([name, value]) => `${name} ${value}`)
          .join(', ')
      : String(before);
  const counts = [
    `${frames} ${frames === 1 ? 'frame' : 'frames'}`,
    ...(boards > 0 ? [`${boards} boards`] : []),
    ...(joints > 0 ? [`${joints} test corners`] : []),
  ].join(', ');
  return ` before: ${old}; learned${date === null ? '' : ` ${date}`} from ${counts}`;
}

/**
 * A shelf file with the learned numbers in it; everything else, remarks too, stays as it is. The old number stands in a
 * remark beside the new one and in
 * the `learned:` block, from which the next run starts again. An entry the file does not have is written out whole from
 * `base`, since it replaces the one there.
 * Throws RangeError for a text that is no shelf.
 */
export function writeLearned(
  text: string,
  changes: readonly ShelfChange[],
  { base, shelf }: { readonly base: string; readonly shelf: Shelf },
  date: string | null,
): string {
  const doc = parseDocument(text, plainYaml);
  const below = parseDocument(base, plainYaml);
  if (doc.errors.length > 0 || !isMap(doc.contents)) throw new RangeError('the shelf cannot be read');
  for (const change of changes) {
    const { place, value, frames, boards, joints, before } = change;
    const name = place.join('.');
    if (place[0] === 'lumber' || place[0] === 'cloths') whole(doc, below, place, shelf);
    const node = doc.createNode(value, typeof value === 'object' ? { flow: true } : {}) as Node;
    node.comment = remark(change, date);
    doc.setIn(place, node);
    credit(doc, place);
    const kept = doc.getIn(['learned', name, 'before'], true) as Node | undefined;
    doc.setIn(
      ['learned', name],
      doc.createNode(
        {
          frames,
          ...(boards > 0 ? { boards } : {}),
          ...(joints > 0 ? { joints } : {}),
          ...(date === null ? {} : { date }),
          before: kept === undefined ? before : (kept.toJSON() as unknown),
        },
        { flow: true },
      ),
    );
  }
  return doc.toString({ lineWidth: 0 });
}

/** Writes out an entry that only the shelf below has, as it stands there, with the source of its prices. */
function whole(doc: Document, base: Document, [section = '', key = '']: readonly string[], shelf: Shelf): void {
  if (doc.hasIn([section, key])) return;
  const entry = base.getIn([section, key], true);
  if (entry === undefined) throw new RangeError(`neither shelf has ${key}`);
  const copy = (entry as Node).clone() as Node;
  if (isMap(copy)) copy.flow = false;
  doc.setIn([section, key], copy);
  const field = section === 'lumber' ? 'price' : 'price-per-m';
  const prices = shelf.sources[`${section}.${key}.${field}`];
  if (prices !== undefined) source(doc, [section, key], field, prices);
}

/** Names the studio as the source of the field: `sources: { spread: measured }`. */
function credit(doc: Document, place: readonly string[]): void {
  const [entry, field] = place[0] === 'joints' ? [['joints'], 'give'] : [[place[0]!, place[1]!], place[2]!];
  source(doc, entry, field, 'measured');
}

function source(doc: Document, entry: readonly string[], field: string, key: string): void {
  const path = [...entry, 'sources'];
  if (!doc.hasIn(path)) doc.setIn(path, doc.createNode({}, { flow: true }));
  doc.setIn([...path, field], key);
}

/**
 * The same shelf as it stood before it learned anything: what promises are held against, and what learning starts from.
 */
export function beforeLearning(text: string): string {
  const doc = parseDocument(text, plainYaml);
  if (doc.errors.length > 0 || !isMap(doc.contents)) return text;
  const learned = doc.get('learned', true) as YAMLMap | undefined;
  if (!isMap(learned)) return text;
  for (const { key, value } of learned.items) {
    const name = isScalar(key) ? String(key.value) : '';
    const before = isMap(value) ? (value.toJSON() as { readonly before?: unknown }).before : undefined;
    const place = placeOf(name);
    if (before === undefined || !doc.hasIn(place)) continue;
    if (before === 'none') {
      doc.deleteIn(place);
      doc.deleteIn([...place.slice(0, 2), 'sources', place[2]]);
    } else doc.setIn(place, before);
  }
  return doc.toString({ lineWidth: 0 });
}

/** The place of a name in the `learned:` block: shelf keys may hold dots. */
function placeOf(name: string): readonly string[] {
  const spread =
    /^(lumber)\.(.+)\.(spread)\.(unsorted|plain|picked)\.(twist|bow|crook)$/.exec(name) ??
    /^(cloths)\.(.+)\.(pull)$/.exec(name) ??
    /^(joints)\.(give)\.(.+)$/.exec(name);
  return spread === null ? [] : spread.slice(1);
}

/** The changes as lines to paste into a shelf. */
export function learnedLines(changes: readonly ShelfChange[], date: string | null): string {
  const doc = parseDocument('shelf: 1\n', plainYaml);
  for (const change of changes) {
    const node = doc.createNode(change.value, typeof change.value === 'object' ? { flow: true } : {}) as Node;
    node.comment = remark(change, date);
    doc.setIn(change.place, node);
    credit(doc, change.place);
  }
  return doc.toString({ lineWidth: 0 }).trimEnd();
}
