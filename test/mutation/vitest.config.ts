import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** One fault: a stretch of a source file and what stands there instead. Handed over in the environment; no file on the disk is changed. */
interface Fault {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

const fault = JSON.parse(process.env['FAULT'] ?? 'null') as Fault | null;

/** Runs the tests with one fault in the sources. Left out: tests that start the built command, which has no fault in it, stored outputs, the page in a browser, long runs, and those of whole reports and searches, which take minutes for each fault. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  plugins: [
    {
      name: 'fault',
      enforce: 'pre',
      load(id) {
        if (fault === null || id.split('?')[0] !== fault.file) return null;
        const source = readFileSync(fault.file, 'utf8');
        return source.slice(0, fault.start) + fault.text + source.slice(fault.end);
      },
    },
  ],
  test: {
    include: ['test/**/*.test.ts'],
    exclude: [
      ...['page', 'cli', 'docs', 'package', 'architecture', 'bench', 'report', 'class', 'chart', 'suggest', 'learn', 'place', 'bench-sheet', 'what-if', 'cost'].map((folder) => `test/${folder}/**`),
      ...['test/**/*.golden.test.ts', 'test/**/*.long.test.ts', 'test/validation/practice.test.ts', 'test/index.test.ts'],
    ],
    pool: 'threads',
    testTimeout: 60_000,
    setupFiles: ['test/setup.ts'],
  },
});
