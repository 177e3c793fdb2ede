import { toJSONSchema, type core } from 'zod/mini';
import { patternOf } from './base/schema-parts.js';
import { catalogue } from './facts/catalogue.js';
import { cautions } from './findings/cautions.js';
import { pileInputSchema } from './pile/pile-schema.js';
import { planInputSchema } from './plan/plan-schema.js';
import { rulesetInputSchema } from './rules/read/ruleset-schema.js';
import { shelfInputSchema } from './shelf/shelf-schema.js';

const schemas = {
  plan: { schema: planInputSchema, title: 'Plan of a painting frame' },
  shelf: { schema: shelfInputSchema, title: 'Shelf of lumber, fastenings, cloth and the like' },
  ruleset: { schema: rulesetInputSchema, title: 'Ruleset that judges plans' },
  pile: { schema: pileInputSchema, title: 'Boards in hand' },
} as const;

/** The JSON Schema of a kind of file, draft 2020-12. What one part of a file demands of another is checked by its reader alone. `sources` are keys of the list of sources. */
export const schemaOf = (kind: keyof typeof schemas, sources: readonly string[]): Readonly<Record<string, unknown>> => jsonSchema(schemas[kind].schema, schemas[kind].title, sources);

/** A schema as JSON Schema, with what is known of facts, sources, cautions and amounts. */
export function jsonSchema(schema: core.$ZodType, title: string, sources: readonly string[]): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = toJSONSchema(schema, { io: 'input', target: 'draft-2020-12', reused: 'ref' });
  nameFacts(rest, sources);
  return { $schema, title, ...rest };
}

const sourceWords = (sources: readonly string[]): object => ({ enum: [...sources, 'practice', 'proposal', 'measured', 'physics'] });

/** What a text may be, by how its description begins: editors offer these, and refuse what is not among them. */
const known: readonly (readonly [description: string, keywords: (sources: readonly string[]) => object])[] = [
  ['Path of a fact', () => ({ enum: catalogue.map(({ path }) => path) })],
  ['Key of rules/sources.yaml', sourceWords],
  ['Key in rules/sources.yaml', sourceWords],
  ['Ids of shop-safety cautions', () => ({ items: { type: 'string', enum: cautions.map(({ id }) => id) } })],
  ['A number, with the unit of its fact', () => ({ anyOf: [{ type: 'number' }, { type: 'string', pattern: patternOf('length', 'force', 'moment', 'pull', 'mass', 'angle', 'twist', 'frequency', 'percent', 'time', 'volume', 'stress', 'temperature', 'fraction') }] })],
];

/** Puts what is known into the schema. */
function nameFacts(node: unknown, sources: readonly string[]): void {
  if (typeof node !== 'object' || node === null) return;
  const { description } = node as { readonly description?: unknown };
  const keywords = typeof description === 'string' ? known.find(([begins]) => description.startsWith(begins))?.[1] : undefined;
  if (keywords !== undefined) Object.assign(node, keywords(sources));
  Object.values(node).forEach((inner) => nameFacts(inner, sources));
}
