import { setFlagsFromString } from 'node:v8';
import { defineConfig } from 'vitest/config';

/** Most of what is tested runs a few times and never again: compiling it for speed only after four times the usual work saves a seventh of the processors' time. */
setFlagsFromString('--interrupt-budget=500000');

/**
 * What a newcomer waits for. Files share their modules within a worker (`isolate: false`): loading them for each file anew took a fifth of the time. So no
 * test may change what others see: no mocks, no changed environment, no changed working folder. A test that asserts nothing fails.
 */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: { include: ['test/**/*.test.ts'], exclude: ['test/page/**', 'test/**/*.long.test.ts'], pool: 'threads', isolate: false, maxWorkers: '100%', testTimeout: 60_000, expect: { requireAssertions: true }, setupFiles: ['test/setup.ts'] },
});
