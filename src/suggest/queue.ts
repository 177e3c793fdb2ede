/** Numbers to compare in turn: the first that differs decides. */
export type Rank = readonly number[];

/** Negative when `a` comes first. */
export function compareRanks(a: Rank, b: Rank): number {
  for (let i = 0; i < a.length; i++) {
    const [p, q] = [a[i] as number, b[i] as number];
    if (p !== q) return p < q ? -1 : 1;
  }
  return 0;
}

/** A queue that always gives the lowest rank next; of equal ranks, what was put in first. */
export class Queue<T> {
  readonly #heap: { readonly rank: Rank; readonly order: number; readonly item: T }[] = [];
  #order = 0;

  put(rank: Rank, item: T): void {
    const heap = this.#heap;
    heap.push({ rank, order: this.#order++, item });
    for (let i = heap.length - 1; i > 0;) {
      const parent = (i - 1) >> 1;
      if (!this.#before(i, parent)) return;
      this.#swap(i, parent);
      i = parent;
    }
  }

  take(): T | undefined {
    const heap = this.#heap;
    if (heap.length === 0) return undefined;
    this.#swap(0, heap.length - 1);
    const { item } = heap.pop() as { readonly item: T };
    for (let i = 0; ;) {
      const [left, right] = [2 * i + 1, 2 * i + 2];
      let least = i;
      if (left < heap.length && this.#before(left, least)) least = left;
      if (right < heap.length && this.#before(right, least)) least = right;
      if (least === i) return item;
      this.#swap(i, least);
      i = least;
    }
  }

  #before(i: number, j: number): boolean {
    const [a, b] = [this.#heap[i], this.#heap[j]];
    if (a === undefined || b === undefined) return false;
    return (compareRanks(a.rank, b.rank) || a.order - b.order) < 0;
  }

  #swap(i: number, j: number): void {
    const heap = this.#heap;
    [heap[i], heap[j]] = [heap[j] as (typeof heap)[number], heap[i] as (typeof heap)[number]];
  }
}
