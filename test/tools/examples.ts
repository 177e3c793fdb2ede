import { execFileSync } from 'node:child_process';
import { copyFileSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeYear } from './studio-year.js';
import { writeContactSheet } from './contact-sheet.js';
import { writeValidationPage } from './validation-page.js';

/** Makes the schemas and every example under `reports/` anew with the built command, so that a difference shows in `git status`. */
const root = fileURLToPath(new URL('../../', import.meta.url));
const command = join(root, 'dist', 'sightdown.js');

run(['schema', '--out', 'rules/schema']);
writeYear(join(root, 'reports', 'studio-year', 'frames'));
for (const name of readdirSync(join(root, 'reports')).sort()) {
  const folder = join('reports', name);
  if (existsSync(join(root, folder, 'shop.yaml'))) remake(folder, ['plans', 'shop.yaml', 'README.md'], ['timetable', join(folder, 'plans'), '--shop', join(folder, 'shop.yaml'), '--out', folder]);
  else if (existsSync(join(root, folder, 'plans'))) remake(folder, ['plans'], ['audit', join(folder, 'plans'), '--rules', name, '--out', folder]);
  else if (existsSync(join(root, folder, 'frames'))) remake(folder, ['frames', 'shelf.yaml', 'README.md'], ['learn', join(folder, 'frames'), '--shelf', join(folder, 'shelf.yaml'), '--date', '2027-12-20', '--out', folder]);
  else if (existsSync(join(root, folder, 'pile.yaml'))) remakePlaced(folder);
  else if (existsSync(join(root, folder, 'plan.yaml'))) remake(folder, ['plan.yaml', 'README.md'], ['audit', join(folder, 'plan.yaml'), '--out', folder]);
}
writeContactSheet(root);
// The invented class of the tests: its page, table and pack in words.
execFileSync('npx', ['vitest', 'run', '--config', 'test/vitest.config.ts', 'test/class/room.golden.test.ts', '--update'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
writeValidationPage(root);

/** A plan as it is without its boards, then made of the boards of its pile: the page for the bench, the plan with the boards in it, and its report. */
function remakePlaced(folder: string): void {
  const [plan, pile, placed] = ['plan.yaml', 'pile.yaml', 'placed.yaml'].map((name) => join(folder, name)) as [string, string, string];
  remake(folder, ['plan.yaml', 'pile.yaml', 'README.md'], ['audit', plan, '--out', join(folder, 'by-luck')]);
  copyFileSync(join(root, plan), join(root, placed));
  run(['place', placed, '--pile', pile, '--write', '--out', folder]);
  run(['audit', placed, '--pile', pile, '--out', join(folder, 'placed')]);
}

/** Empties the folder but for what it is made from, so that nothing the tool no longer makes stays behind, and makes the example. */
function remake(folder: string, kept: readonly string[], args: readonly string[]): void {
  for (const entry of readdirSync(join(root, folder))) if (!kept.includes(entry)) rmSync(join(root, folder, entry), { recursive: true });
  run(args);
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
