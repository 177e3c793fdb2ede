import { readFileSync } from 'node:fs';
import { once } from '../../src/base/once.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf } from '../../src/shelf/shelf.js';

const root = new URL('../../', import.meta.url);

/** A file of the project, by its path from the root. */
export const fileText = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** The shelf the project ships with, read once; throws when it cannot be read. */
export const shippedShelf = once((): Shelf => {
  const shelf = readShelf(fileText('rules/shelf.yaml'), 'rules/shelf.yaml');
  if (!shelf.ok) throw new Error(shelf.problems.map(({ line, found }) => `${line}: ${found}`).join('\n'));
  return shelf.value;
});
