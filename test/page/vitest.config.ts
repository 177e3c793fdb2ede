import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: { include: ['test/page/**/*.test.ts'], exclude: ['test/page/**/*.long.test.ts'], globalSetup: 'test/page/make-pages.ts', testTimeout: 60_000, hookTimeout: 120_000, fileParallelism: false },
});
