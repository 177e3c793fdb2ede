import { said } from './faults.mjs';

/** What share of the faults is wanted to be noticed in every folder, before tests are written for them. */
const wanted = 0.85;

/** The faults drawn that change what the code does. */
const scored = (r) => r.tried.length - r.equal.length;
/** The same with those that were found to change nothing only when they had gone unnoticed, as if they were missed. */
const strictly = (r) => scored(r) + r.namedAfter.length;
/** Never a full hundred while one is missed. */
const percent = (noticed, of) =>
  of === 0 ? 'none' : `${Math.min(Math.round((100 * noticed) / of), noticed < of ? 99 : 100)} %`;

/** Where the true share of a folder's faults may lie, from those drawn: Wilson's interval, nineteen times in twenty. */
function range(noticed, n) {
  if (n === 0) return '';
  const [p, z] = [noticed / n, 1.96];
  const middle = (p + z ** 2 / (2 * n)) / (1 + z ** 2 / n);
  const half = (z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2))) / (1 + z ** 2 / n);
  return `${Math.round(100 * (middle - half))}–${Math.round(100 * (middle + half))} %`;
}

/** What was found in a folder, in a line. */
export const summary = (r) =>
  `${r.folder}: ${r.atFirst.length} of ${scored(r)} noticed at first (${percent(r.atFirst.length, scored(r))}; ` +
  `${percent(r.atFirst.length, strictly(r))} with ${r.namedAfter.length} named equal afterwards as missed), ` +
  `${r.noticed.length} now (${percent(r.noticed.length, scored(r))}), ${r.examples.length} by stored outputs alone, ` +
  `${r.survived.length} by nothing, ${r.equal.length} equal, of ${r.tried.length} drawn and ${r.all} in all`;

/** The scores of a folder as they are kept of a draw. */
export const scoreOf = (r) => ({
  folder: r.folder,
  drawn: r.tried.length,
  score: percent(r.atFirst.length, scored(r)),
  strictly: percent(r.atFirst.length, strictly(r)),
});

const columns = [
  ['Folder', (r) => r.folder],
  ['Faults', (r) => r.all],
  ['Drawn', (r) => r.tried.length],
  ['Equal', (r) => r.equal.length],
  ['Named after', (r) => r.namedAfter.length],
  ['At first', (r) => r.atFirst.length],
  ['Score', (r) => percent(r.atFirst.length, scored(r))],
  ['Strictly', (r) => percent(r.atFirst.length, strictly(r))],
  ['Range', (r) => range(r.atFirst.length, strictly(r))],
  ['With tests added', (r) => r.noticed.length],
  ['Score', (r) => percent(r.noticed.length, scored(r))],
  ['By examples alone', (r) => r.examples.length],
  ['By nothing', (r) => r.survived.length],
];
const row = (cells) => `| ${cells.join(' | ')} |`;

/** Which folders fall short of what is wanted, by one way of counting. */
function short(results, of) {
  const names = results.filter((r) => r.atFirst.length < wanted * of(r)).map(({ folder }) => folder);
  return names.length === 0 ? 'no folder has less' : `${names.join(', ')} ${names.length === 1 ? 'has' : 'have'} less`;
}

/** All folders as one. */
const together = (results) => ({
  ...Object.fromEntries(Object.keys(results[0]).map((which) => [which, results.flatMap((r) => r[which])])),
  folder: 'all',
  all: results.reduce((sum, r) => sum + r.all, 0),
});

/** How many of the faults of each folder earlier seeds draw too. */
const metBefore = (results) => results.map((r) => `${r.folder} ${r.drawnEarlier.length}`).join(', ');

const aboutTheDraw = (results, all, { date, seed, count, earlier }) =>
  `Measured on ${date}: ${all.tried.length} faults drawn with seed ${seed}, up to ${count} of each folder, by ` +
  '`npm run mutation`. ' +
  (earlier.length === 0
    ? ''
    : `The earlier seeds ${earlier.join(', ')} draw ${all.drawnEarlier.length} of them too (${metBefore(results)}), ` +
      'so that those may have been met before. ') +
  'Neither `npm test` nor CI makes this page anew, since it takes long; it holds for the sources of that day, and ' +
  'lines may have moved since.';

const whatAFaultIs =
  'A fault is one small change of a folder’s sources: a sign, a constant, a boundary, a branch, a term, an ' +
  'extreme. Each is put in alone, and the tests that reach the very place run until one fails; what the compiler ' +
  'refuses counts as noticed, and so does a test that no longer comes to an end. A fault that nothing noticed is ' +
  'tried again when tests are added; what was noticed once is not. The score at first is the honest one; with ' +
  'tests written for faults of this very draw the second flatters, and only another seed tells how the rest fares.';

const howCounted = (results, { equal, namedAfter }) =>
  `Some faults change nothing that anybody could see. Of the ${equal.length} among those drawn, ` +
  `${equal.length - namedAfter.length} had been named before and were not tried; ${namedAfter.length} were named, ` +
  'each with its reason, only when no test had noticed them. The score leaves all of them out; *strictly* counts ' +
  'those named afterwards as missed. The range is where that share of all faults of the folder may lie, nineteen ' +
  `times in twenty. At least ${100 * wanted} % are wanted at first in every folder: by the score ` +
  `${short(results, scored)}; strictly counted ${short(results, strictly)}.`;

const whatWasRun = (most) =>
  'Stored outputs (goldens, and the numbers and reports of the examples) are asked last and apart: they say that ' +
  'something changed, not that it is wrong, so what only they notice does not count. ' +
  (Number.isFinite(most)
    ? `Only the first tests of each fault were run, so many as take ${most} seconds: more would notice more. `
    : '') +
  'Not run: the built command, the page in a browser, long runs.';

/** Other draws that were kept: at first, before tests were written for their faults. */
const otherDraws = (others) =>
  others.length === 0
    ? []
    : [
        ...['## At first on other draws', ''],
        'So many seconds of tests for each fault. A later draw met the tests written for earlier ones; a small one says little.',
        ...['', row(['Date', 'Seed', 'Seconds', 'Folder', 'Drawn', 'Score', 'Strictly'])],
        row(['-', '-:', '-:', '-', '-:', '-:', '-:']),
        ...others.flatMap(({ date, seed, seconds, scores }) =>
          scores.map((one) => row([date, seed, seconds, one.folder, one.drawn, one.score, one.strictly])),
        ),
        '',
      ];

/** The page of scores, from what was tried in each folder. */
export function page(results, terms) {
  const all = together(results);
  const list = (title, lines) => (lines.length === 0 ? [] : [`## ${title}`, '', ...lines, '']);
  const faults = (which, after = () => '') =>
    all[which].map((one) => `- ${said(one).replace(/\|/gu, '\\|')}${after(one)}`);
  const equal = faults('equal', ({ why }) => `. ${why}`);
  const red = terms.leftOut.map((name) => `- ${name}`);
  return [
    ...['# Small faults, and whether a test notices', ''],
    ...[
      aboutTheDraw(results, all, terms),
      '',
      whatAFaultIs,
      '',
      howCounted(results, all),
      '',
      whatWasRun(terms.most),
      '',
    ],
    ...[row(columns.map(([title]) => title)), row(columns.map((_, i) => (i === 0 ? '-' : '-:')))],
    ...[...results, all].map((r) => row(columns.map(([, cell]) => cell(r)))),
    '',
    ...otherDraws(terms.others),
    ...list('Noticed only since tests were added', faults('since')),
    ...list('Noticed by examples alone', faults('examples')),
    ...list('Not noticed', faults('survived')),
    ...list('Equal: nothing that anybody could see changes', equal),
    ...list('Left out, being red without a fault', red),
    '',
  ]
    .join('\n')
    .replace(/\n+$/u, '\n');
}
