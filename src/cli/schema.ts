import { Argument, type Command } from 'commander';
import { under } from './help-text.js';
import { schemaKinds, type SchemaKind } from './schema-kinds.js';

const help = `
Examples:
  sightdown schema plan > plan.schema.json
  sightdown schema --out schema

Editors with a YAML language server complete and check while you type when the first line of a file names its schema:
  # yaml-language-server: $schema=schema/plan.schema.json`;

/** Adds `sightdown schema [plan|shelf|ruleset|sheet|pile|shop]`. */
export function addSchema(program: Command): void {
  program
    .command('schema')
    .description(
      'Print the JSON Schema (draft 2020-12) of plans, shelves, rulesets, bench sheets, piles and workshops, so that editors complete and check while typing.',
    )
    .addArgument(new Argument('[kind]', 'which one to print').choices(schemaKinds))
    .option('--out <folder>', 'write all of them as files, or the one that is named')
    .addHelpText('after', under(help))
    .action(async (kind: SchemaKind | undefined, options: { readonly out?: string }) => {
      process.exitCode = (await import('./schema-run.js')).runSchema(kind, options.out);
    });
}
