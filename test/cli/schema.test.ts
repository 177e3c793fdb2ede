import { Ajv2020 } from 'ajv/dist/2020.js';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { schemaText } from '../../src/cli/schema-run.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { fileText, shippedShelf } from '../plan/shelf-for-tests.js';
import { brokenPlans } from './broken-plans.js';
import { folder, root } from './command.js';

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
const valid = { plan: ajv.compile(JSON.parse(schemaText('plan')) as object), shelf: ajv.compile(JSON.parse(schemaText('shelf')) as object), ruleset: ajv.compile(JSON.parse(schemaText('ruleset')) as object) };

/** Every YAML file under a folder of the project, by its path from the root. */
const yamlUnder = (path: string): readonly string[] => readdirSync(join(root, path), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.yaml')).map((file) => join(path, file)).sort();
/** What kind of file a text says it is. */
const kindOf = (text: string): 'plan' | 'shelf' | 'ruleset' | null => (/^(plan|shelf|ruleset): 1\b/m.exec(text)?.[1] ?? null) as 'plan' | 'shelf' | 'ruleset' | null;

const examples = ['reports', 'rules', 'test/plans'].flatMap(yamlUnder).map((file) => ({ file, kind: kindOf(fileText(file)) })).filter(({ kind }) => kind !== null);

describe('the schemas, as an independent validator reads them', () => {
  it('there are examples of every kind to try', () => {
    expect(new Set(examples.map(({ kind }) => kind))).toEqual(new Set(['plan', 'shelf', 'ruleset']));
    expect(examples.filter(({ kind }) => kind === 'plan').length).toBeGreaterThan(20);
  });

  it.each(examples)('$file is a $kind', ({ file, kind }) => {
    const validate = valid[kind as 'plan'];
    expect(validate(parse(fileText(file))), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each(brokenPlans.filter(({ shape }) => shape))('a plan with $what is refused', ({ text }) => {
    expect(valid.plan(parse(String(text)))).toBe(false);
  });

  it.each([
    ['a later format', 'ruleset: 2\nname: X\n'],
    ['an unknown fact', 'ruleset: 1\nname: X\nrules:\n  - { id: a/b, each: frame, require: { fact: frame.wait_kg, at-most: 3 }, otherwise: caution, say: x, do: [ y ], source: practice }\n'],
    ['an unknown key', 'ruleset: 1\nname: X\ncolour: red\n'],
    ['a limit without a source', 'ruleset: 1\nname: X\nlimits: { a: { value: 3 mm } }\n'],
    ['a verdict that rules cannot give', 'ruleset: 1\nname: X\nrules:\n  - { id: a/b, each: frame, require: { fact: frame.weight_kg, at-most: 3 }, otherwise: panic, say: x, do: [ y ], source: practice }\n'],
  ])('a ruleset with %s is refused', (_, text) => {
    expect(valid.ruleset(parse(text))).toBe(false);
  });

  it.each([['no size', 'shelf: 1\nlumber: { a: { E: 9000 MPa } }\n'], ['a bare number for a size', 'shelf: 1\nlumber: { a: { size: 19 } }\n'], ['an unknown part', 'shelf: 1\nbrushes: {}\n']])('a shelf with %s is refused', (_, text) => {
    expect(valid.shelf(parse(text))).toBe(false);
  });

  it('offer the paths of facts', () => {
    expect(schemaText('ruleset')).toContain('"frame.twist_reserve"');
  });
});

describe('the command', () => {
  it('prints one, writes three, and they are those that the project ships', () => {
    const here = folder();
    expect(here.run('schema', '--out', 'schema').code).toBe(0);
    expect(here.files()).toEqual(['schema/plan.schema.json', 'schema/ruleset.schema.json', 'schema/shelf.schema.json']);
    for (const kind of ['plan', 'shelf', 'ruleset'] as const) {
      const printed = here.run('schema', kind).out;
      expect((JSON.parse(printed) as { readonly $schema: string }).$schema).toBe('https://json-schema.org/draft/2020-12/schema');
      expect(printed).toBe(fileText(`rules/schema/${kind}.schema.json`));
    }
  });

  it('asks which one when none is named: exit 1', () => {
    expect(folder().run('schema')).toMatchObject({ code: 1, out: '' });
    expect(folder().run('schema', 'painting').code).toBe(1);
  });
});

describe('the comment that points an editor to the schema', () => {
  const plans = yamlUnder('reports');

  it.each(plans)('stands at the top of %s, leads to the schema, and does not break the reader', (file) => {
    const text = fileText(file);
    const [, schema = ''] = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text) ?? [];
    expect(join(file, '..', schema)).toBe('rules/schema/plan.schema.json');
    expect(readPlanWith(text, file, shippedShelf()).ok).toBe(true);
  });
});
