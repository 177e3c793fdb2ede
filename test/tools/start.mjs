#!/usr/bin/env node
// Starts the bundled command with the code that was compiled when it was built. That code counts only as it was built,
// together with its bundle, to the byte; where it is missing, changed or made by another Node, it is compiled anew.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const digest = 'DIGEST OF BUNDLE AND CODE';
const bundle = fileURLToPath(new URL('./bundle.cjs', import.meta.url));
const source = readFileSync(bundle);
let cachedData;
try {
  const code = readFileSync(new URL('./bundle.code', import.meta.url));
  if (createHash('sha256').update(source).update(code).digest('hex') === digest) cachedData = code;
} catch {
  // Missing: compiled anew.
}
if (cachedData === undefined) process.stderr.write('sightdown: dist/bundle.code is not as it was built, so starting takes longer. `npm run build` makes it again.\n');
const script = new Script(`(function (exports, require, module, __filename, __dirname) {${source.toString('latin1')}\n})`, { filename: bundle, cachedData });
script.runInThisContext()({}, createRequire(bundle), { exports: {} }, bundle, fileURLToPath(new URL('.', import.meta.url)));
