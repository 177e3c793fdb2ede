// Bundles the command and the developers' tools into single files: imports cost more than the work, so one file starts faster.
import { build } from 'esbuild';
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';

const banner = "#!/usr/bin/env node\nimport { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);";
const common = {
  bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'warning', legalComments: 'linked', minify: true,
  splitting: true, chunkNames: 'chunks/[name]-[hash]', banner: { js: banner }, metafile: true,
};
const tools = { prepare: 'test/tools/prepare.ts', cases: 'test/tools/cases.ts', examples: 'test/tools/examples.ts', bench: 'test/bench/bench.ts' };

for (const result of [
  await build({ ...common, entryPoints: { sightdown: 'src/cli.ts' }, outdir: 'dist' }),
  await build({ ...common, minify: false, entryPoints: tools, outdir: 'dist/tools' }),
])
  removeOld(Object.keys(result.metafile.outputs));

execFileSync(process.execPath, ['dist/tools/prepare.js', 'dist'], { stdio: 'inherit' });

/** Removes chunks of earlier builds that this one did not write. */
function removeOld(outputs) {
  const kept = new Set(outputs.map((file) => resolve(file)));
  for (const folder of new Set(outputs.map((file) => resolve(file, '..')))) {
    if (!folder.endsWith('chunks') || !existsSync(folder)) continue;
    for (const file of readdirSync(folder)) if (!kept.has(join(folder, file))) rmSync(join(folder, file));
  }
}
