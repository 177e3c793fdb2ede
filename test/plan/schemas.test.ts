import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { toJSONSchema } from 'zod/mini';
import { describe, expect, it } from 'vitest';
import { planInputSchema } from '../../src/plan/plan-schema.js';
import { shelfInputSchema } from '../../src/shelf/shelf-schema.js';
import { fileText } from './shelf-for-tests.js';

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
const plan = ajv.compile(toJSONSchema(planInputSchema, { io: 'input' }));
const shelf = ajv.compile(toJSONSchema(shelfInputSchema(), { io: 'input' }));

it('makes a part of the schema of plans when the first plan has it', async () => {
  // A copy of its own: other tests have asked for every part of the shared one.
  const copy = '../../src/plan/plan-schema.ts?untouched';
  const { planInputSchema: untouched } = (await import(copy)) as { readonly planInputSchema: typeof planInputSchema };
  expect(untouched).not.toBe(planInputSchema);
  const made = (): string[] => Object.entries(untouched.def.shape).flatMap(([key, part]) => {
    const { innerType } = part._zod.def as { readonly innerType?: { readonly _zod: { readonly def: { readonly getter?: unknown; readonly _cachedInner?: unknown } } } };
    return innerType?._zod.def.getter !== undefined && innerType._zod.def._cachedInner !== undefined ? [key] : [];
  });
  const smallest = parse(fileText('test/plans/smallest.yaml'));
  expect(untouched.safeParse(smallest).success).toBe(true);
  expect(made()).toEqual([]);
  expect(untouched.safeParse({ ...smallest, door: { width: '760 mm', height: '1980 mm' } }).success).toBe(true);
  expect(made()).toEqual(['door']);
});

describe('schemas as an independent validator sees them', () => {
  it.each(['test/plans/smallest.yaml', 'test/plans/everything.yaml', 'test/plans/inches.yaml'])('%s is a plan', (file) => {
    expect(plan(parse(fileText(file))), JSON.stringify(plan.errors)).toBe(true);
  });

  it.each(['rules/shelf.yaml', 'test/plans/practice/slim-bars.shelf.yaml'])('%s is a shelf', (file) => {
    expect(shelf(parse(fileText(file))), JSON.stringify(shelf.errors)).toBe(true);
  });

  it.each([
    ['an unknown key', (text: string) => `${text}colour: red\n`], ['a missing face', (text: string) => text.replace(/face.*\n/, '')], ['a length without unit', (text: string) => text.replace('500 mm', '500')],
    ['a length in kilograms', (text: string) => text.replace('500 mm', '500 kg')], ['another lay', (text: string) => text.replace('flat', 'upright')], ['another format', (text: string) => text.replace('plan: 1', 'plan: 2')],
  ])('%s is none', (_, change) => {
    expect(plan(parse(change(fileText('test/plans/smallest.yaml'))))).toBe(false);
  });

  it('describe every field for editors', () => {
    const bare: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties } = node as { readonly properties?: Record<string, { readonly description?: string; readonly anyOf?: readonly { readonly description?: string }[]; readonly type?: string; readonly $ref?: string }> };
      for (const [key, value] of Object.entries(properties ?? {})) {
        const described = value.description !== undefined || value.anyOf?.some(({ description }) => description !== undefined) || value.type === 'object' || value.type === 'array' || value.anyOf !== undefined || value.$ref !== undefined;
        if (!described) bare.push(`${path}.${key}`);
      }
      for (const [key, value] of Object.entries(node)) walk(value, `${path}/${key}`);
    };
    walk(toJSONSchema(planInputSchema, { io: 'input' }), 'plan');
    walk(toJSONSchema(shelfInputSchema(), { io: 'input' }), 'shelf');
    expect(bare).toEqual([]);
  });
});
