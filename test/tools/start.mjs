#!/usr/bin/env node
// Starts the bundled command with the code that was compiled when it was built. Where that code is missing or made by another Node, it is compiled anew.
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const bundle = fileURLToPath(new URL('./bundle.cjs', import.meta.url));
const compiled = fileURLToPath(new URL('./bundle.code', import.meta.url));
const script = new Script(`(function (exports, require, module, __filename, __dirname) {${readFileSync(bundle, 'utf8')}\n})`, { filename: bundle, ...(existsSync(compiled) ? { cachedData: readFileSync(compiled) } : {}) });
script.runInThisContext()({}, createRequire(bundle), { exports: {} }, bundle, fileURLToPath(new URL('.', import.meta.url)));
