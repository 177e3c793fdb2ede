import { spokenName } from './names.js';

/** Why there is no number of natural warp, in a sentence. */
export const noWarpWords = {
  'bows-sideways':
    'At working pull a bar or crossbar of the flat frame already bows sideways, so what natural warp would do cannot be worked out.',
  'past-critical':
    'The flat frame is past the pull at which it turns into a propeller; how its bars bow then is not followed.',
  folds:
    'The frame would fold up: one corner would leave the wall by more than the shorter side, and no number says how far.',
} as const;

const partWords = { chosen: 'as chosen', reading: 'as measured', drying: 'from drying after choosing' } as const;

/** A cause of lifted corners: which warp of which bars, and how they came by it; the rest has none of these. */
interface Cause {
  readonly from: string | null;
  readonly part: keyof typeof partWords | null;
  readonly members: readonly string[];
}

/** A cause as facts and pages name it: `twist of top and bottom as chosen`. */
export function causeInWords({ from, part, members }: Cause): string {
  if (from === null || part === null) return 'everything else';
  const [first = ''] = members;
  const which =
    members.length === 1 ? spokenName(first) : first.startsWith('crossbar') ? 'the crossbars' : members.join(' and ');
  return `${from} of ${which} ${partWords[part]}`;
}

/** What a reading is taken of: `the twist of top, ply 1`. */
export const readingInWords = (of: 'moisture' | { readonly bar: string; readonly ply: number | null }): string =>
  of === 'moisture'
    ? 'the moisture of the boards'
    : `the twist of ${spokenName(of.bar)}${of.ply === null ? '' : `, ply ${of.ply}`}`;
