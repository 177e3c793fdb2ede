import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { mutationsOf } from './mutations.mjs';

const oneLine = (text) => text.replace(/\s+/g, ' ');
const lineOf = (source, at) => source.slice(0, at).split('\n').length;

/**
 * Every fault of a folder under `src/`: its file, what stood there, what stands there instead, and a `key` that stays
 * the same while other lines of the file change.
 */
export function faultsIn(root, folder) {
  const files = readdirSync(join(root, 'src', folder), { recursive: true })
    .filter((name) => /\.tsx?$/.test(name))
    .sort();
  return files.flatMap((name) => {
    const file = join(root, 'src', folder, name);
    const source = readFileSync(file, 'utf8');
    const seen = new Map();
    return mutationsOf(source).map((one) => {
      const was = oneLine(source.slice(one.start, one.end));
      const words = `${relative(root, file)} ${one.kind}: \`${was}\` → \`${oneLine(one.text)}\``;
      const nth = (seen.get(words) ?? 0) + 1;
      seen.set(words, nth);
      return {
        ...one,
        file,
        name: relative(root, file),
        line: lineOf(source, one.start),
        was,
        becomes: oneLine(one.text),
        key: nth === 1 ? words : `${words} (${nth})`,
      };
    });
  });
}

/**
 * So many faults, drawn by a seed: those whose digest with the seed is least, so that a change elsewhere leaves the
 * draw nearly the same.
 */
export function drawn(faults, count, seed) {
  const digest = ({ key }) => createHash('sha256').update(`${seed} ${key}`).digest('hex');
  return faults
    .map((fault) => ({ fault, rank: digest(fault) }))
    .sort((p, q) => (p.rank < q.rank ? -1 : 1))
    .slice(0, count)
    .map(({ fault }) => fault);
}

/** A fault in a line for people. */
export const said = ({ name, line, kind, was, becomes }) => `${name}:${line} ${kind}: \`${was}\` → \`${becomes}\``;
