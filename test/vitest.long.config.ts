import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = new URL('..', import.meta.url).pathname;

/** Tests of which `npm test` tries a sample: those that ask `test/effort.ts` how much. */
const sampled = readdirSync(join(root, 'test'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && !file.startsWith('page/'))
  .filter((file) => /from '[./]*effort\.js'/.test(readFileSync(join(root, 'test', file), 'utf8')))
  .map((file) => `test/${file}`);

/** The long runs, by command and in CI, not with every `npm test`: files of their own, and all cases of what `npm test` samples. */
export default defineConfig({
  root,
  test: { include: ['test/**/*.long.test.ts', ...sampled], testTimeout: 900_000, maxWorkers: '100%', env: { TEST_EFFORT: 'everything' }, setupFiles: ['test/setup.ts'] },
});
