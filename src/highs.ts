import type { IntegerProgram } from './cutting/boards/pack-fallback.js';

/**
 * HiGHS, an integer program of its own entry: it is large, so nothing else reaches it, and who wants it passes it to
 * `cutPlanExactly`. Null where it cannot be loaded.
 */
export async function loadHighs(): Promise<IntegerProgram | null> {
  try {
    const module = (await import('highs')) as unknown as {
      default: (settings?: { locateFile?: (file: string) => string }) => Promise<IntegerProgram>;
    };
    const place = wasmPlace();
    return await module.default(place === null ? {} : { locateFile: () => place });
  } catch {
    return null;
  }
}

/** Where the solver's binary lies when this code runs from a bundle; null = beside its own script. */
function wasmPlace(): string | null {
  try {
    return import.meta.resolve('highs/runtime');
  } catch {
    return null;
  }
}
