// Bundles the command and the developers' tools into single files: imports cost more than the work, so one file starts faster.
import { build } from 'esbuild';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const banner = "#!/usr/bin/env node\nimport { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);";
const common = {
  bundle: true, platform: 'node', format: 'esm', target: 'node20', logLevel: 'warning', legalComments: 'linked', minify: true, keepNames: false,
  splitting: true, chunkNames: 'chunks/[name]-[hash]', external: [],
};
await build({ ...common, entryPoints: { sightdown: 'src/cli.ts' }, outdir: 'dist', banner: { js: banner } });
const tools = ['tools/prepare', 'tools/cases', 'tools/examples', 'bench/bench'].filter((name) => existsSync(`test/${name}.ts`) && (name !== 'bench/bench' || existsSync('src/suggest/suggest.ts'))).map((name) => [name.split('/')[1], `test/${name}.ts`]);
if (tools.length > 0)
  await build({ ...common, minify: false, entryPoints: Object.fromEntries(tools), outdir: 'dist/tools', banner: { js: banner } });

execFileSync(process.execPath, ['dist/tools/prepare.js', 'dist'], { stdio: 'inherit' });
