// Runs a bundled program once on a plan and keeps the code that V8 compiled for it beside the bundle.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Script } from 'node:vm';

const name = process.argv[2];
const bundle = resolve(`dist/${name}.cjs`);
const out = mkdtempSync(join(tmpdir(), 'sightdown-'));
const plan = join(out, 'plan.yaml');
writeFileSync(plan, 'plan: 1\nname: First run\nface: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2 }\ncrossbars: [ { runs: upright } ]\n');
process.argv = [process.execPath, bundle, 'audit', plan, '--out', out];
process.stdout.write = () => true;
rmSync(`dist/${name}.code`, { force: true });
const script = new Script(readFileSync(bundle, 'latin1'), { filename: bundle });
// The kept code counts only for an engine set as it is when the command starts: what the command sets later is left out here.
const required = createRequire(bundle);
const unset = (name) => (name === 'node:v8' ? { ...required(name), setFlagsFromString: () => undefined } : required(name));
script.runInThisContext()({}, Object.assign(unset, required), { exports: {} }, bundle, resolve('dist'));
process.on('exit', (code) => {
  rmSync(out, { recursive: true });
  if (code === 0) writeFileSync(`dist/${name}.code`, script.createCachedData());
});
