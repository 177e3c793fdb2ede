import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The files of an invented evening class that cannot be read, each in its own way, and what the row of each must say. */
export const unreadable: readonly (readonly [file: string, says: RegExp])[] = [
  ['anselm.yaml', /empty file/u],
  ['bodil.txt', /does not end in \.yaml/u],
  ['cyra.yaml', /folder named like a plan/u],
  ['dorte.yaml', /UTF-8/u],
  ['emre.yaml', /still open/u],
  ['frode.yaml', /leads nowhere, or in a circle/u],
  ['gitte.yaml', /named pipe/u],
];

/** Two files beside the plans that are none. */
export const beside: readonly string[] = ['hall-sheet.yaml', 'notes.md'];

/** Puts the class into a folder: 24 plans of the project's own, seven files that cannot be read, a bench sheet and notes. */
export function makeRoom(folder: string): void {
  const plans = join(folder, 'plans');
  cpSync(join(root, 'test/class/room/plans'), plans, { recursive: true });
  cpSync(join(root, 'test/class/room/ruleset.yaml'), join(folder, 'ruleset.yaml'));
  const plan = 'plan: 1\nname: Lost\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n';
  writeFileSync(join(plans, 'anselm.yaml'), '');
  writeFileSync(join(plans, 'bodil.txt'), plan);
  mkdirSync(join(plans, 'cyra.yaml'));
  writeFileSync(join(plans, 'dorte.yaml'), Buffer.from(plan.replace('Lost', 'Dørtes krukke'), 'latin1'));
  writeFileSync(join(plans, 'emre.yaml'), plan.replace('400 mm }', '400 mm'));
  symlinkSync('frode.yaml', join(plans, 'frode.yaml'));
  execFileSync('mkfifo', [join(plans, 'gitte.yaml')]);
  writeFileSync(join(plans, 'hall-sheet.yaml'), 'sheet: 1\nplan: Kerb\n');
  writeFileSync(join(plans, 'notes.md'), 'Bring clamps.\n');
}
