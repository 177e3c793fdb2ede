import type { Finding, Verdict } from '../../findings/finding.js';
import { countVerdicts, foldFindings } from '../../findings/summary.js';

/** A verdict as one word; the word itself, never a colour, carries it. */
export const verdictWord: Readonly<Record<Verdict, string>> = {
  clear: 'Clear',
  caution: 'Caution',
  unknown: 'Unknown',
  stop: 'Stop',
};

/** A shape for each verdict, so that the eye finds it before it reads; black on white like the rest. */
const verdictShape: Readonly<Record<Verdict, string>> = { clear: '●', caution: '▲', unknown: '◆', stop: '✕' };

/**
 * The badge of a verdict, the same in the terminal, on pages and in rows of a class: shape, then words, which are its
 * own word unless others begin with it.
 */
export const badge = (verdict: Verdict, words: string = verdictWord[verdict]): string =>
  `${verdictShape[verdict]} ${words}`;

/** `1 check`, `3 checks`. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/**
 * The verdict in one sentence, from how many findings there are of each; `measured` when the frame is being built
 * already and readings have joined.
 */
export function verdictSentence(verdict: Verdict, counts: Readonly<Record<Verdict, number>>, measured = false): string {
  const also = counts.caution > 0 ? `, and ${counted(counts.caution, 'more asks', 'more ask')} for care` : '';
  switch (verdict) {
    case 'stop':
      return `Stop: do not ${measured ? 'go on with' : 'cut'} this frame yet. ${counted(counts.stop, 'check says', 'checks say')} it will go wrong${counts.unknown > 0 ? `, ${counts.unknown} could not be made` : ''}${also}.`;
    case 'unknown':
      if (counts.unknown === 0)
        return 'Unknown: this plan is not cleared, because no rule of the ruleset has anything to say of it.';
      return `Unknown: this plan is not cleared, because ${counted(counts.unknown, 'check', 'checks')} could not be made${also}.`;
    case 'caution':
      return `Caution: this frame can be ${measured ? 'finished' : 'cut'}, but ${counted(counts.caution, 'check asks', 'checks ask')} for care or a change first.`;
    case 'clear':
      return `Clear: all ${counted(counts.clear, 'check')} of the ruleset that apply to this plan are met, ${measured ? 'and so is what you measured' : 'so it can be cut'}.`;
  }
}

/** The verdict of a finished audit in that sentence: findings alike are counted once, as they are told. */
export const auditSentence = (audit: {
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly measured?: unknown;
}): string =>
  verdictSentence(
    audit.verdict,
    countVerdicts(foldFindings(audit.findings).map(({ finding }) => finding)),
    audit.measured !== undefined,
  );
