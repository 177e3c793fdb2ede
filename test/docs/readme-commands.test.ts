import { cpSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packageFolder } from '../../src/cli/files.js';
import { runIn } from '../cli/command.js';
import { blocksOf, commandsOf, fileNameOf, page } from './readme.js';
import { everything } from '../effort.js';

/** The commands of README.md, run in order by the built tool in a copy of what they need: rules, plans of the examples, and the files that README.md shows. */
const readme = page('README.md');
const commands = commandsOf(readme);
/** Searches, whole classes and years take seconds each: here their options are known, in the long run they are run, and what they write is read. */
const waits = (command: string): boolean => !everything && /^npx sightdown (?:suggest|learn) |better-banner|stairwell|class-first-year/.test(command);
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sightdown-readme-'));
  cpSync(join(packageFolder, 'rules'), join(folder, 'rules'), { recursive: true });
  cpSync(join(packageFolder, 'reports'), join(folder, 'reports'), { recursive: true, filter: (file) => !/\.(md|svg|html|png)$/.test(file) });
  for (const { language, text } of blocksOf(readme)) {
    const name = fileNameOf(text);
    if (language === 'yaml' && name !== null) writeFileSync(join(folder, name), text);
  }
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('README.md', () => {
  test('shows every command that there is', () => {
    const help = run('npx sightdown --help').stdout;
    const all = [...help.split('Commands:')[1]!.matchAll(/^ {2}(\w+)/gm)].map(([, name]) => name as string).filter((name) => name !== 'help');
    expect(all.length).toBeGreaterThan(2);
    for (const name of all) {
      expect(commands.some(({ command }) => command.startsWith(`npx sightdown ${name} `) || command === `npx sightdown ${name}`), name).toBe(true);
      expect(readme).toContain(`**${name}**`);
    }
  });

  test.each(commands.filter(({ command, slow }) => slow || (waits(command) && command.includes(' --'))))('line $line: $command (too slow to run here: its options are known)', ({ command }) => {
    const [, , name, ...rest] = command.split(' ');
    const help = run(`npx sightdown ${String(name)} --help`).stdout;
    const flags = rest.filter((word) => word.startsWith('--'));
    expect(flags.length).toBeGreaterThan(0);
    for (const flag of flags) expect(help).toMatch(new RegExp(`^ +${flag} `, 'm'));
  });

  test.each(commands.filter(({ command, slow }) => !slow && !waits(command)))('line $line: $command', ({ command, exit }) => {
    const { status, stdout, stderr } = run(command);
    expect(status, `${stdout}\n${stderr}`).toBe(exit);
    expect(`${stdout}${stderr}`.trim()).not.toBe('');
    expect(stderr).not.toMatch(/should not have happened|\n\s+at /);
  });

  test.runIf(everything)('solves the teacher’s task: the lowered limit changes some of the ten verdicts, and says why', () => {
    const { stdout } = run('npx sightdown rules compare class-first-year my-class.yaml reports/class-first-year/plans');
    const [, changed, all] = /(\d+) of (\d+) plans get another verdict/.exec(stdout)!;
    expect(Number(all)).toBe(10);
    expect(Number(changed)).toBeGreaterThan(0);
    expect(Number(changed)).toBeLessThan(10);
    expect(stdout).toMatch(/The limit was 700 mm and is 600 mm/);
    expect(readdirSync(join(folder, 'class-page')).filter((name) => existsSync(join(folder, 'class-page', name, 'report.html')))).toHaveLength(10);
  });

  test('has the commands write what it says they write', () => {
    for (const file of ['reports/my-plan/report.md', 'reports/my-plan/front.svg', 'my-report/report.md', 'my-report/report.html', 'cutting/cut.md', 'schema/plan.schema.json', 'nook.yaml', ...(everything ? ['class-page/class.html'] : [])]) expect(existsSync(join(folder, file)), file).toBe(true);
    expect(readdirSync(join(folder, 'reports', 'my-plan')).filter((name) => name.endsWith('.svg')).length).toBeGreaterThan(5);
  });
});

/** Runs a command of the page with the built tool in the copy; words are split as a shell would, quotes kept together. */
function run(command: string): { readonly status: number | null; readonly stdout: string; readonly stderr: string } {
  const [first, second, ...rest] = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? (bare as string));
  expect([first, second], command).toEqual(['npx', 'sightdown']);
  const { code, out, err } = runIn(folder, rest.flatMap(spread));
  return { status: code, stdout: out, stderr: err };
}

/** `folder/*.yaml` as a shell spreads it. */
function spread(word: string): readonly string[] {
  const star = /^(.*)\/\*(\.\w+)$/.exec(word);
  if (star === null) return [word];
  const [, inside, ending] = star as unknown as [string, string, string];
  return readdirSync(join(folder, inside)).filter((name) => name.endsWith(ending)).sort().map((name) => join(inside, name));
}
