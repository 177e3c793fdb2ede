import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = new URL('../..', import.meta.url).pathname;

/** The folder that holds the compiled sources, one of them with a fault in it (`compiled-copy.mjs`). */
const copy = process.env['COMPILED_COPY'] ?? '';

/**
 * Runs the tests on the compiled sources of another folder. Left out: tests that start the built command, which has
 * no fault in it, the page in a browser, and long runs. Stored outputs are
 * asked apart, after everything else (`run-tests.mjs`).
 */
export default defineConfig({
  root,
  plugins: [
    {
      name: 'compiled-copy',
      enforce: 'pre',
      resolveId(id, importer) {
        if (!id.startsWith('.') || importer === undefined) return null;
        const source = join(dirname(importer.split('?')[0]!), id);
        if (!source.startsWith(join(root, 'src/'))) return null;
        const compiled = join(copy, 'src', source.slice(join(root, 'src/').length));
        return existsSync(compiled) ? compiled : null;
      },
    },
  ],
  test: {
    include: ['test/**/*.test.ts', 'test/mutation/*.check.ts'],
    exclude: [
      ...['page', 'cli', 'docs', 'package', 'architecture', 'bench'].map((folder) => `test/${folder}/**`),
      ...['test/**/*.long.test.ts', 'test/rules/readme.test.ts', 'test/index.test.ts'],
    ],
    server: { deps: { external: [new RegExp(`^${copy}/src/`)] } },
    pool: 'threads',
    isolate: false,
    testTimeout: 240_000,
    setupFiles: ['test/setup.ts', 'test/mutation/counting-setup.ts'],
  },
});
