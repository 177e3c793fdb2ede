import { said } from './faults.mjs';

const scored = (r) => r.tried.length - r.equal.length;
export const percent = (r, noticed) => (scored(r) === 0 ? 'none' : `${Math.round((100 * noticed.length) / scored(r))} %`);

/** Where the true share of a folder's faults may lie, from those drawn: Wilson's interval, nineteen times in twenty. */
function range(r) {
  const [n, p, z] = [scored(r), r.atFirst.length / scored(r), 1.96];
  if (n === 0) return '';
  const [middle, half] = [(p + z ** 2 / (2 * n)) / (1 + z ** 2 / n), (z * Math.sqrt((p * (1 - p)) / n + z ** 2 / (4 * n ** 2))) / (1 + z ** 2 / n)];
  return `${Math.round(100 * (middle - half))}–${Math.round(100 * (middle + half))} %`;
}

/** The page of scores, from what was tried in each folder. */
export function page(results, { date, seed, leftOut, most }) {
  const all = {
    folder: 'all', all: 0, ...Object.fromEntries(['tried', 'equal', 'atFirst', 'noticed', 'examples', 'survived'].map((which) => [which, results.flatMap((r) => r[which])])),
  };
  const rows = [...results, { ...all, all: results.reduce((sum, r) => sum + r.all, 0) }].map((r) => `| ${r.folder} | ${r.all} | ${r.tried.length} | ${r.equal.length} | ${r.atFirst.length} | ${percent(r, r.atFirst)} | ${range(r)} | ${r.noticed.length} | ${percent(r, r.noticed)} | ${r.examples.length} | ${r.survived.length} |`);
  const list = (title, lines) => (lines.length === 0 ? [] : [`## ${title}`, '', ...lines, '']);
  const faults = (which, after) => results.flatMap((r) => r[which].map((one) => `- ${said(one).replace(/\|/gu, '\\|')}${after(one)}`));
  const total = results.reduce((sum, r) => sum + r.tried.length, 0);
  return [
    '# Small faults, and whether a test notices', '',
    `Measured on ${date}: ${total} faults drawn with seed ${seed}, by \`npm run mutation\`. Neither \`npm test\` nor CI makes this page anew, since it takes long; it holds for the sources of that day, and lines may have moved since.`, '',
    'A fault is one small change of a folder’s sources: a sign, a constant, a boundary, a branch, a term, an extreme. Each is put in alone, and the tests that reach the very place run until one fails; what the compiler refuses counts as noticed, and so does a test that no longer comes to an end. '
    + 'A fault that nothing noticed is tried again when tests are added; what was noticed once is not. The score at first is the honest one; with tests written for faults of this very draw the second flatters, and only another seed tells how the rest fares. Both are of the faults drawn that change what the code does; the range is where the first score of all faults of the folder may lie, nineteen times in twenty. '
    + `Stored outputs (goldens, and the numbers and reports of the examples) are asked last and apart: they say that something changed, not that it is wrong, so what only they notice does not count. ${Number.isFinite(most) ? `Only the first tests of each fault were run, so many as take ${most} seconds: more would notice more. ` : ''}Not run: the built command, the page in a browser, long runs.`, '',
    '| Folder | Faults | Drawn | Equal | At first | Score | Range | With tests added | Score | By examples alone | By nothing |', '| - | -: | -: | -: | -: | -: | -: | -: | -: | -: | -: |', ...rows, '',
    ...list('Noticed by examples alone', faults('examples', () => '')),
    ...list('Not noticed', faults('survived', () => '')),
    ...list('Equal: nothing that anybody could see changes', faults('equal', ({ why }) => `. ${why}`)),
    ...list('Left out, being red without a fault', leftOut.map((name) => `- ${name}`)),
  ].join('\n').trimEnd() + '\n';
}
