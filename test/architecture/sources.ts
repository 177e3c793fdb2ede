import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageFolder } from '../../src/cli/files.js';

const src = join(packageFolder, 'src');

/** Every file of the project's code, as its path under `src`. */
export const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

/** What stands in each. */
export const texts: ReadonlyMap<string, string> = new Map(files.map((file) => [file, readFileSync(join(src, file), 'utf8')]));

/** One import of one file, of a type or a value, at once or when it runs. */
export interface Import {
  readonly file: string;
  /** As it is written. */
  readonly target: string;
  /** The file under `src` that is meant; null for packages. */
  readonly to: string | null;
}

const fileSet = new Set(files);

/** Every import. */
export const imports: readonly Import[] = files.flatMap((file) =>
  [...(texts.get(file) as string).matchAll(/(?:from|import\()\s*'([^']+)'/g)].map(([, target]) => ({ file, target: target as string, to: meant(file, target as string) })),
);

function meant(file: string, target: string): string | null {
  if (!target.startsWith('.')) return null;
  const stem = join(file, '..', target).replace(/\.js$/, '');
  return [`${stem}.ts`, `${stem}.tsx`].find((name) => fileSet.has(name)) ?? null;
}

/** The top-level folder a file lies in; a file at the top stands for itself, without its ending. */
export const roomOf = (file: string): string => (file.includes('/') ? (file.split('/')[0] as string) : file.replace(/\.tsx?$/, ''));
