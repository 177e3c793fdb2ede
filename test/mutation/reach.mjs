import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';

/**
 * Which test files reach the place of each fault, how long each file takes, and which are red without any fault: each
 * file is run once, alone, with the places counted. What was found is kept in a file, if one is named, and holds for a
 * test file and a source file until the test changes; a fault that is new in a source file since then is reached by
 * what reaches any place of that file. Delete the file to count anew.
 */
export async function reachOf({ root, tests, faults, kept }) {
  const before = kept !== undefined && existsSync(kept) ? JSON.parse(readFileSync(kept, 'utf8')) : {};
  const known = {};
  const files = await tests.files();
  const digest = (file) => createHash('sha256').update(readFileSync(file)).digest('hex');
  const sources = [...new Set(faults.map(({ name }) => name))];
  const missing = [];
  for (const file of files) {
    const one = before[relative(root, file)];
    const unchanged = one?.digest === digest(file);
    if (unchanged) known[relative(root, file)] = one;
    if (!unchanged || sources.some((name) => one.reached[name] === undefined)) missing.push(file);
  }
  if (missing.length > 0) {
    const folder = mkdtempSync(join(tmpdir(), 'reached-'));
    const { failed, seconds } = await tests.counting(missing, faults, folder);
    for (const file of missing) {
      const out = join(folder, `${file.replace(/[^\w]/gu, '_')}.reached`);
      const bytes = existsSync(out) ? readFileSync(out) : null;
      const counted = placesIn(sources, faults, bytes);
      known[relative(root, file)] = {
        digest: digest(file),
        seconds: seconds.get(file) ?? 1,
        red: failed.includes(file) || bytes === null,
        reached: { ...known[relative(root, file)]?.reached, ...counted.reached },
        missed: { ...known[relative(root, file)]?.missed, ...counted.missed },
      };
    }
    rmSync(folder, { recursive: true });
    if (kept !== undefined) writeFileSync(kept, JSON.stringify(known));
  }
  const all = files.map((file) => {
    const { seconds, red, reached, missed } = known[relative(root, file)];
    const places = Object.values(reached).reduce((sum, list) => sum + list.length, 0);
    return { file, name: relative(root, file), seconds, red, reached, missed, places };
  });
  return {
    red: all.filter(({ red }) => red).map(({ name }) => name),
    /** The test files that reach a fault. */
    of: ({ key, name }) =>
      all.filter((one) => !one.red && one.reached[name]?.length > 0 && !one.missed[name].includes(short(key, name))),
  };
}

/** A key within its file, as short as can be told apart from the others. */
const short = (key, name) => createHash('sha256').update(key.slice(name.length)).digest('base64').slice(0, 8);

/** For every source file the places reached and those missed; of a file that was not reached none is told as missed. */
function placesIn(sources, faults, bytes) {
  const [reached, missed] = [0, 1].map(() => Object.fromEntries(sources.map((name) => [name, []])));
  faults.forEach(({ key, name }, n) => (bytes?.[n] === 1 ? reached : missed)[name].push(short(key, name)));
  for (const name of sources) if (reached[name].length === 0) missed[name] = [];
  return { reached, missed };
}
