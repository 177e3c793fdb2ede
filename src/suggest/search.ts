import { once } from '../base/once.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Build, Builds } from './builds.js';
import type { Aim } from './aims.js';
import { applyEdit, mergeEdits, noEdit, type Edit } from './edit.js';
import { examineBuild, type Examiner, type SoundBuild } from './examine.js';
import { knownObjections, readable } from './objections.js';
import { boardOptions, hangOptions, setbackOptions } from './options.js';
import {
  billUnhung,
  cutting,
  leastPrice,
  leastPriceCut,
  pricesOf,
  roughPrices,
  type Price,
  type Unhung,
} from './price.js';
import { Queue, type Rank } from './queue.js';

/** A plan that no rule asked before the full audit stands in the way of. */
export interface Candidate extends Price {
  readonly edit: Edit;
  readonly plan: Plan;
}

const rank = (aim: Aim, { cents, grams }: Price, changes: number): Rank =>
  aim === 'cheapest' ? [cents, changes, grams] : aim === 'lightest' ? [grams, changes, cents] : [changes, cents, grams];

/**
 * One build on its way through the search: first guessed, then bounded, then cut, then examined, and last its
 * stability and its boards asked; what is worked out is kept for the other aims.
 */
interface Entry {
  readonly build: Build;
  rough?: Price;
  unhung?: Unhung;
  least?: Price;
  cut?: CutPlan;
  open?: readonly Open[];
}

/**
 * A candidate of which only its stability and the choice of boards are still to be asked. Its price is exact, boards to
 * pick from with it.
 */
interface Open {
  readonly candidate: Candidate;
  readonly holds: () => Promise<boolean>;
}

/** A setback and a way of hanging that hold together. */
interface Held {
  readonly setback: Edit;
  readonly hung: Edit;
}

type Step =
  | { readonly kind: 'guessed' | 'bounded' | 'cut'; readonly entry: Entry }
  | { readonly kind: 'open'; readonly open: Open };

/**
 * The search over one space. Best first: what is taken from the queue can be beaten by nothing that is still in it,
 * because ranks there never promise less than they keep.
 */
export class Search {
  readonly #entries: readonly Entry[];
  readonly #known: ReadonlySet<string>;
  readonly #shelf: Shelf;
  readonly #roughPrice: (plan: Plan) => Price;
  examined = 0;
  /** Rules that stood in the way of a build at its best, and of how many. */
  readonly inTheWay = new Map<string, number>();

  constructor(
    private readonly plan: Plan,
    builds: Builds,
    private readonly examiner: Examiner,
    private readonly onExamined: (examined: number) => Promise<void> | void,
  ) {
    this.#entries = builds.builds.map((build) => ({ build }));
    this.#shelf = examiner.bench.shelf;
    this.#roughPrice = roughPrices(this.#shelf);
    this.#known = knownObjections(plan, this.#shelf);
  }

  /** Candidates of one aim, best first; each still to be confirmed by the full audit. */
  async *best(aim: Aim): AsyncGenerator<Candidate> {
    const shelf = this.#shelf;
    const queue = new Queue<Step>();
    const unhung = (entry: Entry): Unhung => (entry.unhung ??= billUnhung(entry.build.plan, shelf));
    const put = (kind: 'guessed' | 'bounded' | 'cut', entry: Entry, price: Price): void =>
      queue.put(rank(aim, price, entry.build.edit.words.length), { kind, entry });
    for (const entry of this.#entries) put('guessed', entry, (entry.rough ??= this.#roughPrice(entry.build.plan)));
    for (let step = queue.take(); step !== undefined; step = queue.take()) {
      if (step.kind === 'open') {
        if (await step.open.holds()) yield step.open.candidate;
      } else if (step.kind === 'guessed') {
        const { entry } = step;
        put('bounded', entry, (entry.least ??= leastPrice(unhung(entry), shelf)));
      } else if (step.kind === 'bounded') {
        const { entry } = step;
        entry.cut ??= cutting(entry.build.plan, shelf);
        put('cut', entry, leastPriceCut(unhung(entry), entry.cut, shelf));
      } else
        for (const open of await this.#openOf(step.entry))
          queue.put(rank(aim, open.candidate, open.candidate.edit.words.length), { kind: 'open', open });
    }
  }

  /**
   * What this build may become: every setback and way of hanging that the rules let through, with every choice of
   * boards. Worked out once.
   */
  async #openOf(entry: Entry): Promise<readonly Open[]> {
    if (entry.open !== undefined) return entry.open;
    const { edit, plan } = entry.build;
    const shelf = this.#shelf;
    const cut = (entry.cut ??= cutting(plan, shelf));
    const examined = await examineBuild(plan, cut, this.examiner);
    await this.onExamined(++this.examined);
    if ('against' in examined) return (entry.open = this.#none(examined.against));
    const held = await this.#held(entry.build, examined);
    if (held.passing.length === 0) return (entry.open = this.#none(held.against));
    const boards = this.#boardsOf(entry.build, examined.againstBoards);
    const stable = once(async () => {
      const against = await examined.againstStability();
      this.#none(against);
      return against.length === 0;
    });
    return (entry.open = held.passing.flatMap(({ setback, hung }) => {
      const edits = boards.map(({ chosen }) => mergeEdits(edit, setback, chosen, hung));
      const plans = edits.map((all) => applyEdit(this.plan, all, shelf));
      const prices = pricesOf(plans, cut, shelf);
      return boards.map(({ boardsHold }, i): Open => {
        const [all, changed, price] = [edits[i] as Edit, plans[i] as Plan, prices[i] as Price];
        const holds = async (): Promise<boolean> => (await stable()) && (await boardsHold());
        return { candidate: { edit: all, plan: changed, ...price }, holds };
      });
    }));
  }

  /**
   * Setbacks and ways of hanging that hold together, settled in that order as a plan is: both as they are; else one of
   * them changed; else both. When none holds, the rules that stand in the
   * way of those that have fewest against them.
   */
  async #held(
    { edit, plan }: Build,
    { againstSetback, againstHanging }: SoundBuild,
  ): Promise<{ readonly passing: readonly Held[]; readonly against: readonly string[] }> {
    const failed: (readonly string[])[] = [];
    const passing = async (setback: Edit, hangings: readonly Edit[]): Promise<readonly Held[]> => {
      const { passing: sets, against } = await this.#passing(edit, [[setback]], againstSetback);
      const hung =
        sets.length === 0
          ? { passing: [], against }
          : await this.#passing(mergeEdits(edit, setback), [hangings], againstHanging);
      if (hung.against.length > 0) failed.push(hung.against);
      return hung.passing.map((hang) => ({ setback, hung: hang }));
    };
    const setbacks = setbackOptions(plan);
    const hangingsAt = (setback: Edit): readonly Edit[] =>
      hangOptions(applyEdit(this.plan, mergeEdits(edit, setback), this.#shelf));
    const rounds = [
      async () => passing(noEdit, [noEdit]),
      async () => [
        ...(await passing(noEdit, hangingsAt(noEdit))),
        ...(await each(setbacks, (setback) => passing(setback, [noEdit]))),
      ],
      async () => each(setbacks, (setback) => passing(setback, hangingsAt(setback))),
    ];
    for (const round of rounds) {
      const found = await round();
      if (found.length > 0) return { passing: found, against: [] };
    }
    return { passing: [], against: fewestOf(failed) };
  }

  /** Each choice of boards is asked at most once, and only when it is its turn. */
  #boardsOf(
    build: Build,
    against: (plan: Plan) => Promise<readonly string[]>,
  ): readonly { readonly chosen: Edit; readonly boardsHold: () => Promise<boolean> }[] {
    const options = boardOptions(build.plan);
    const failed: (readonly string[])[] = [];
    return options.map((chosen) => {
      let answer: Promise<boolean> | null = null;
      const ask = async (): Promise<boolean> => {
        const rules = await against(applyEdit(this.plan, mergeEdits(build.edit, chosen), this.#shelf));
        if (rules.length === 0) return true;
        failed.push(rules);
        if (failed.length === options.length) this.#none(fewestOf(failed));
        return false;
      };
      return { chosen, boardsHold: () => (answer ??= ask()) };
    });
  }

  /**
   * The options of the first round that has any which hold and can be written down; else the rules that stand in the
   * way of the one that has fewest against it.
   */
  async #passing(
    build: Edit,
    rounds: readonly (readonly Edit[])[],
    against: (plan: Plan) => Promise<readonly string[]>,
  ): Promise<{ readonly passing: readonly Edit[]; readonly against: readonly string[] }> {
    const failed: (readonly string[])[] = [];
    for (const edits of rounds) {
      const passing: Edit[] = [];
      for (const edit of edits) {
        const changed = applyEdit(this.plan, mergeEdits(build, edit), this.#shelf);
        if (edit !== noEdit && !readable(changed, this.#shelf, this.#known)) continue;
        const rules = await against(changed);
        if (rules.length === 0) passing.push(edit);
        else failed.push(rules);
      }
      if (passing.length > 0) return { passing, against: [] };
    }
    return { passing: [], against: fewestOf(failed) };
  }

  #none(against: readonly string[]): readonly [] {
    for (const rule of against) this.inTheWay.set(rule, (this.inTheWay.get(rule) ?? 0) + 1);
    return [];
  }
}

const fewestOf = (lists: readonly (readonly string[])[]): readonly string[] =>
  lists.reduce<readonly string[]>((fewest, list) => (list.length < fewest.length ? list : fewest), lists[0] ?? []);

/** What each of a list gives, one after another. */
async function each<T, U>(list: readonly T[], of: (one: T) => Promise<readonly U[]>): Promise<readonly U[]> {
  const all: U[] = [];
  for (const one of list) all.push(...(await of(one)));
  return all;
}
