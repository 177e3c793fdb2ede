import { join } from 'node:path';
import { toJSONSchema } from 'zod/mini';
import { sheetInputSchema } from '../bench-sheet/sheet-schema.js';
import { patternOf } from '../base/schema-parts.js';
import { catalogue } from '../facts/catalogue.js';
import { pileInputSchema } from '../pile/pile-schema.js';
import { planInputSchema } from '../plan/plan-schema.js';
import { rulesetInputSchema } from '../rules/read/ruleset-schema.js';
import { shelfInputSchema } from '../shelf/shelf-schema.js';
import { shopInputSchema } from '../shop/shop-schema.js';
import { cautions } from '../findings/cautions.js';
import { exitCode } from './exit.js';
import { sourceKeys } from './load.js';
import { writeFolder } from './write-files.js';
import { schemaKinds, type SchemaKind } from './schema-kinds.js';
import { printJson, tell, warn } from './terminal.js';

const schemas = {
  plan: { schema: planInputSchema, title: 'Plan of a painting frame' },
  shelf: { schema: shelfInputSchema, title: 'Shelf of lumber, fastenings, cloth and the like' },
  ruleset: { schema: rulesetInputSchema, title: 'Ruleset that judges plans' },
  sheet: { schema: sheetInputSchema, title: 'Bench sheet: what was measured of one frame' },
  pile: { schema: pileInputSchema, title: 'Boards in hand' },
  shop: { schema: shopInputSchema, title: 'Workshop' },
} as const;

/** The JSON Schema of a kind of file, draft 2020-12, as text. What one part of a file demands of another is checked by the tool alone. */
export function schemaText(kind: SchemaKind): string {
  const { schema, title } = schemas[kind];
  const { $schema, ...rest } = toJSONSchema(schema, { io: 'input', target: 'draft-2020-12', reused: 'ref' });
  nameFacts(rest);
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}

/** What a text may be, by how its description begins: editors offer these, and refuse what is not among them. */
const known: readonly (readonly [description: string, keywords: () => object])[] = [
  ['Path of a fact', () => ({ enum: catalogue.map(({ path }) => path) })],
  ['Key of rules/sources.yaml', () => ({ enum: [...sourceKeys(), 'practice', 'proposal', 'measured', 'physics'] })],
  ['Key in rules/sources.yaml', () => ({ enum: [...sourceKeys(), 'practice', 'proposal', 'measured', 'physics'] })],
  ['Ids of shop-safety cautions', () => ({ items: { type: 'string', enum: cautions.map(({ id }) => id) } })],
  ['A number, with the unit of its fact', () => ({ anyOf: [{ type: 'number' }, { type: 'string', pattern: patternOf('length', 'force', 'moment', 'pull', 'mass', 'angle', 'frequency', 'percent', 'time', 'volume', 'stress', 'temperature', 'fraction') }] })],
];

/** Puts what is known of facts, sources, cautions and amounts into the schema. */
function nameFacts(node: unknown): void {
  if (typeof node !== 'object' || node === null) return;
  const { description } = node as { readonly description?: unknown };
  const keywords = typeof description === 'string' ? known.find(([begins]) => description.startsWith(begins))?.[1] : undefined;
  if (keywords !== undefined) Object.assign(node, keywords());
  Object.values(node).forEach(nameFacts);
}

/** Prints a schema, or writes one or all of them. Gives the exit code. */
export function runSchema(kind: SchemaKind | undefined, out: string | undefined): number {
  if (out === undefined && kind === undefined) {
    warn(`Name what to print: ${schemaKinds.join(', ')}. Or give --out FOLDER to write all of them.`);
    return exitCode.error;
  }
  const kinds = kind === undefined ? schemaKinds : [kind];
  if (out === undefined) printJson(kinds.map(schemaText).join(''));
  else {
    writeFolder(out, kinds.map((one) => ({ name: `${one}.schema.json`, text: schemaText(one) })));
    for (const one of kinds) tell(join(out, `${one}.schema.json`));
  }
  return exitCode.fine;
}
