import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { madeBy } from '../../src/report/made-by.js';
import { pageNames, planName } from '../../src/cli/plans.js';
import { CannotWrite } from '../../src/cli/cannot-write.js';
import { whileHolding } from '../../src/cli/out-folder.js';
import { writeFolder } from '../../src/cli/write-files.js';
import { command, folder, looksLikeABug, plan, root, stopPlan } from './command.js';

/** A process that writes `a.md` into a folder, its text yielded by a piece of script, after another page. */
const writing = (path: string, script: string, ...before: readonly string[]): ChildProcess => {
  const lines = [
    `import { existsSync } from 'node:fs';`,
    `import { writeFolder } from ${JSON.stringify(join(root, 'dist/lib/cli/write-files.js'))};`,
    `const wait = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);`,
    `const text = function* () { ${script} };`,
    `writeFolder('.', [...${JSON.stringify(before)}.map((name) => ({ name, text: '# B\\nnew' })), { name: 'a.md', text: text() }], { overwrite: true });`,
  ];
  return spawn(process.execPath, ['--input-type=module', '-e', lines.join('\n')], { cwd: path, stdio: ['ignore', 'ignore', 'inherit'] });
};
const ended = (child: ChildProcess): Promise<number | string | null> =>
  new Promise((resolve) => (child.exitCode ?? child.signalCode) !== null ? resolve(child.exitCode ?? child.signalCode) : child.on('exit', (code, signal) => resolve(code ?? signal)));
const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 1));

describe('a report is whole or not there, and nothing of yours is lost', () => {
  it('writes again over its own pages, in every format', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    for (const format of ['md', 'html', 'md', 'html']) expect(here.run('audit', 'sill.yaml', '--format', format, '--out', 'r').code).toBe(0);
    expect(here.files().filter((name) => /part|writing/.test(name))).toEqual([]);
  });

  it('knows a page of its own that is longer than any plan may be, by its beginning or its end; and a long one that is not', () => {
    const here = folder();
    const text = (page: string): string => (page.endsWith('.md') ? `${'Words.\n'.repeat(500_000)}\n<!-- ${madeBy} -->\n` : `<!doctype html>\n<meta name="generator" content="${madeBy}">\n${'<p>Words.</p>\n'.repeat(200_000)}`);
    for (const name of ['class.md', 'class-pack.html']) {
      const file = join(here.path, 'r', name);
      writeFolder(join(here.path, 'r'), [{ name, text: text(name) }]);
      writeFolder(join(here.path, 'r'), [{ name, text: ['new ', 'and', ' short'] }]);
      expect(readFileSync(file, 'utf8')).toBe('new and short');
      writeFileSync(file, text(name).replace(madeBy, 'somebody else'));
      expect(() => writeFolder(join(here.path, 'r'), [{ name, text: ['new'] }])).toThrow('a file that sightdown did not write');
      rmSync(file);
    }
    writeFileSync(join(here.path, 'r', 'empty.html'), '');
    expect(() => writeFolder(join(here.path, 'r'), [{ name: 'empty.html', text: ['new'] }])).toThrow(CannotWrite);
  });

  it('what is made while it is written and breaks off leaves the old page whole, and nothing beside it', () => {
    const here = folder();
    const page = `${madeBy}: the old page`;
    writeFolder(here.path, [{ name: 'class-pack.html', text: page }]);
    const broken = function* (): Generator<string> {
      yield 'half a page';
      throw new Error('no more');
    };
    expect(() => writeFolder(here.path, [{ name: 'class-pack.html', text: broken() }])).toThrow('no more');
    expect(here.files()).toEqual(['class-pack.html']);
    expect(readFileSync(join(here.path, 'class-pack.html'), 'utf8')).toBe(page);
  });

  it('leaves a page that says the same already as it is, with its date, and writes the others', () => {
    const { path } = folder();
    writeFolder(path, [{ name: 'a.md', text: '# A\nold' }, { name: 'b.md', text: '# B\nold' }]);
    const long_ago = new Date('2020-01-02T03:04:05Z');
    for (const name of ['a.md', 'b.md']) utimesSync(join(path, name), long_ago, long_ago);
    writeFolder(path, [{ name: 'a.md', text: '# A\nnew' }, { name: 'b.md', text: '# B\nold' }]);
    expect(['a.md', 'b.md'].map((name) => readFileSync(join(path, name), 'utf8'))).toEqual(['# A\nnew', '# B\nold']);
    expect(['a.md', 'b.md'].map((name) => statSync(join(path, name)).mtimeMs === long_ago.getTime())).toEqual([false, true]);
    expect(readdirSync(path).toSorted()).toEqual(['a.md', 'b.md']);
  });

  it('leaves one that is made while it is written as well, unless a word differs, however deep', () => {
    const { path } = folder();
    const page = (word: string): string[] => [`<!doctype html>\n<meta name="generator" content="${madeBy}">\n`, ...Array.from({ length: 100 }, () => 'Words – and signs.\n'.repeat(400)), word];
    const file = join(path, 'class-pack.html');
    const long_ago = new Date('2020-01-02T03:04:05Z');
    writeFolder(path, [{ name: 'class-pack.html', text: page('stop') }]);
    utimesSync(file, long_ago, long_ago);
    writeFolder(path, [{ name: 'class-pack.html', text: page('stop') }]);
    expect(statSync(file).mtimeMs).toBe(long_ago.getTime());
    expect(readdirSync(path)).toEqual(['class-pack.html']);
    writeFolder(path, [{ name: 'class-pack.html', text: page('fine') }]);
    expect(readFileSync(file, 'utf8')).toBe(page('fine').join(''));
    expect(statSync(file).mtimeMs).not.toBe(long_ago.getTime());
  });

  it('leaves one of a large class as well, unless a word in its middle differs', () => {
    const { path } = folder();
    const page = (word: string): string => `# Class\n${'Words – and signs.\n'.repeat(10_000)}${word}\n${'More words.\n'.repeat(20_000)}`;
    const file = join(path, 'class.md');
    const long_ago = new Date('2020-01-02T03:04:05Z');
    writeFolder(path, [{ name: 'class.md', text: page('stop') }]);
    utimesSync(file, long_ago, long_ago);
    writeFolder(path, [{ name: 'class.md', text: page('stop') }]);
    expect(statSync(file).mtimeMs).toBe(long_ago.getTime());
    writeFolder(path, [{ name: 'class.md', text: page('fine') }]);
    expect(readFileSync(file, 'utf8')).toBe(page('fine'));
  });

  it.each(['report.md', 'front.svg'])('leaves a %s that it did not write, and writes nothing beside it', (name) => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    here.write(`r/${name}`, 'My own notes.\n');
    const { code, err } = here.run('audit', 'sill.yaml', '--out', 'r');
    expect(code).toBe(1);
    expect(err).toContain(`${join('r', name)} is a file that sightdown did not write`);
    expect(here.files()).toEqual([`r/${name}`, 'sill.yaml']);
    expect(readFileSync(join(here.path, 'r', name), 'utf8')).toBe('My own notes.\n');
    expect(here.run('audit', 'sill.yaml', '--out', 'r', '--overwrite').code).toBe(0);
  });

  it('does not follow a link', () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    here.write('elsewhere.md', 'Mine.\n');
    mkdirSync(join(here.path, 'r'));
    symlinkSync('../elsewhere.md', join(here.path, 'r', 'report.md'));
    const { code, err } = here.run('audit', 'sill.yaml', '--out', 'r');
    expect(code).toBe(1);
    expect(err).toContain('is a link');
    expect(readFileSync(join(here.path, 'elsewhere.md'), 'utf8')).toBe('Mine.\n');
  });

  it('keeps the old set whole when one file of the new set cannot be written', () => {
    const { path } = folder();
    writeFolder(path, [{ name: 'a.md', text: '# A\nold' }, { name: 'b.md', text: '# B\nold' }]);
    mkdirSync(join(path, 'c.md'));
    const again = (): void => writeFolder(path, [{ name: 'a.md', text: '# A\nnew' }, { name: 'b.md', text: '# B\nnew' }, { name: 'c.md', text: '# C' }]);
    expect(again).toThrow(CannotWrite);
    expect(readFileSync(join(path, 'a.md'), 'utf8')).toBe('# A\nold');
    expect(readdirSync(path).sort()).toEqual(['a.md', 'b.md', 'c.md']);
  });

  it('does not mix with another run that is writing there, which ends whole', async () => {
    const { path } = folder();
    const other = writing(path, `yield 'theirs, half'; while (!existsSync('go')) wait(5); yield ' and whole';`);
    while (!readdirSync(path).some((name) => name.endsWith('.part'))) await soon();
    expect(() => writeFolder(path, [{ name: 'a.md', text: 'ours' }])).toThrow(/Another run is writing/);
    writeFileSync(join(path, 'go'), '');
    expect(await ended(other)).toBe(0);
    expect(readFileSync(join(path, 'a.md'), 'utf8')).toBe('theirs, half and whole');
    expect(readdirSync(path).toSorted()).toEqual(['a.md', 'go']);
  });

  it('clears away what a run that was killed left half made, beside and below, and nothing else', async () => {
    const here = folder();
    const pages = [{ name: 'a.md', text: '# A\nold' }, { name: 'below/b.md', text: '# B\nold' }];
    writeFolder(here.path, pages);
    const killed = writing(here.path, `yield '# A\\nhalf'; process.kill(process.pid, 'SIGKILL'); wait(60_000);`, 'below/b.md');
    expect(await ended(killed)).toBe('SIGKILL');
    const left = [`.sightdown-writing.${killed.pid}`, 'a.md', `a.md.${killed.pid}.part`, 'below/b.md', `below/b.md.${killed.pid}.part`];
    expect(here.files()).toEqual(left);
    expect(readFileSync(join(here.path, 'a.md'), 'utf8')).toBe('# A\nold');
    // Somebody's own, however it is called; and what a mark of a run may name but no run of ours would make.
    here.write(`mine.${killed.pid}.part`, 'mine');
    here.write('sub/mine.md', 'mine');
    here.write(`.sightdown-writing.${killed.pid! + 2 ** 23}`, JSON.stringify(['sub/mine.md', `../${basename(here.path)}-x.${killed.pid! + 2 ** 23}.part`, 7]));
    writeFileSync(`${here.path}-x.${killed.pid! + 2 ** 23}.part`, 'mine');
    writeFolder(here.path, [{ name: 'c.md', text: '# C' }]);
    expect(here.files()).toEqual(['a.md', 'below/b.md', 'c.md', `mine.${killed.pid}.part`, 'sub/mine.md']);
    expect(existsSync(`${here.path}-x.${killed.pid! + 2 ** 23}.part`)).toBe(true);
    rmSync(`${here.path}-x.${killed.pid! + 2 ** 23}.part`);
  });

  it('the command too clears away what a killed one left', { timeout: 60_000 }, async () => {
    const here = folder();
    for (const name of ['one', 'two', 'three']) here.write(`in/${name}.yaml`, plan(name));
    const whole = here.run('audit', 'in', '--out', 'r');
    expect(whole.code).toBe(0);
    const pages = here.files();
    let caught = 0;
    for (let tries = 0; tries < 10 && caught === 0; tries++) {
      const child = spawn(process.execPath, [command, 'audit', 'in', '--out', 'r', '--overwrite'], { cwd: here.path, stdio: 'ignore' });
      while (child.exitCode === null && !here.files().some((name) => name.endsWith('.part'))) await soon();
      child.kill('SIGKILL');
      await ended(child);
      caught = here.files().length - pages.length;
    }
    expect(caught).toBeGreaterThan(0);
    expect(here.run('audit', 'in', '--out', 'r').code).toBe(0);
    expect(here.files()).toEqual(pages);
  });

  it('holds the folder of a class until its last page is written', async () => {
    const { path } = folder();
    const out = join(path, 'r', 'class');
    const inside = await whileHolding(out, async () => {
      writeFolder(out, [{ name: 'class.md', text: 'all' }]);
      writeFolder(join(out, 'sill'), [{ name: 'report.md', text: 'one' }]);
      return readdirSync(out).sort();
    });
    expect(inside).toEqual([`.sightdown-writing.${process.pid}`, 'class.md', 'sill']);
    expect(readdirSync(out).sort()).toEqual(['class.md', 'sill']);
    await expect(whileHolding(join(path, 'none', 'made'), () => Promise.reject(new Error('nothing could be read')))).rejects.toThrow('nothing');
    expect(existsSync(join(path, 'none'))).toBe(false);
  });

  it('a class leaves the pages of one that is being written as they are, whatever it comes to itself', () => {
    const here = folder();
    for (const name of ['sill', 'door']) here.write(`plans/${name}.yaml`, plan(name));
    expect(here.run('audit', 'plans', '--out', 'r').code).toBe(0);
    here.write(`r/.sightdown-writing.${process.pid}`, '[]');
    const before = here.files().map((name) => statSync(join(here.path, name)).mtimeMs);
    const { code, err } = here.run('audit', 'plans', '--out', 'r', '--rules', 'class-advanced');
    expect(code).toBe(1);
    expect(err).toContain('Another run is writing into r.');
    expect(here.files().map((name) => statSync(join(here.path, name)).mtimeMs)).toEqual(before);
  });

  it('refuses a name that leads out of the folder', () => {
    const { path } = folder();
    expect(() => writeFolder(join(path, 'r'), [{ name: '../a.md', text: 'a' }])).toThrow(/outside/);
    expect(existsSync(join(path, 'a.md'))).toBe(false);
  });
});

describe('places that cannot be written to are named in a sentence', () => {
  it.each([
    ['a file', 'there.txt', 'is a file, not a folder'],
    ['below a file', 'there.txt/r', 'is a file, not a folder'],
    ['the processes of the system', '/proc/sightdown/r', 'cannot be written to'],
    ['a name that is too long', 'x'.repeat(300), 'its name is too long'],
  ])('--out on %s', (_, out, said) => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    here.write('there.txt', 'mine');
    const { code, err } = here.run('audit', 'sill.yaml', '--out', out);
    expect(code).toBe(1);
    expect(err).toContain(said);
    expect(err).not.toMatch(looksLikeABug);
  });

  it('a folder without leave to write', { skip: process.getuid?.() === 0 }, () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    mkdirSync(join(here.path, 'shut'));
    chmodSync(join(here.path, 'shut'), 0o500);
    expect(here.run('audit', 'sill.yaml', '--out', 'shut').err).toContain('you may not write there');
  });
});

describe('names of files', () => {
  it.each([
    ['...yaml', 'plan'], ['..yaml', 'plan'], ['.yaml', 'plan'], ['a/...yaml', 'plan'], ['class.md.yaml', 'plan-class.md'], ['class.yaml', 'plan-class'],
    ['sill.yaml', 'sill'], ['.hidden.yml', 'hidden'], ['two.parts.yaml', 'two.parts'],
  ])('%s gets the folder %s', (file, name) => {
    expect(planName(file)).toBe(name);
  });

  it('of plans called alike are all different, whatever a file system makes of capitals', () => {
    expect(pageNames(['a/sill.yaml', 'a/door.yaml', 'b/Sill.yml'])).toEqual(['a-sill', 'door', 'b-Sill']);
    expect(pageNames(['a/sill.yaml', 'a/SILL.yaml', 'a/a-sill-2.yaml', 'a/sill.yml'])).toEqual(['a-sill', 'a-SILL-2', 'a-sill-2-2', 'a-sill-3']);
    const many = pageNames(Array.from({ length: 20_000 }, (_, i) => `${i % 2 === 0 ? 'a' : 'A'}/sill.yaml`));
    expect(many.slice(0, 3)).toEqual(['a-sill', 'A-sill-2', 'a-sill-3']);
    expect(many.at(-1)).toBe('A-sill-20000');
    expect(new Set(many.map((name) => name.toLowerCase())).size).toBe(20_000);
  });

  it('a file whose name begins with a minus sign is a file', () => {
    const here = folder();
    here.write('-5.yaml', plan('Minus five'));
    expect(here.run('audit', '-5.yaml', '--out', 'r').code).toBe(0);
  });

  it('a file called ...yaml writes inside --out', () => {
    const here = folder();
    here.write('in/...yaml', plan('Dots'));
    here.write('in/sill.yaml', plan('Sill'));
    here.run('audit', 'in', '--out', 'r');
    expect(here.files().filter((name) => !name.startsWith('in/') && !name.startsWith('r/'))).toEqual([]);
  });
});

describe('output that nobody takes', () => {
  it('a closed pipe keeps the verdict', async () => {
    const here = folder();
    here.write('thin.yaml', stopPlan);
    const child = spawn(process.execPath, [command, 'audit', 'thin.yaml', '--format', 'json'], { cwd: here.path, stdio: ['ignore', 'pipe', 'ignore'] });
    child.stdout.destroy();
    expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(3);
  });

  it('a full disk is a sentence and an error', { skip: !existsSync('/dev/full') }, () => {
    const here = folder();
    here.write('sill.yaml', plan('Sill'));
    const { status, stderr } = spawnSync('sh', ['-c', `exec "${process.execPath}" "${command}" audit sill.yaml --format json > /dev/full`], { cwd: here.path, encoding: 'utf8' });
    expect(status).toBe(1);
    expect(stderr).toContain('the disk is full');
    expect(stderr).not.toMatch(looksLikeABug);
  });
});
