// Puts small faults into the sources of a folder, one at a time, and counts how many the tests notice. By command only:
//   npm run mutation -- --folder risk,model --count 20 --seed 1 [--most SECONDS] [--reach FILE] [--notes FILE] [--write YYYY-MM-DD]
// `--most` tries only the cheapest tests of each fault, of so many seconds together: a first look.
// `--seconds` is how long a test file may take, besides eight times what it takes without a fault, before it counts as caught in a loop.
// `--again` tries only what the notes say nothing noticed, after tests were added, and what the notes do not tell counts as not drawn.
// `--told` tries nothing and gives what the notes tell.
// `--reach` keeps which test file reaches which place, and is counted anew only for test files that changed.
// `--notes` keeps what was found, a line each, so that a run can be stopped, shared between processes, and taken up again: what was noticed is not tried again.
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { refusedByCompiler } from './compiles.mjs';
import { equalFaults } from './equal-faults.mjs';
import { drawn, faultsIn, said } from './faults.mjs';
import { page, percent } from './page.mjs';
import { reachOf } from './reach.mjs';
import { testsOpen } from './run-tests.mjs';

const root = new URL('../..', import.meta.url).pathname.replace(/\/$/, '');
const { values } = parseArgs({ options: { folder: { type: 'string' }, count: { type: 'string', default: '20' }, seed: { type: 'string', default: '1' }, seconds: { type: 'string', default: '20' }, most: { type: 'string', default: 'Infinity' }, again: { type: 'boolean', default: false }, told: { type: 'boolean', default: false }, notes: { type: 'string' }, reach: { type: 'string' }, write: { type: 'string' } } });
if (values.folder === undefined) {
  console.error('Name the folders under src/ to try: npm run mutation -- --folder risk,model --count 20 --seed 1');
  process.exit(2);
}
const [count, seconds, most] = [values.count, values.seconds, values.most].map(Number);
const whyEqual = ({ key }) => equalFaults.find((one) => one.key === key)?.why ?? null;
const byExamples = 'stored outputs alone';

/** What was found before: by what each fault was noticed (`examples`: by stored outputs alone; null: by nothing). */
const notes = new Map();
/** The same at the first try, before tests were added. */
const first = new Map();
if (values.notes !== undefined && existsSync(values.notes)) {
  for (const line of readFileSync(values.notes, 'utf8').split('\n').filter(Boolean)) {
    const { key, by } = JSON.parse(line);
    notes.set(key, by);
    if (!first.has(key)) first.set(key, by);
  }
}
function note(fault, by) {
  notes.set(fault.key, by);
  if (!first.has(fault.key) || by === 'the compiler') first.set(fault.key, by);
  if (values.notes !== undefined) appendFileSync(values.notes, `${JSON.stringify({ key: fault.key, by })}\n`);
  console.log(`${by === null ? 'SURVIVED' : by === byExamples ? 'EXAMPLES' : 'noticed '} ${said(fault)}${by === null || by === byExamples ? '' : ` by ${by}`}`);
}

const all = values.folder.split(',').map((folder) => ({ folder, faults: faultsIn(root, folder) }));
const folders = all.map(({ folder, faults }) => ({ folder, all: faults.length, tried: drawn(faults, count, values.seed) }));
/** The first of every folder, then the second of every folder and so on, so that a run that is stopped has tried as many of each. */
const inTurn = Array.from({ length: count }, (_, i) => folders.flatMap(({ tried }) => tried.slice(i, i + 1))).flat();
const isOpen = ({ key }) => (notes.get(key) ?? null) === null || notes.get(key) === byExamples;
const open = inTurn.filter((fault) => (values.again ? notes.has(fault.key) : true) && isOpen(fault) && whyEqual(fault) === null);
let leftOut = [];
if (open.length > 0 && !values.told) await tryThem();

async function tryThem() {
  const tests = await testsOpen(root);
  const reach = await reachOf({ root, tests, faults: all.flatMap(({ faults }) => faults), kept: values.reach });
  leftOut = reach.red;
  console.log(`Red without a fault, and left out: ${leftOut.join(', ') || 'none'}`);
  const examples = await tests.examples();
  let sound = null;
  const soundExamples = async () => {
    const { failed } = await tests.run(examples, { bail: 0, seconds: 600 });
    return examples.filter((file) => !failed.includes(file));
  };
  const survivors = [];
  for (const fault of open) {
    /** First those that are quick, that reach little else, and that lie in the folder of the same name or hold facts and sources. */
    const beside = join('test', fault.name.split('/')[1], '/');
    const likely = (name) => (name.startsWith(beside) ? 0.3 : /^test\/(facts|validation)\//.test(name) ? 0.5 : 1);
    const cost = ({ name, seconds: took, places }) => (0.2 + took) * places ** 0.25 * likely(name);
    let spent = 0;
    const chosen = reach.of(fault).sort((p, q) => cost(p) - cost(q)).filter(({ seconds: took }) => (spent += took) <= most);
    const slowest = Math.max(0, ...chosen.map(({ seconds: took }) => took));
    tests.put(fault, fault.file);
    const { failed } = chosen.length === 0 ? { failed: [] } : await tests.run(chosen.map(({ file }) => file), { bail: 1, seconds: seconds + 8 * slowest });
    if (failed.length > 0) note(fault, relative(root, failed[0]));
    else {
      if (sound === null) {
        tests.put(null, fault.file);
        sound = await soundExamples();
        tests.put(fault, fault.file);
      }
      const { failed: changed } = await tests.run(sound, { bail: 1, seconds: 120 });
      survivors.push(fault);
      note(fault, changed.length > 0 ? byExamples : null);
    }
    tests.put(null, fault.file);
  }
  for (const fault of refusedByCompiler(root, survivors)) note(fault, 'the compiler');
  await tests.close();
}

const results = folders.map(({ folder, all, tried: asked }) => {
  const tried = asked.filter((fault) => notes.has(fault.key) || whyEqual(fault) !== null);
  const state = tried.map((fault) => ({ ...fault, by: notes.get(fault.key) ?? null, why: whyEqual(fault) }));
  const which = (wanted) => state.filter(wanted);
  const byTest = (by) => by !== null && by !== byExamples;
  const changed = ({ by, why }) => why === null || byTest(by);
  return {
    folder, all, tried,
    noticed: which(({ by }) => byTest(by)),
    atFirst: which(({ key }) => byTest(first.get(key) ?? null)),
    equal: which((one) => !changed(one)),
    examples: which((one) => changed(one) && one.by === byExamples),
    survived: which((one) => changed(one) && one.by === null),
  };
});
for (const r of results) console.log(`${r.folder}: ${r.atFirst.length} of ${r.tried.length - r.equal.length} noticed at first (${percent(r, r.atFirst)}), ${r.noticed.length} now (${percent(r, r.noticed)}), ${r.examples.length} by stored outputs alone, ${r.survived.length} by nothing, ${r.equal.length} equal; ${r.all} faults in all, seed ${values.seed}`);
if (values.write !== undefined) writeFileSync(join(root, 'reports', 'validation', 'mutation.md'), page(results, { date: values.write, seed: values.seed, leftOut, most }));
