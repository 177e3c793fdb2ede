// Runs a bundled program on two plans, one that leaves all to the tool and one that says what people say, and keeps the code that V8 compiled for them beside the bundle.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Script } from 'node:vm';

const name = process.argv[2];
const bundle = resolve(`dist/${name}.cjs`);
const out = mkdtempSync(join(tmpdir(), 'sightdown-'));
const head = 'plan: 1\nname: First run\n';
const plans = [
  'face: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2 }\ncrossbars: [ { runs: upright } ]\n',
  'face: { width: 1000 mm, height: 750 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2, bond: glue+screws, pairing: opposed }\ncrossbars: [ { runs: upright, at: 1/2, stock: strip-19x38, lay: flat, setback: 18 mm } ]\nlumber: { chosen: picked, moisture: 9 % }\n',
];
process.stdout.write = () => true;
rmSync(`dist/${name}.code`, { force: true });
const script = new Script(readFileSync(bundle, 'latin1'), { filename: bundle });
// The kept code counts only for an engine set as it is when the command starts: what the command sets later is left out here.
const required = createRequire(bundle);
const unset = (name) => (name === 'node:v8' ? { ...required(name), setFlagsFromString: () => undefined } : required(name));
Object.assign(unset, required);
for (const [i, said] of plans.entries()) {
  const plan = join(out, `plan-${i}.yaml`);
  writeFileSync(plan, head + said);
  // Each run reads its words before it waits for anything.
  process.argv = [process.execPath, bundle, 'audit', plan, '--out', join(out, `${i}`)];
  script.runInThisContext()({}, unset, { exports: {} }, bundle, resolve('dist'));
}
process.on('exit', (code) => {
  rmSync(out, { recursive: true });
  if (code === 0) writeFileSync(`dist/${name}.code`, script.createCachedData());
});
