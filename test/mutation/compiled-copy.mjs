import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { transformSync } from 'esbuild';
import { withCounters } from './counters.mjs';

/**
 * The sources compiled file by file into a folder outside the project, where a fault may stand; Node loads them from
 * there far faster than the test runner would compile them.
 */
export function compiledCopy(root) {
  const copy = mkdtempSync(join(tmpdir(), 'faults-'));
  for (const name of ['node_modules', 'rules', 'test', 'dist', 'reports'])
    symlinkSync(join(root, name), join(copy, name));
  for (const name of ['package.json', 'tsconfig.json', 'README.md']) cpSync(join(root, name), join(copy, name));
  const placeOf = (name) => join(copy, 'src', name.replace(/\.ts$/, '.js'));
  const write = (name, text) =>
    writeFileSync(placeOf(name), transformSync(text, { loader: 'ts', format: 'esm', target: 'es2023' }).code);
  const inSource = (file) => file.slice(root.length + 5);
  for (const name of readdirSync(join(root, 'src'), { recursive: true })) {
    if (!name.endsWith('.ts') || name.startsWith('page/')) continue;
    mkdirSync(dirname(placeOf(name)), { recursive: true });
    write(name, readFileSync(join(root, 'src', name), 'utf8'));
  }
  return {
    folder: copy,
    /** Puts a fault in, or takes it out again (`null`). */
    put(fault, file) {
      const source = readFileSync(file, 'utf8');
      write(
        inSource(file),
        fault === null ? source : source.slice(0, fault.start) + fault.text + source.slice(fault.end),
      );
    },
    /** Lets every place where a fault may stand say that it was reached, by its number in the list; or no longer. */
    count(faults, counting) {
      for (const file of new Set(faults.map((fault) => fault.file))) {
        const source = readFileSync(file, 'utf8');
        write(
          inSource(file),
          counting
            ? withCounters(
                source,
                faults.flatMap((fault, n) => (fault.file === file ? [{ ...fault, n }] : [])),
              )
            : source,
        );
      }
    },
    remove: () => rmSync(copy, { recursive: true }),
  };
}
