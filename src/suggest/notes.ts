import { rememberedBy } from '../base/remembered.js';
import { planInputSchema } from '../plan/plan-schema.js';
import type { Assumed } from '../plan/plan.js';

const blocks = new Map(Object.keys(planInputSchema.shape).map((name, i) => [name, i]));

/** Asked of a few dozen paths for each of thousands of plans. */
const rankOf = rememberedBy(
  (path: string) => path,
  (path) => blocks.get(/^[^.[]*/.exec(path)?.[0] ?? '') ?? -1,
  1000,
);

/** The list of what a plan leaves to defaults, kept true while the plan is changed. */
export class Notes {
  readonly #values: Map<string, string>;

  constructor(assumed: readonly Assumed[]) {
    this.#values = new Map(assumed.map(({ path, value }) => [path, value]));
  }

  /** The plan now says this itself, or no longer needs it: the path and everything below it. */
  forget(path: string): void {
    const [part, item] = [`${path}.`, `${path}[`];
    for (const known of this.#values.keys())
      if (known === path || known.startsWith(part) || known.startsWith(item)) this.#values.delete(known);
  }

  note(path: string, value: string): void {
    this.#values.set(path, value);
  }

  /** What the plan says itself, or else what it follows. */
  follow<T extends string>(path: string, own: T, followed: T): T {
    if (!this.#values.has(path)) return own;
    this.#values.set(path, followed);
    return followed;
  }

  /** By the parts of a plan in the order a file names them. */
  inFileOrder(): readonly Assumed[] {
    return [...this.#values]
      .map(([path, value]) => ({ rank: rankOf(path), entry: { path, value } }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ entry }) => entry);
  }
}
