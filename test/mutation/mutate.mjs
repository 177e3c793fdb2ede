// Puts small faults into the sources of a folder, one at a time, and counts how many the tests notice. By command only:
//   npm run mutation -- --folder risk,model --count 20 --seed 1 [--most SECONDS] [--notes FILE] [--write YYYY-MM-DD]
// `--most` tries only the cheapest tests of each fault, of so many seconds together: a first look.
// `--again` tries only what the notes say nothing noticed, after tests were added, and what the notes do not tell counts as not drawn.
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
const { values } = parseArgs({ options: { folder: { type: 'string' }, count: { type: 'string', default: '20' }, seed: { type: 'string', default: '1' }, seconds: { type: 'string', default: '300' }, most: { type: 'string', default: 'Infinity' }, again: { type: 'boolean', default: false }, notes: { type: 'string' }, write: { type: 'string' } } });
if (values.folder === undefined) {
  console.error('Name the folders under src/ to try: npm run mutation -- --folder risk,model --count 20 --seed 1');
  process.exit(2);
}
const [count, seconds, most] = [values.count, values.seconds, values.most].map(Number);
const whyEqual = (fault) => equalFaults.find((one) => one.file === fault.name && one.was === fault.was && one.becomes === fault.becomes)?.why ?? null;

/** What was found before: by what each fault was noticed (null: by nothing), and how the tests do without a fault. */
const notes = new Map();
let sound = null;
if (values.notes !== undefined && existsSync(values.notes)) {
  for (const line of readFileSync(values.notes, 'utf8').split('\n').filter(Boolean)) {
    const one = JSON.parse(line);
    if (one.sound !== undefined) sound = one.sound;
    else notes.set(one.key, one.by);
  }
}
const keep = (one) => { if (values.notes !== undefined) appendFileSync(values.notes, `${JSON.stringify(one)}\n`); };
function note(fault, by) {
  notes.set(fault.key, by);
  keep({ key: fault.key, by });
  console.log(`${by === null ? 'SURVIVED' : 'noticed '} ${said(fault)}${by === null ? '' : ` by ${by}`}`);
}

const folders = values.folder.split(',').map((folder) => {
  const all = faultsIn(root, folder);
  return { folder, all: all.length, tried: drawn(all, count, values.seed) };
});
/** The first of every folder, then the second of every folder and so on, so that a run that is stopped has tried as many of each. */
const inTurn = Array.from({ length: count }, (_, i) => folders.flatMap(({ tried }) => tried.slice(i, i + 1))).flat();
const open = inTurn.filter((fault) => (values.again ? notes.has(fault.key) : true) && (notes.get(fault.key) ?? null) === null && whyEqual(fault) === null);
if (open.length > 0) await tryThem();

async function tryThem() {
  const tests = await testsOpen(root);
  const files = await tests.files();
  const reaching = reachOf(files);
  if (sound === null) {
    const { failed, seconds: took } = await tests.run(files.filter((test) => open.some(({ file }) => reaching(file).has(test))), { bail: 0, seconds: 3600 });
    sound = { red: failed.map((file) => relative(root, file)), seconds: Object.fromEntries([...took].map(([file, s]) => [relative(root, file), s])) };
    keep({ sound });
  }
  console.log(`Red without a fault, and left out: ${sound.red.join(', ') || 'none'}`);
  const took = (file) => sound.seconds[relative(root, file)] ?? 1;
  const survivors = [];
  for (const fault of open) {
    /** Those that are cheap, import the file in few steps and lie in the folder of the same name come first. */
    const steps = reaching(fault.file);
    const beside = join(root, 'test', fault.name.split('/')[1], '/');
    const cost = (file) => (0.3 + took(file)) * steps.get(file) * (file.startsWith(beside) ? 0.15 : 1);
    let spent = 0;
    const chosen = [...steps.keys()].filter((file) => !sound.red.includes(relative(root, file))).sort((p, q) => cost(p) - cost(q)).filter((file) => (spent += took(file)) <= most);
    tests.put(fault, fault.file);
    const { failed } = chosen.length === 0 ? { failed: [] } : await tests.run(chosen, { bail: 1, seconds });
    tests.put(null, fault.file);
    note(fault, failed.length > 0 ? relative(root, failed[0]) : null);
    if (failed.length === 0) survivors.push(fault);
  }
  for (const fault of refusedByCompiler(root, survivors)) note(fault, 'the compiler');
  await tests.close();
}

const results = folders.map(({ folder, all, tried: asked }) => {
  const untold = asked.findIndex((fault) => !notes.has(fault.key) && whyEqual(fault) === null);
  const tried = asked.slice(0, untold < 0 ? asked.length : untold);
  const state = tried.map((fault) => ({ ...fault, by: notes.get(fault.key) ?? null, why: whyEqual(fault) }));
  return { folder, all, tried, noticed: state.filter(({ by }) => by !== null), equal: state.filter(({ by, why }) => by === null && why !== null), survived: state.filter(({ by, why }) => by === null && why === null) };
});
for (const r of results) console.log(`${r.folder}: ${r.noticed.length} of ${r.tried.length - r.equal.length} noticed (${percent(r)}), ${r.equal.length} equal; ${r.all} faults in all, seed ${values.seed}`);
if (values.write !== undefined) writeFileSync(join(root, 'reports', 'validation', 'mutation.md'), page(results, { date: values.write, seed: values.seed, leftOut: sound?.red ?? [] }));
