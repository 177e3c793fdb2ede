import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Makes every example under `reports/` anew with the built command, so that a difference shows in `git status`. */
const root = fileURLToPath(new URL('../../', import.meta.url));
const command = join(root, 'dist', 'sightdown.js');

for (const name of readdirSync(join(root, 'reports')).sort()) {
  const folder = join('reports', name);
  if (!existsSync(join(root, folder, 'plan.yaml'))) continue;
  run(['audit', join(folder, 'plan.yaml'), '--out', folder]);
}

/** Runs the command; a stop or an unknown is a fine example, an input error is not. */
function run(args: readonly string[]): void {
  try {
    execFileSync(process.execPath, [command, ...args], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  } catch (error) {
    const status = (error as { status?: number }).status ?? 1;
    if (status === 1) throw error;
  }
  process.stdout.write(`made ${args[args.length - 1]}\n`);
}
