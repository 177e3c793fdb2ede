import { join } from 'node:path';
import { sheetInputSchema } from '../bench-sheet/sheet-schema.js';
import { jsonSchema, schemaOf } from '../schemas.js';
import { shopInputSchema } from '../shop/shop-schema.js';
import { exitCode } from './exit.js';
import { sourceKeys } from './load.js';
import { writeFolder } from './write-files.js';
import { schemaKinds, type SchemaKind } from './schema-kinds.js';
import { printJson, tell, warn } from './terminal.js';

/** The JSON Schema of a kind of file as text. */
export function schemaText(kind: SchemaKind): string {
  const sources = [...sourceKeys()];
  const schema =
    kind === 'sheet'
      ? jsonSchema(sheetInputSchema, 'Bench sheet: what was measured of one frame', sources)
      : kind === 'shop'
        ? jsonSchema(shopInputSchema, 'Workshop', sources)
        : schemaOf(kind, sources);
  return `${JSON.stringify(schema, null, 2)}\n`;
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
    writeFolder(
      out,
      kinds.map((one) => ({ name: `${one}.schema.json`, text: schemaText(one) })),
    );
    for (const one of kinds) tell(join(out, `${one}.schema.json`));
  }
  return exitCode.fine;
}
