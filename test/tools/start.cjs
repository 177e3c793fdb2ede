#!/usr/bin/env node
// Starts the bundled command with the code that was compiled when it was built. That code counts only as it was built,
// together with its bundle, to the byte; where it is missing, changed or made by another Node, it is compiled anew.
'use strict';
const { createHash } = require('node:crypto');
const { readFileSync } = require('node:fs');
const { join } = require('node:path');
const { Script } = require('node:vm');

const digests = { bundle: 'DIGEST OF bundle', 'one-audit': 'DIGEST OF one-audit' };

function start(name) {
  const bundle = join(__dirname, `${name}.cjs`);
  const source = readFileSync(bundle);
  let cachedData;
  try {
    const code = readFileSync(join(__dirname, `${name}.code`));
    if (createHash('sha256').update(source).update(code).digest('hex') === digests[name]) cachedData = code;
  } catch {
    // Missing: compiled anew.
  }
  if (cachedData === undefined) process.stderr.write(`sightdown: dist/${name}.code is not as it was built, so starting takes longer. \`npm run build\` makes it again.\n`);
  // A bundle is one function of what a module is given; in one-byte letters alone, so it stays where it was read to.
  const script = new Script(source.latin1Slice(), { filename: bundle, cachedData });
  script.runInThisContext()({}, require, { exports: {} }, bundle, __dirname, () => start('bundle'));
}

// An audit of one plan is a program of its own, half as large. Where more is asked for it starts the whole one; what is sure to be more begins there.
const more = process.argv.some((word) => /^--(?:pile|shop|measured)/.test(word));
start(process.argv[2] === 'audit' && !more ? 'one-audit' : 'bundle');
