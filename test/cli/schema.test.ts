import { Ajv2020 } from 'ajv/dist/2020.js';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { schemaKinds, type SchemaKind } from '../../src/cli/schema-kinds.js';
import { schemaText } from '../../src/cli/schema-run.js';
import { readPile } from '../../src/pile/read-pile.js';
import { readShop } from '../../src/shop/read-shop.js';
import { readSheet } from '../../src/bench-sheet/read-sheet.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { fileText, shippedShelf } from '../plan/shelf-for-tests.js';
import { brokenPlans } from './broken-plans.js';
import { folder, root } from './command.js';

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
const valid = Object.fromEntries(schemaKinds.map((kind) => [kind, ajv.compile(JSON.parse(schemaText(kind)) as object)])) as Record<SchemaKind, ReturnType<typeof ajv.compile>>;

/** Every YAML file under a folder of the project, by its path from the root. */
const yamlUnder = (path: string): readonly string[] => readdirSync(join(root, path), { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.yaml')).map((file) => join(path, file)).sort();
/** What kind of file a text says it is. */
const kindOf = (text: string): SchemaKind | null => (schemaKinds.find((kind) => new RegExp(`^${kind}: 1\\b`, 'm').test(text)) ?? null);

const examples = ['reports', 'rules', 'test/plans'].flatMap(yamlUnder).map((file) => ({ file, kind: kindOf(fileText(file)) })).filter(({ kind }) => kind !== null);

describe('the schemas, as an independent validator reads them', () => {
  it('there are examples of every kind to try', () => {
    expect(new Set(examples.map(({ kind }) => kind))).toEqual(new Set(['plan', 'shelf', 'ruleset', 'pile', 'sheet', 'shop']));
    expect(examples.filter(({ kind }) => kind === 'plan').length).toBeGreaterThan(20);
  });

  it.each(examples)('$file is a $kind', ({ file, kind }) => {
    const validate = valid[kind as 'plan'];
    expect(validate(parse(fileText(file))), JSON.stringify(validate.errors)).toBe(true);
  });

  it('a whole bench sheet is a sheet', () => {
    const whole = "sheet: 1\nplan: Jetty\nframe: 2\nstudent: Noor\nwhen: finished\ndiagonals: [ 1110 mm, 43-3/4 in ]\nbow: { top: 1 mm }\npush: { weight: 500 g, sag: 7 mm }\nboards: [ { for: top, mark: A, twist: 0.4 deg/m, bow: 2 mm, over: 2400 mm } ]\ntest-joints: [ { way: out, weight: 2 kg, arm: 300 mm, moves: 3 mm } ]\n";
    expect(valid.sheet(parse(whole)), JSON.stringify(valid.sheet.errors)).toBe(true);
  });

  it.each([['a reading without a unit', 'sheet: 1\ncorner-lift: 4\n'], ['a frame that is no number', 'sheet: 1\nframe: second\n'], ['an unknown way of loading a corner', 'sheet: 1\ntest-joints: [ { way: up, weight: 2 kg, arm: 300 mm, moves: 3 mm } ]\n'], ['an unknown key', 'sheet: 1\nlift: 4 mm\n']])('a sheet with %s is refused', (_, text) => {
    expect(valid.sheet(parse(text))).toBe(false);
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

  it.each([
    ['a limit in a unit of no fact', 'ruleset: 1\nname: X\nlimits: { l: { value: 3 parsecs, source: practice } }\n'],
    ['an unknown source of a limit', 'ruleset: 1\nname: X\nlimits: { l: { value: 3 mm, source: hearsay } }\n'],
    ['an unknown caution', 'ruleset: 1\nname: X\nrules: [ { id: a, each: frame, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: stop, say: x, do: [ y ], cautions: [ ghosts ], source: practice } ]\n'],
    ['an unknown fact in a group in a group', 'ruleset: 1\nname: X\nrules: [ { id: a, each: frame, require: { any: [ { all: [ { fact: frame.charm, at-most: 5 kg } ] } ] }, otherwise: stop, say: x, do: [ y ], source: practice } ]\n'],
  ])('a ruleset with %s is refused by the schema', (_, text) => {
    expect(valid.ruleset(parse(text))).toBe(false);
  });

  it('amounts in every unit the reader takes pass', () => {
    for (const value of ['3 mm', '1-3/8 in', '1/400', '10 %', '5 kg', '200 N/m', '2 ft 6 in', '15 deg', '-3 mm', '0.5', '30 mrad'])
      expect([value, valid.ruleset(parse(`ruleset: 1\nname: X\nlimits: { l: { value: ${value}, source: practice } }\n`))]).toEqual([value, true]);
  });

  it.each([['no size', 'shelf: 1\nlumber: { a: { E: 9000 MPa } }\n'], ['a bare number for a size', 'shelf: 1\nlumber: { a: { size: 19 } }\n'], ['an unknown part', 'shelf: 1\nbrushes: {}\n']])('a shelf with %s is refused', (_, text) => {
    expect(valid.shelf(parse(text))).toBe(false);
  });

  it('offer the paths of facts', () => {
    expect(schemaText('ruleset')).toContain('"frame.twist_reserve"');
  });
});

describe('the command', () => {
  it('prints one, writes all, and they are those that the project ships', () => {
    const here = folder();
    expect(here.run('schema', '--out', 'schema').code).toBe(0);
    expect(here.files()).toEqual(schemaKinds.map((kind) => `schema/${kind}.schema.json`).sort());
    for (const kind of schemaKinds) {
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
  const files = yamlUnder('reports');

  it.each(files)('stands at the top of %s, leads to the schema, and does not break the reader', (file) => {
    const text = fileText(file);
    const [, schema = ''] = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text) ?? [];
    const kind = kindOf(text);
    expect(join(file, '..', schema)).toBe(`rules/schema/${kind}.schema.json`);
    const readers = { plan: readPlanWith, pile: readPile, sheet: readSheet, shelf: readShelf, shop: readShop } as const;
    expect(readers[kind as 'plan'](text, file, shippedShelf()).ok).toBe(true);
  });
});
