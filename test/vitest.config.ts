import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: { include: ['test/**/*.test.ts'], exclude: ['test/page/**', 'test/**/*.long.test.ts'], testTimeout: 60_000, setupFiles: ['test/setup.ts'] },
});
