// Writes the start of the command, `start.cjs`, with the digest of each program, its bundle and its code.
import { createHash } from 'node:crypto';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';

const digest = (name) => ['cjs', 'code'].reduce((hash, ending) => hash.update(readFileSync(`dist/${name}.${ending}`)), createHash('sha256')).digest('hex');
const start = readFileSync('test/tools/start.cjs', 'utf8').replace(/'DIGEST OF ([\w-]+)'/g, (_, name) => `'${digest(name)}'`);
writeFileSync('dist/sightdown.js', start);
chmodSync('dist/sightdown.js', 0o755);
