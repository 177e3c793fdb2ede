// Puts small faults into the sources of a folder, one at a time, and counts how many the tests notice. By command only:
//   npm run mutation -- --folder risk,model --count 20 --seed 1 [--write]
import { spawn } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { equalFaults } from './equal-faults.mjs';
import { mutationsOf } from './mutations.mjs';

const root = new URL('../..', import.meta.url).pathname;
const { values } = parseArgs({ options: { folder: { type: 'string' }, count: { type: 'string', default: '20' }, seed: { type: 'string', default: '1' }, seconds: { type: 'string', default: '240' }, write: { type: 'boolean', default: false } } });
if (values.folder === undefined) {
  console.error('Name the folders under src/ to try: npm run mutation -- --folder risk,model --count 20 --seed 1');
  process.exit(2);
}
const [count, seed, seconds] = [values.count, values.seed, values.seconds].map(Number);

/** A fixed sequence of numbers in 0..1 for a seed (mulberry32). */
function numbers(from) {
  let state = from >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const lineOf = (source, at) => source.slice(0, at).split('\n').length;

/** Every fault of a folder, with what a person needs to find it. */
function faultsIn(folder) {
  const files = readdirSync(join(root, 'src', folder), { recursive: true }).filter((name) => /\.tsx?$/.test(name)).sort();
  return files.flatMap((name) => {
    const file = join(root, 'src', folder, name);
    const source = readFileSync(file, 'utf8');
    return mutationsOf(source).map((one) => ({ ...one, file, name: relative(root, file), line: lineOf(source, one.start), was: source.slice(one.start, one.end) }));
  });
}

/** So many of a list, drawn without putting back. */
function drawn(list, n, random) {
  const left = [...list];
  return Array.from({ length: Math.min(n, left.length) }, () => left.splice(Math.floor(random() * left.length), 1)[0]);
}

/** Runs the tests that import a file, with a fault in it or without: `green`, `red` or `too long`. */
function tested(file, fault) {
  return new Promise((done) => {
    const args = ['node_modules/vitest/vitest.mjs', 'related', file, '--run', '--config', 'test/mutation/vitest.config.ts', '--bail', '1', '--silent', '--passWithNoTests'];
    const env = { ...process.env, FAULT: fault === null ? 'null' : JSON.stringify({ file, start: fault.start, end: fault.end, text: fault.text }) };
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: 'ignore' });
    const late = setTimeout(() => child.kill('SIGKILL'), seconds * 1000);
    child.on('exit', (code) => {
      clearTimeout(late);
      done(code === null ? 'too long' : code === 0 ? 'green' : 'red');
    });
  });
}

const oneLine = (text) => text.replace(/\s+/g, ' ');
const said = ({ name, line, kind, was, text }) => `${name}:${line} ${kind}: \`${oneLine(was)}\` → \`${oneLine(text)}\``;
const whyEqual = (fault) => equalFaults.find((one) => one.file === fault.name && one.was === oneLine(fault.was) && one.becomes === oneLine(fault.text))?.why ?? null;

async function tryFolder(folder) {
  const all = faultsIn(folder);
  const chosen = drawn(all, count, numbers(seed));
  const counts = { folder, of: all.length, tried: chosen.length, noticed: 0, late: 0, equal: [], survived: [] };
  const sound = new Set();
  for (const fault of chosen) {
    if (!sound.has(fault.file)) {
      if ((await tested(fault.file, null)) !== 'green') throw new Error(`The tests of ${fault.name} are not green without a fault: mend them, or allow more than ${seconds} --seconds.`);
      sound.add(fault.file);
    }
    const outcome = await tested(fault.file, fault);
    const why = outcome === 'green' ? whyEqual(fault) : null;
    if (outcome !== 'green') counts.noticed += 1;
    if (outcome === 'too long') counts.late += 1;
    if (outcome === 'green') (why === null ? counts.survived : counts.equal).push(why === null ? said(fault) : `${said(fault)}: ${why}`);
    console.log(`${outcome === 'green' ? (why === null ? 'SURVIVED' : 'equal') : 'noticed'} ${said(fault)}`);
  }
  return counts;
}

const percent = ({ noticed, tried, equal }) => (tried === equal.length ? 'none' : `${Math.round((100 * noticed) / (tried - equal.length))} %`);
const summary = (r) => `${r.folder}: ${r.noticed} of ${r.tried - r.equal.length} noticed (${percent(r)}), ${r.equal.length} equal, ${r.late} ran too long; ${r.of} faults in all, seed ${seed}`;

function page(results) {
  const rows = results.map((r) => `| ${r.folder} | ${r.of} | ${r.tried} | ${r.equal.length} | ${r.noticed} | ${percent(r)} |`);
  const list = (title, of) => results.flatMap((r) => (of(r).length === 0 ? [] : [`## ${title} in ${r.folder}`, '', ...of(r).map((line) => `- ${line}`), '']));
  return [
    '# Small faults, and whether a test notices', '',
    `Made by \`npm run mutation -- --folder ${values.folder} --count ${count} --seed ${seed} --write\`: a sample, drawn by the seed, of all small faults of a folder (a sign, a constant, a boundary, a branch, a term). The score is of those drawn that change what the code does; with few drawn it is rough.`, '',
    '| Folder | Faults | Tried | Equal | Noticed | Score |', '| - | -: | -: | -: | -: | -: |', ...rows, '',
    ...list('Not noticed', (r) => r.survived), ...list('Equal', (r) => r.equal),
  ].join('\n');
}

const results = [];
for (const folder of values.folder.split(',')) results.push(await tryFolder(folder));
for (const r of results) console.log(summary(r));
if (values.write) writeFileSync(join(root, 'reports', 'validation', 'mutation.md'), page(results));
