import { isMap, parseDocument, type Document } from 'yaml';
import { plainYaml } from '../base/plain-yaml.js';
import { keepSpacing } from '../base/yaml-edit.js';
import { formatLength } from '../base/units-format.js';
import type { Plan } from '../plan/plan.js';
import type { Edit } from './edit.js';
import { share } from './edit-words.js';

/**
 * The text of a plan file with an edit made in it: comments and whatever the edit does not touch stay. `plan` is the
 * changed plan. Null when the file is built in a way that cannot be edited.
 */
export function writeEdit(text: string, edit: Edit, plan: Plan): string | null {
  const doc = parseDocument(text, { ...plainYaml, keepSourceTokens: true });
  if (doc.errors.length > 0 || !isMap(doc.contents)) return null;
  try {
    changeDocument(doc, edit, plan);
  } catch {
    return null;
  }
  return keepSpacing(text, doc.toString({ lineWidth: 0, flowCollectionPadding: true }));
}

function changeDocument(doc: Document, edit: Edit, plan: Plan): void {
  const bars = { ...edit.bars };
  if (bars.plies === 1)
    for (const key of ['stack', 'bond', 'pairing'] as const) {
      delete bars[key];
      doc.deleteIn(['bars', key]);
    }
  for (const [key, value] of Object.entries(bars)) doc.setIn(['bars', key], value);
  if (edit.crossbars !== undefined) setCrossbars(doc, edit.crossbars);
  if (edit.setback_mm !== undefined)
    for (const i of plan.crossbars.keys())
      doc.setIn(['crossbars', i, 'setback'], formatLength(edit.setback_mm, plan.units));
  if (edit.brace === 'none') forget(doc, ['corners', 'brace']);
  if (edit.brace === 'timber') put(doc, ['corners', 'brace'], { kind: 'timber' });
  setScrews(doc, edit, plan);
  if (edit.glue !== undefined) put(doc, ['corners', 'glue'], edit.glue);
  if (edit.nails === 'none') put(doc, ['corners', 'nails'], 'none');
  if (edit.nails === 'fitting') forget(doc, ['corners', 'nails']);
  if (edit.cloth !== undefined) {
    put(doc, ['cloth', 'use'], edit.cloth);
    forget(doc, ['cloth', 'roll']);
  }
  if (edit.chosen !== undefined) put(doc, ['lumber', 'chosen'], edit.chosen);
  if (edit.moisture_pct !== undefined) put(doc, ['lumber', 'moisture'], `${edit.moisture_pct} %`);
  setHanging(doc, edit, plan);
}

function setCrossbars(doc: Document, crossbars: NonNullable<Edit['crossbars']>): void {
  if (crossbars.length === 0) {
    doc.deleteIn(['crossbars']);
    return;
  }
  const list = doc.createNode(crossbars.map(({ runs, at, lay }) => ({ runs, at: share(at), lay })));
  for (const item of list.items) if (isMap(item)) item.flow = true;
  doc.setIn(['crossbars'], list);
}

/** A block that the plan did not have is written on one line, as people do. */
function put(doc: Document, [block, key]: readonly [string, string], value: unknown): void {
  if (isMap(doc.get(block))) {
    doc.setIn([block, key], doc.createNode(value, { flow: true }));
    return;
  }
  doc.set(block, doc.createNode({ [key]: value }, { flow: true }));
}

/** A block that is left empty goes as well. */
function forget(doc: Document, [block, key]: readonly [string, string]): void {
  doc.deleteIn([block, key]);
  const left = doc.get(block);
  if (isMap(left) && left.items.length === 0) doc.delete(block);
}

function setScrews(doc: Document, edit: Edit, plan: Plan): void {
  if (!isMap(doc.get('ply-screws'))) return;
  if (plan.ply_screws === null) doc.delete('ply-screws');
  else if (edit.screw !== undefined)
    for (const key of ['use', 'pilot']) if (isMap(doc.get('ply-screws'))) forget(doc, ['ply-screws', key]);
}

function setHanging(doc: Document, { hang }: Edit, plan: Plan): void {
  if (hang === undefined) return;
  const { by, slack_mm, from, hooks } = hang;
  if (by !== undefined) put(doc, ['hang', 'by'], by);
  if (plan.hang.by !== 'wire') forget(doc, ['hang', 'slack']);
  else if (slack_mm !== undefined) put(doc, ['hang', 'slack'], formatLength(slack_mm, plan.units));
  if (from !== undefined) put(doc, ['hang', 'from'], from);
  if (hooks !== undefined) put(doc, ['hang', 'hooks'], hooks);
}
