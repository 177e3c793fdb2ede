import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder this tool lives in, wherever in it this code runs from. */
export const packageFolder = findPackage(dirname(fileURLToPath(import.meta.url)));

/** Folder with the data that ships with the tool. */
export const rulesFolder = join(packageFolder, 'rules');

function findPackage(folder: string): string {
  if (existsSync(join(folder, 'rules', 'baseline.yaml'))) return folder;
  const above = dirname(folder);
  if (above === folder) throw new Error('the rules that ship with the tool are missing');
  return findPackage(above);
}
