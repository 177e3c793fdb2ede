import { globalRegistry, toJSONSchema, type core } from 'zod/mini';
import { lazily } from './base/lazily.js';
import { patternOf } from './base/schema-parts.js';
import { catalogue } from './facts/catalogue.js';
import { cautions } from './findings/cautions.js';
import { pileInputSchema } from './pile/pile-schema.js';
import { planInputSchema } from './plan/plan-schema.js';
import { rulesetInputSchema } from './rules/read/ruleset-schema.js';
import { shelfInputSchema } from './shelf/shelf-schema.js';

const schemas = {
  plan: { schema: () => planInputSchema, title: 'Plan of a painting frame' },
  shelf: { schema: shelfInputSchema, title: 'Shelf of lumber, fastenings, cloth and the like' },
  ruleset: { schema: rulesetInputSchema, title: 'Ruleset that judges plans' },
  pile: { schema: () => pileInputSchema, title: 'Boards in hand' },
} as const;

/** The kinds of file that can be changed as text on a screen. */
export type EditedKind = keyof typeof schemas;

/**
 * The JSON Schema of a kind of file, draft 2020-12. What one part of a file demands of another is checked by its reader
 * alone. `sources` are keys of the list of sources.
 */
export const schemaOf = (kind: EditedKind, sources: readonly string[]): Readonly<Record<string, unknown>> =>
  jsonSchema(schemas[kind].schema(), schemas[kind].title, sources);

/** A schema as JSON Schema, with what is known of facts, sources, cautions and amounts. */
export function jsonSchema(
  schema: core.$ZodType,
  title: string,
  sources: readonly string[],
): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = toJSONSchema(schema, { io: 'input', target: 'draft-2020-12', reused: 'ref' });
  nameFacts(rest, sources);
  return { $schema, title, ...rest };
}

const sourceWords = (sources: readonly string[]): object => ({
  enum: [...sources, 'practice', 'proposal', 'measured', 'physics'],
});

/** What a text may be, by how its description begins: editors offer these, and refuse what is not among them. */
const known: readonly (readonly [description: string, keywords: (sources: readonly string[]) => object])[] = [
  ['Path of a fact', () => ({ enum: catalogue.map(({ path }) => path) })],
  ['Key of rules/sources.yaml', sourceWords],
  ['Key in rules/sources.yaml', sourceWords],
  ['Ids of shop-safety cautions', () => ({ items: { type: 'string', enum: cautions.map(({ id }) => id) } })],
  [
    'A number, with the unit of its fact',
    () => ({
      anyOf: [
        { type: 'number' },
        {
          type: 'string',
          pattern: patternOf(
            'length',
            'force',
            'moment',
            'pull',
            'mass',
            'angle',
            'twist',
            'frequency',
            'percent',
            'time',
            'volume',
            'stress',
            'temperature',
            'fraction',
          ),
        },
      ],
    }),
  ],
];

const keywordsFor = (description: unknown, sources: readonly string[]): object | undefined =>
  typeof description === 'string' ? known.find(([begins]) => description.startsWith(begins))?.[1](sources) : undefined;

/** Puts what is known into a JSON Schema. */
function nameFacts(node: unknown, sources: readonly string[]): void {
  if (typeof node !== 'object' || node === null) return;
  Object.assign(node, keywordsFor((node as { readonly description?: unknown }).description, sources));
  Object.values(node).forEach((inner) => nameFacts(inner, sources));
}

/**
 * What may stand at a place of a file, in the words of JSON Schema; parts further in are worked out when they are asked
 * for.
 */
export interface FileShape {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly FileShape[];
  readonly properties?: Readonly<Record<string, FileShape>>;
  readonly additionalProperties?: FileShape | boolean;
  readonly required?: readonly string[];
  readonly items?: FileShape;
  readonly description?: string;
  readonly examples?: readonly string[];
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

/**
 * What a kind of file may say, for controls and completion: what its JSON Schema says, without the writer of JSON
 * Schema.
 */
export const fileShape = (kind: EditedKind, sources: readonly string[]): FileShape =>
  shapeOf(schemas[kind].schema(), sources);

function shapeOf(given: core.$ZodType, sources: readonly string[]): FileShape {
  const schema = given as core.$ZodTypes;
  const own = globalRegistry.get(schema) ?? {};
  const shape = bareShape(schema, (inner) => shapeOf(inner, sources));
  // What is known takes the place of what would be worked out.
  return Object.defineProperties(
    shape,
    Object.getOwnPropertyDescriptors({ ...own, ...keywordsFor((own as FileShape).description, sources) }),
  );
}

function bareShape(schema: core.$ZodTypes, inside: (inner: core.$ZodType) => FileShape): FileShape {
  const { def } = schema._zod;
  switch (def.type) {
    case 'optional':
      return inside(def.innerType);
    case 'object': {
      const entries = Object.entries(def.shape);
      return lazily(
        { properties: () => Object.fromEntries(entries.map(([key, one]) => [key, inside(one)])) },
        {
          type: 'object',
          required: entries.filter(([, one]) => one._zod.optin !== 'optional').map(([key]) => key),
        },
      );
    }
    case 'record':
      return lazily({ additionalProperties: () => inside(def.valueType) }, { type: 'object' });
    case 'array':
      return lazily({ items: () => inside(def.element) }, { type: 'array' });
    case 'union':
      return lazily({ anyOf: () => def.options.map(inside) });
    case 'lazy':
      return inside(def.getter());
    case 'enum':
      return { type: 'string', enum: Object.values(def.entries).map(String) };
    case 'literal':
      return { type: typeof def.values[0], const: def.values[0] };
    case 'number':
      return {
        type: 'format' in def ? 'integer' : 'number',
        ...limitOf(def, 'greater_than', 'minimum'),
        ...limitOf(def, 'less_than', 'maximum'),
      };
    default:
      return { type: def.type };
  }
}

/** A limit of a number, called as JSON Schema calls it; nothing where there is none. */
function limitOf({ checks }: core.$ZodTypeDef, check: string, name: 'minimum' | 'maximum'): FileShape {
  const limit = (checks ?? [])
    .map(({ _zod }) => _zod.def as { readonly check: string; readonly value?: number })
    .find((one) => one.check === check)?.value;
  return limit === undefined ? {} : { [name]: limit };
}
