// Bundles the command into one file, which starts faster than many, and the developers' tools beside it; prepares what starting would cost again and again.
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { noticesOf } from './notices.mjs';
import { leftOut, usedByNeither } from './stand-ins.mjs';

const common = { bundle: true, platform: 'node', target: 'node20', logLevel: 'warning', legalComments: 'linked' };
/** A script of its own, which tells what is wrong itself. */
const next = (words) => {
  const { status } = spawnSync(process.execPath, words, { stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
};

for (const old of ['dist/tools', 'dist/bundle.cjs.LEGAL.txt']) rmSync(old, { recursive: true, force: true });
// The start of the command is plain script, which Node has ready sooner than a module; what lies deeper are modules.
writeFileSync('dist/package.json', '{ "type": "commonjs" }\n');
for (const folder of ['lib', 'tools']) {
  mkdirSync(`dist/${folder}`, { recursive: true });
  writeFileSync(`dist/${folder}/package.json`, '{ "type": "module" }\n');
}
const tools = {
  ...common,
  outdir: 'dist/tools',
  external: ['playwright-core'],
  format: 'esm',
  splitting: true,
  banner: { js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);" },
};
await build({ ...tools, entryPoints: { prepare: 'test/tools/prepare.ts' } });

// The shipped shelf and rulesets, read once; the program is told their digest and trusts nothing else.
next(['dist/tools/prepare.js', 'dist']);
const prepared = createHash('sha256').update(readFileSync('dist/prepared.json')).digest('hex');
const define = { __PREPARED_DIGEST__: JSON.stringify(prepared) };
await build({
  ...tools,
  define,
  entryPoints: { cases: 'test/tools/cases.ts', examples: 'test/tools/examples.ts', bench: 'test/bench/bench.ts', fuzz: 'test/fuzz/fuzz.ts', 'warm-command': 'test/tools/warm-command.ts' },
});

/** What more an audit can be is not in the program for one audit: the whole program does all of it. */
const fromWholeProgram = {
  name: 'from the whole program',
  setup: ({ onResolve }) => onResolve({ filter: /\/audit-more\.js$/ }, () => ({ path: resolve(leftOut('whole-program')) })),
};

/** Bundles the command, or a part of it, into one file. Returns what went into it. */
async function program(name, entry, plugins = []) {
  const outfile = `dist/${name}.cjs`;
  const { metafile } = await build({
    ...common,
    metafile: true,
    legalComments: 'none',
    entryPoints: [entry],
    outfile,
    format: 'cjs',
    minify: true,
    // This Node reads them as they are, and only when they are needed.
    supported: { 'regexp-lookbehind-assertions': true, 'regexp-unicode-property-escapes': true },
    plugins,
    alias: { 'node:url': leftOut('addresses'), yaml: './node_modules/yaml/browser/index.js', '@noble/hashes/sha2.js': './test/tools/node-sha2.mjs', 'node:child_process': leftOut('child-process'), ...usedByNeither },
    define: { ...define, 'import.meta.url': '__filename', 'import.meta.resolve': '__resolve' },
    // One function of what a module is given, so that the start of the command need not put it together.
    banner: { js: "(function (exports, require, module, __filename, __dirname, __whole) {const __resolve = (name) => require('node:url').pathToFileURL(require.resolve(name)).href;" },
    footer: { js: '})' },
  });
  // All in one-byte letters, which are read in no time: the compiler leaves others standing in patterns alone, where their number means the same.
  writeFileSync(outfile, readFileSync(outfile, 'utf8').replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`));
  return metafile;
}

const metafile = await program('bundle', 'src/cli.ts');
await program('one-audit', 'src/cli/one-audit.ts', [fromWholeProgram]);
writeFileSync('dist/THIRD-PARTY-NOTICES.txt', noticesOf(metafile, ['node_modules/highs']));
for (const name of ['bundle', 'one-audit']) next(['test/tools/compile.mjs', name]);
next(['test/tools/write-start.mjs']);
rmSync('dist/page.html', { force: true });
next(['test/tools/page-template.mjs']);
