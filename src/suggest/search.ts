import type { Bench } from '../bench.js';
import type { CutPlan } from '../cutting/purchase.js';
import type { Plan } from '../plan/plan.js';
import type { Build, Builds } from './builds.js';
import type { Aim } from './aims.js';
import { applyEdit, mergeEdits, noEdit, type Edit } from './edit.js';
import { examineBuild } from './examine.js';
import type { Judge } from './judge.js';
import { knownObjections, readable } from './objections.js';
import { boardOptions, hangOptions, setbackOptions } from './options.js';
import { cutting, leastPrice, leastPriceCut, priceOf, type Price } from './price.js';
import { Queue, type Rank } from './queue.js';

/** A plan that no rule asked so far stands in the way of. */
export interface Candidate extends Price {
  readonly edit: Edit;
  readonly plan: Plan;
}

const rank = (aim: Aim, { cents, grams }: Price, changes: number): Rank =>
  aim === 'cheapest' ? [cents, changes, grams] : aim === 'lightest' ? [grams, changes, cents] : [changes, cents, grams];

/** One build on its way through the search: first bounded, then cut, then examined; what is worked out is kept for the other aims. */
interface Entry {
  readonly build: Build;
  least?: Price;
  cut?: CutPlan;
  candidates?: readonly Candidate[];
}

type Step = { readonly kind: 'bounded' | 'cut'; readonly entry: Entry } | { readonly kind: 'ready'; readonly entry: Entry; readonly candidate: Candidate };

/** The search over one space. Best first: what is taken from the queue can be beaten by nothing that is still in it, because ranks there never promise less than they keep. */
export class Search {
  readonly #entries: readonly Entry[];
  readonly #known: ReadonlySet<string>;
  examined = 0;
  /** Rules that stood in the way of a build at its best, and of how many. */
  readonly inTheWay = new Map<string, number>();

  constructor(
    private readonly plan: Plan,
    builds: Builds,
    private readonly bench: Bench,
    private readonly judge: Judge,
    private readonly onExamined: (examined: number) => void,
  ) {
    this.#entries = builds.builds.map((build) => ({ build }));
    this.#known = knownObjections(plan, bench.shelf);
  }

  /** Candidates of one aim, best first; each still to be confirmed by the full audit. */
  async *best(aim: Aim): AsyncGenerator<Candidate> {
    const { shelf } = this.bench;
    const queue = new Queue<Step>();
    for (const entry of this.#entries) queue.put(rank(aim, (entry.least ??= leastPrice(entry.build.plan, shelf)), entry.build.edit.words.length), { kind: 'bounded', entry });
    for (let step = queue.take(); step !== undefined; step = queue.take()) {
      const { entry } = step;
      if (step.kind === 'ready') yield step.candidate;
      else if (step.kind === 'bounded') {
        entry.cut ??= cutting(entry.build.plan, shelf);
        queue.put(rank(aim, leastPriceCut(entry.build.plan, entry.cut, shelf), entry.build.edit.words.length), { kind: 'cut', entry });
      } else for (const candidate of await this.#candidatesOf(entry)) queue.put(rank(aim, candidate, candidate.edit.words.length), { kind: 'ready', entry, candidate });
    }
  }

  /** What this build may become: every way of hanging, setting back and choosing boards that its group's rules let through. Worked out once. */
  async #candidatesOf(entry: Entry): Promise<readonly Candidate[]> {
    if (entry.candidates !== undefined) return entry.candidates;
    const { edit, plan } = entry.build;
    const { shelf } = this.bench;
    const cut = (entry.cut ??= cutting(plan, shelf));
    const examined = await examineBuild(plan, cut, this.bench, this.judge);
    this.onExamined(++this.examined);
    if ('against' in examined) return (entry.candidates = this.#none(examined.against));
    const hangings = await this.#passing(edit, [[noEdit], hangOptions(plan)], examined.againstHanging);
    if (hangings.passing.length === 0) return (entry.candidates = this.#none(hangings.against));
    const setbacks = await this.#passing(edit, [[noEdit], setbackOptions(plan)], examined.againstSetback);
    if (setbacks.passing.length === 0) return (entry.candidates = this.#none(setbacks.against));
    const boards = await this.#passing(edit, [boardOptions(plan)], examined.againstBoards);
    if (boards.passing.length === 0) return (entry.candidates = this.#none(boards.against));
    return (entry.candidates = hangings.passing.flatMap((hung) => {
      const price = priceOf(applyEdit(this.plan, mergeEdits(edit, hung), shelf), cut, shelf);
      return setbacks.passing.flatMap((setback) => boards.passing.map((chosen): Candidate => {
        const all = mergeEdits(edit, setback, chosen, hung);
        return { edit: all, plan: applyEdit(this.plan, all, shelf), ...price };
      }));
    }));
  }

  /** The options of the first round that has any which hold and can be written down; else the rules that stand in the way of the one that has fewest against it. */
  async #passing(build: Edit, rounds: readonly (readonly Edit[])[], against: (plan: Plan) => Promise<readonly string[]>): Promise<{ readonly passing: readonly Edit[]; readonly against: readonly string[] }> {
    let fewest: readonly string[] | null = null;
    for (const edits of rounds) {
      const passing: Edit[] = [];
      for (const edit of edits) {
        const changed = applyEdit(this.plan, mergeEdits(build, edit), this.bench.shelf);
        if (edit !== noEdit && !readable(changed, this.bench.shelf, this.#known)) continue;
        const rules = await against(changed);
        if (rules.length === 0) passing.push(edit);
        if (fewest === null || rules.length < fewest.length) fewest = rules;
      }
      if (passing.length > 0) return { passing, against: [] };
    }
    return { passing: [], against: fewest ?? [] };
  }

  #none(against: readonly string[]): readonly Candidate[] {
    for (const rule of against) this.inTheWay.set(rule, (this.inTheWay.get(rule) ?? 0) + 1);
    return [];
  }
}
