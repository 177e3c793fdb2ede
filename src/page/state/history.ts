/**
 * One step of a text: what stood between two ends that stayed the same, before and after. Small, however long the text
 * is.
 */
interface Step {
  readonly at: number;
  readonly before: string;
  readonly after: string;
  /** Steps of the same kind that follow each other at once count as one. */
  readonly kind: string;
}

/** Every step a text has gone through, back to the first. */
export class History {
  private readonly done: Step[] = [];
  private undone: Step[] = [];

  /** Notes that `from` became `to`; typing on in the same place (`kind`) joins the step before. */
  note(from: string, to: string, kind = ''): void {
    if (from === to) return;
    this.undone = [];
    const last = this.done.at(-1);
    if (kind !== '' && last?.kind === kind) {
      this.done.pop();
      const first = undo(from, last);
      if (first !== to) this.done.push(step(first, to, kind));
    } else this.done.push(step(from, to, kind));
  }

  /** Ends the step at hand, so that the next one stands for itself. */
  rest(): void {
    const last = this.done.at(-1);
    if (last !== undefined) this.done[this.done.length - 1] = { ...last, kind: '' };
  }

  /** The text before the last step; null at the start. */
  back(text: string): string | null {
    const last = this.done.pop();
    if (last === undefined) return null;
    this.undone.push(last);
    return undo(text, last);
  }

  /** The text after the step last taken back; null when there is none. */
  forth(text: string): string | null {
    const next = this.undone.pop();
    if (next === undefined) return null;
    this.done.push({ ...next, kind: '' });
    return text.slice(0, next.at) + next.after + text.slice(next.at + next.before.length);
  }

  get canBack(): boolean {
    return this.done.length > 0;
  }

  get canForth(): boolean {
    return this.undone.length > 0;
  }
}

const undo = (text: string, { at, before, after }: Step): string =>
  text.slice(0, at) + before + text.slice(at + after.length);

function step(from: string, to: string, kind: string): Step {
  let at = 0;
  const most = Math.min(from.length, to.length);
  while (at < most && from[at] === to[at]) at++;
  let end = 0;
  while (end < most - at && from[from.length - 1 - end] === to[to.length - 1 - end]) end++;
  return { at, before: from.slice(at, from.length - end), after: to.slice(at, to.length - end), kind };
}
