import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const imported = /(?:from\s*|import\s*\(?\s*)'(\.{1,2}\/[^']+)'/gu;

/** Which of the test files import a source file, and through how many steps. */
export function reachOf(tests) {
  const importsOf = new Map();
  const direct = (file) => {
    if (!importsOf.has(file)) {
      const paths = [...readFileSync(file, 'utf8').matchAll(imported)].map(([, path]) => join(dirname(file), path));
      importsOf.set(file, paths.map((path) => [path.replace(/\.js$/, '.ts'), path.replace(/\.js$/, '.tsx'), path].find(existsSync)).filter((path) => path !== undefined && /\.(m?[jt]s|tsx)$/.test(path)));
    }
    return importsOf.get(file);
  };
  const steps = new Map(tests.map((test) => {
    const far = new Map([[test, 0]]);
    const next = [test];
    for (let file = next.shift(); file !== undefined; file = next.shift()) for (const one of direct(file)) if (!far.has(one)) { far.set(one, far.get(file) + 1); next.push(one); }
    return [test, far];
  }));
  return (source) => new Map(tests.flatMap((test) => (steps.get(test).has(source) ? [[test, steps.get(test).get(source)]] : [])));
}
