import { defineConfig } from 'vitest/config';

/** The long runs over drawn plans: by command and in CI, not with every `npm test`. */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: { include: ['test/**/*.long.test.ts'], testTimeout: 900_000, setupFiles: ['test/setup.ts'], passWithNoTests: true },
});
