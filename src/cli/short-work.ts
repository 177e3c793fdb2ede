import { setFlagsFromString } from 'node:v8';

/**
 * Tells the engine that its work is over in a moment: it compiles to fast code only what runs very often, and lets the
 * garbage lie until there is no room. Compiling for later costs such work more than it saves; long work is better off
 * with the engine's own pace.
 */
export function expectShortWork(): void {
  // Six times the engine's own 67,584: a loop of the solver still gets there.
  setFlagsFromString('--interrupt-budget=400000');
  setFlagsFromString('--no-incremental-marking');
}

/**
 * Tells the engine that its work goes on for minutes while little is kept: it looks for garbage when the heap has
 * doubled, while of its own it would let four times as much pile up, which of thousands of plans is most of the memory.
 */
export function expectMuchGarbage(): void {
  setFlagsFromString('--heap-growing-percent=100');
}
