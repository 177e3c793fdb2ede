// Before the library is compiled, which is done anew only for what changed since `dist/lib/tsconfig.tsbuildinfo` was written: takes away what was compiled from
// sources that are gone, and that record too where it does not tell what is there: something else, such as an older commit, compiled into the folder later, or a
// file is missing. Then all is compiled anew.
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';

const record = 'dist/lib/tsconfig.tsbuildinfo';
const filesIn = (folder) => (existsSync(folder) ? readdirSync(folder, { recursive: true }).map(String) : []);

const sources = new Set(filesIn('src').flatMap((file) => /^(?!page\/)(.*)\.tsx?$/.exec(file)?.[1] ?? []));
const compiled = new Set();
let newest = 0;
for (const file of filesIn('dist/lib')) {
  const name = /^(.*?)(?:\.d\.ts|\.js)$/.exec(file)?.[1];
  if (name === undefined) continue;
  if (sources.has(name)) {
    compiled.add(file);
    newest = Math.max(newest, statSync(`dist/lib/${file}`).mtimeMs);
  } else rmSync(`dist/lib/${file}`);
}
const whole = [...sources].every((name) => compiled.has(`${name}.js`) && compiled.has(`${name}.d.ts`));
if (existsSync(record) && (!whole || newest > statSync(record).mtimeMs)) rmSync(record);
