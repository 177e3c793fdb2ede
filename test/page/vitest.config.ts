import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  // A browser on a busy machine may miss a moment; what fails twice fails.
  test: { retry: 1, include: ['test/page/**/*.test.ts'], exclude: ['test/page/**/*.long.test.ts'], globalSetup: 'test/page/make-pages.ts', testTimeout: 30_000, hookTimeout: 60_000, fileParallelism: false },
});
