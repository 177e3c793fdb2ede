// Puts small faults into the sources of a folder, one at a time, and counts how many the tests notice. By command only:
//   npm run mutation -- --folder risk,model --count 20 --seed 1 [--most SECONDS] [--part 1/2] [--reach FILE]
//     [--notes FILE] [--again | --told] [--write YYYY-MM-DD] [--earlier SEEDS]
// `--most` tries only the cheapest tests of each fault, of so many seconds together: a first look; what survives it
// meets more of them when the same notes are taken up with more seconds.
// `--seconds` is how long a test file may take, besides eight times what it takes without a fault, before it counts as
// caught in a loop.
// `--part 1/2` tries every second fault, for two processes with the same notes; count the reach first, alone.
// `--reach` keeps which test file reaches which place; counted anew only for test files that changed.
// `--notes` keeps what was found in one draw, a line each, so that a run can be stopped, shared between processes, and
// taken up again: what was noticed is not tried again.
// `--again` tries only what the notes say nothing noticed, after tests were added: what is noticed now was not at
// first. What the notes do not tell counts as not drawn.
// `--told` tries nothing and gives what the notes tell; with `--write` it makes the page from them.
// `--earlier 3,6` says on the page how many of the faults those seeds draw too.
// `--record YYYY-MM-DD` keeps the scores of this draw in `draws.json`; the page tells them beside its own.
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { refusedByCompiler } from './compiles.mjs';
import { equalFaults } from './equal-faults.mjs';
import { drawn, faultsIn, said } from './faults.mjs';
import { page, scoreOf, summary } from './page.mjs';
import { reachOf } from './reach.mjs';
import { testsOpen } from './run-tests.mjs';

const root = new URL('../..', import.meta.url).pathname.replace(/\/$/, '');
const text = (preset) => ({ type: 'string', ...(preset === undefined ? {} : { default: preset }) });
const { values } = parseArgs({
  options: {
    folder: text(),
    count: text('20'),
    seed: text('1'),
    seconds: text('20'),
    most: text('Infinity'),
    part: text('1/1'),
    again: { type: 'boolean', default: false },
    told: { type: 'boolean', default: false },
    notes: text(),
    reach: text(),
    write: text(),
    earlier: text(''),
    record: text(),
  },
});
if (values.folder === undefined) {
  console.error('Name the folders under src/ to try: npm run mutation -- --folder risk,model --count 20 --seed 1');
  process.exit(2);
}
const [count, seconds, most] = [values.count, values.seconds, values.most].map(Number);
const [part, parts] = values.part.split('/').map(Number);
const earlier = values.earlier.split(',').filter(Boolean);
const whyEqual = ({ key }) => equalFaults.find((one) => one.key === key)?.why ?? null;
const byExamples = 'stored outputs alone';

/** What was found before: by what each fault was noticed (`examples`: by stored outputs alone; null: by nothing). */
const notes = new Map();
/** The same before tests were added. */
const first = new Map();
/** How it was tried before tests were added: so many seconds of tests for each fault, and without which test files. */
let terms = null;
const isNoticed = (by) => by !== null && by !== byExamples;
if (values.notes !== undefined && existsSync(values.notes)) {
  for (const line of readFileSync(values.notes, 'utf8').split('\n').filter(Boolean)) {
    const { key, by, added, ...other } = JSON.parse(line);
    if (key === undefined) terms = other;
    else remember(key, by, added ?? false);
  }
}
function remember(key, by, added) {
  notes.set(key, by);
  if (by === 'the compiler' || (!added && !isNoticed(first.get(key) ?? null))) first.set(key, by);
}
function keep(line) {
  if (values.notes !== undefined) appendFileSync(values.notes, `${JSON.stringify(line)}\n`);
}
function note(fault, by) {
  remember(fault.key, by, values.again);
  keep({ key: fault.key, by, ...(values.again ? { added: true } : {}) });
  const how = by === null ? 'SURVIVED' : by === byExamples ? 'EXAMPLES' : 'noticed ';
  console.log(`${how} ${said(fault)}${how === 'noticed ' ? ` by ${by}` : ''}`);
}

const all = values.folder.split(',').map((folder) => ({ folder, faults: faultsIn(root, folder) }));
const folders = all.map(({ folder, faults }) => ({
  folder,
  all: faults.length,
  tried: drawn(faults, count, values.seed),
  before: new Set(earlier.flatMap((seed) => drawn(faults, count, seed)).map(({ key }) => key)),
}));
/** The first of every folder, then the second and so on, so that a run that is stopped has tried as many of each. */
const inTurn = Array.from({ length: count }, (_, i) => folders.flatMap(({ tried }) => tried.slice(i, i + 1))).flat();
const isOpen = ({ key }) => !isNoticed(notes.get(key) ?? null);
const open = inTurn
  .filter((_, i) => i % parts === part - 1)
  .filter((fault) => (notes.has(fault.key) || !values.again) && isOpen(fault) && whyEqual(fault) === null);
if (open.length > 0 && !values.told) await tryThem();

async function tryThem() {
  const tests = await testsOpen(root);
  const reach = await reachOf({ root, tests, faults: all.flatMap(({ faults }) => faults), kept: values.reach });
  console.log(`Red without a fault, and left out: ${reach.red.join(', ') || 'none'}`);
  if (!values.again) keep((terms = { most: values.most, leftOut: reach.red }));
  const examples = await tests.examples();
  let sound = null;
  const soundExamples = async () => {
    const { failed } = await tests.run(examples, { bail: 0, seconds: 600 });
    return examples.filter((file) => !failed.includes(file));
  };
  const survivors = [];
  for (const fault of open) {
    /** First those that are quick, reach little else, and lie in the folder of the same name or hold facts. */
    const beside = join('test', fault.name.split('/')[1], '/');
    const likely = (name) => (name.startsWith(beside) ? 0.3 : /^test\/(facts|validation)\//.test(name) ? 0.5 : 1);
    const cost = ({ name, seconds: took, places }) => (0.2 + took) * places ** 0.25 * likely(name);
    let spent = 0;
    const chosen = reach
      .of(fault)
      .sort((p, q) => cost(p) - cost(q))
      .filter(({ seconds: took }) => (spent += took) <= most);
    const slowest = Math.max(0, ...chosen.map(({ seconds: took }) => took));
    tests.put(fault, fault.file);
    const asked = chosen.map(({ file }) => file);
    const limits = { bail: 1, seconds: seconds + 8 * slowest };
    const { failed } = asked.length === 0 ? { failed: [] } : await tests.run(asked, limits);
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

const results = folders.map(({ folder, all, tried: asked, before }) => {
  const tried = asked.filter((fault) => notes.has(fault.key) || whyEqual(fault) !== null);
  const state = tried.map((fault) => ({ ...fault, by: notes.get(fault.key) ?? null, why: whyEqual(fault) }));
  const which = (wanted) => state.filter(wanted);
  const changed = ({ by, why }) => why === null || isNoticed(by);
  const equal = which((one) => !changed(one));
  return {
    folder,
    all,
    tried,
    noticed: which(({ by }) => isNoticed(by)),
    atFirst: which(({ key }) => isNoticed(first.get(key) ?? null)),
    since: which(({ key, by }) => isNoticed(by) && !isNoticed(first.get(key) ?? null)),
    drawnEarlier: which(({ key }) => before.has(key)),
    equal,
    namedAfter: equal.filter(({ key }) => notes.has(key)),
    examples: which((one) => changed(one) && one.by === byExamples),
    survived: which((one) => changed(one) && one.by === null),
  };
});
for (const r of results) console.log(summary(r));
const kept = join(root, 'test', 'mutation', 'draws.json');
const others = JSON.parse(readFileSync(kept, 'utf8')).filter(({ seed }) => seed !== values.seed);
const { most: seconds_each, leftOut } = terms ?? { most: values.most, leftOut: [] };
if (values.record !== undefined) {
  const draw = { date: values.record, seed: values.seed, seconds: Number(seconds_each), scores: results.map(scoreOf) };
  writeFileSync(kept, `${JSON.stringify([...others, draw], null, 1)}\n`);
}
if (values.write !== undefined) {
  const told = { date: values.write, seed: values.seed, count, earlier, most: Number(seconds_each), leftOut, others };
  writeFileSync(join(root, 'reports', 'validation', 'mutation.md'), page(results, told));
}
