import type { About } from '../base/names.js';
import type { Declared, Element, FactUnit } from './declare.js';
import type { FactPath } from './groups.js';

export { elements } from './declare.js';
export type { Element, FactUnit } from './declare.js';
export type { FactPath } from './groups.js';

/** One entry of the catalogue: what a fact means, whatever plan it is asked of. */
export interface FactSpec extends Declared {
  /** `bar.inward_bow_mm` */
  readonly path: FactPath;
  readonly each: Element;
}

/** One computed value. `value` is null when it cannot be known; `reason` then says why in a sentence. */
export interface Fact {
  readonly path: FactPath;
  readonly about: About;
  readonly value: number | string | null;
  readonly unit: FactUnit;
  readonly reason?: string;
}
