import type { Assumed, Glance, Problem, Verdict } from '../../index.js';

/** A text with the name of its file. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** Everything the page was written with, as JSON inside it. */
export interface PageData {
  /** The shelf that ships with the tool. */
  readonly shelf: NamedText;
  /** A shelf laid over it; null when none was named. */
  readonly own_shelf: NamedText | null;
  /** Every ruleset that can be chosen or is built on. */
  readonly rules: readonly NamedText[];
  /** File of the ruleset that judges at first. */
  readonly entry: string;
  readonly sources: string;
  /** The plan that is open at first. */
  readonly plan: NamedText;
}

/** What plans are judged with, as texts. */
export interface BenchTexts {
  readonly shelf: NamedText;
  readonly own_shelf: NamedText | null;
  readonly rules: readonly NamedText[];
  readonly entry: string;
  readonly sources: string;
}

/** A board, cloth, glue … that a plan can name. */
export interface ShelfItem {
  readonly key: string;
  /** What it is, in a few words. */
  readonly said: string;
}

/** One limit of the ruleset as the table shows it. */
export interface LimitRow {
  readonly name: string;
  /** In words, as the ruleset's own page says it. */
  readonly said: string;
  readonly source: string;
  /** Who set it, oldest first: file and name of a ruleset, and what it said. */
  readonly history: readonly { readonly file: string; readonly ruleset: string; readonly said: string }[];
}

/** Shelf and ruleset as read; null where they cannot be. */
export interface BenchSeen {
  readonly problems: readonly Problem[];
  readonly sections: Readonly<Record<string, readonly ShelfItem[]>>;
  readonly currency: string;
  readonly shelf_name: string;
  readonly limits: readonly LimitRow[];
  readonly ruleset_name: string;
}

/** The answer to a plan: a glance at its audit, or what stands in the way of reading it. */
export interface Answer {
  readonly glance: Glance | null;
  readonly problems: readonly Problem[];
  readonly assumed: readonly Assumed[];
}

/**
 * A change to a plan, what it would do, and the plan's text with the change made; null where the text cannot be edited.
 */
export interface ChangeSeen {
  readonly words: string;
  readonly verdict: Verdict;
  readonly word: string;
  readonly reserve: string;
  readonly chance: string;
  readonly cost: string;
  readonly weight: string;
  readonly text: string | null;
}

/** One plan of a class; `problems` when it could not be read. */
export interface ClassSeen {
  readonly file: string;
  readonly name: string;
  readonly verdict: Verdict | null;
  readonly word: string;
  readonly worst: string;
  readonly chance: string;
  readonly cost: string;
  readonly problems: readonly Problem[];
  /** What each rule that applies says of the plan. */
  readonly marks: ReadonlyMap<string, { readonly verdict: Verdict }>;
}

/** What a class prints, and what it buys together. */
export interface PackSeen {
  /** A sheet for each plan, then the teacher's pages, as the command writes them. */
  readonly html: string;
  readonly buying: string;
}

/** A pile placed in the frames of a plan. */
export interface PlacedSeen {
  /** What is wrong with the pile. */
  readonly problems: readonly Problem[];
  readonly outcome: string;
  /** Which board becomes which piece, from where to where, and how it lies. */
  readonly pieces: readonly {
    readonly board: string;
    readonly tag: string;
    readonly part: string;
    readonly from: string;
    readonly to: string;
    readonly lies: string;
  }[];
  /** Pieces that find no board. */
  readonly missing: readonly string[];
  /** Boards of which nothing is cut, each with the reason. */
  readonly left: readonly { readonly boards: string; readonly why: string }[];
  /** The page for the bench, as the command writes it. */
  readonly html: string | null;
  /** The plan with these boards in it; null where they cannot be written. */
  readonly text: string | null;
}

/** What can be asked, and what is answered. */
export interface Asks {
  readonly bench: { readonly ask: BenchTexts; readonly answer: BenchSeen };
  readonly audit: { readonly ask: NamedText; readonly answer: Answer };
  /** Null when the plan has been changed meanwhile. */
  readonly changes: { readonly ask: NamedText; readonly answer: readonly ChangeSeen[] | null };
  /** Gives up a search for changes. */
  readonly rest: { readonly ask: null; readonly answer: null };
  /** The front view of another plan, for before and after; null when it cannot be read. */
  readonly front: { readonly ask: NamedText; readonly answer: string | null };
  readonly report: {
    readonly ask: NamedText & { readonly format: 'md' | 'html' | 'json' };
    readonly answer: string | null;
  };
  readonly place: {
    readonly ask: { readonly plan: NamedText; readonly pile: NamedText };
    readonly answer: PlacedSeen | null;
  };
  /** `no` is the place among the files of the class, from 1; the first begins a class anew. */
  readonly row: { readonly ask: NamedText & { readonly no: number }; readonly answer: ClassSeen };
  /** Of the class that was last gone through; null while nothing can be judged. */
  readonly pack: { readonly ask: null; readonly answer: PackSeen | null };
}
export type Kind = keyof Asks;

/** A question on its way to the worker. */
export type Asked = { [K in Kind]: { readonly id: number; readonly kind: K; readonly ask: Asks[K]['ask'] } }[Kind];

/** An answer on its way back; `failed` is a bug, said as it is. */
export type Answered =
  { readonly id: number; readonly answer: unknown } | { readonly id: number; readonly failed: string };
