/**
 * What a plan was judged by, as a page names it: ruleset, its edition, and everything in it that asks less than the
 * baseline does.
 */
export interface Applied {
  readonly name: string;
  /** As the ruleset gives them; null where it does not. */
  readonly version: string | null;
  readonly date: string | null;
  /** Eight digits that change whenever a rule, a limit or a switch does. */
  readonly fingerprint: string;
  /** Rules switched off, with the reason given. */
  readonly switched_off: readonly { readonly rule: string; readonly reason: string }[];
  /** Limits that allow more than the baseline's, or that cannot be compared with it; both in words. */
  readonly loosened: readonly Loosened[];
  /** Rules of the baseline that the ruleset asks in another way or not at all; both in words. */
  readonly replaced: readonly Replaced[];
}

/** What was before and what is now: facts by their paths, as the ruleset has them, and the same as a page has it. */
export interface Change {
  readonly was: string;
  readonly is: string;
  readonly read: { readonly was: string; readonly is: string };
}

/** A rule that is asked in another way than in the baseline, or not at all. */
export interface Replaced extends Change {
  readonly rule: string;
}

/** A limit that was changed against the baseline. */
export interface Loosened extends Change {
  readonly limit: string;
  /** False where the two are said in ways that cannot be compared without a frame, such as a length and a share. */
  readonly surely: boolean;
}

/** The same as plain data. */
export const appliedData = ({ loosened, replaced, ...rest }: Applied): Record<string, unknown> => ({
  ...rest,
  loosened: loosened.map(({ limit, was, is, surely }) => ({ limit, was, is, surely })),
  replaced: replaced.map(({ rule, was, is }) => ({ rule, was, is })),
});

/** Whether anything at all was relaxed. */
export const relaxes = ({ switched_off, loosened, replaced }: Applied): boolean =>
  switched_off.length + loosened.length + replaced.length > 0;
