import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shareOut, usualJobs } from '../../src/cli/share-work.js';
import { everything, sampleOf } from '../effort.js';
import { command, folder, plan, stopPlan, withoutProgress, type Folder } from './command.js';

/** A small class: clear, a stop, with a warning of the reader, broken, and no plan at all. */
function room(): Folder {
  const here = folder();
  for (let i = 0; i < 4; i++) here.write(`in/p${i}.yaml`, plan(`Plan ${i}`, `{ width: ${420 + 37 * i} mm, height: ${380 + 11 * i} mm }`));
  here.write('in/p4.yaml', 'plan: 1\nname: Broken\nfase: {}\n');
  here.write('in/p5.yaml', stopPlan);
  here.write('in/sheet.yaml', 'sheet: 1\nplan: Plan 1\n');
  return here;
}

const written = (here: Folder): readonly (readonly [string, string])[] => here.files().filter((name) => !name.startsWith('in/')).map((name) => [name, readFileSync(join(here.path, name), 'utf8')]);

/** Waits until a process has worked longer than starting takes; where that is not told, as long as it surely takes. */
async function untilAtWork(pid: number): Promise<void> {
  const told = `/proc/${pid}/stat`;
  const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
  if (!existsSync(told)) return pause(5000);
  const worked_s = (): number => readFileSync(told, 'utf8').split(') ')[1]!.split(' ').slice(11, 13).reduce((sum, ticks) => sum + Number(ticks) / 100, 0);
  while (worked_s() < 1.5) await pause(50);
}

describe('shared work comes out the same, whatever the number of those who share it', () => {
  it.each(sampleOf(['md', 'html', 'json', 'csv'], 2))('a class as %s: what is said, what is written, and the exit code', (format) => {
    const [one, ...more] = (everything || format === 'md' ? ['1', '2', '3'] : ['1', '2']).map((jobs) => {
      const here = room();
      const run = here.run('audit', 'in', '--out', 'r', '--samples', '500', '--format', format, '--jobs', jobs);
      return { ...run, err: withoutProgress(run.err), written: written(here) };
    });
    expect(one?.code).toBe(1);
    expect(one?.written.map(([name]) => name).filter((name) => name.startsWith(`r/class.${format}`) || name.endsWith(`report.${format}`))).toHaveLength({ md: 6, html: 6, json: 0, csv: 0 }[format] as number);
    for (const other of more) expect(other).toEqual(one);
  });

  it('a place that may not be written to: the same sentence, and nothing about the class', () => {
    const [one, two] = ['1', '2'].map((jobs) => {
      const here = room();
      here.write('r/p1/report.md', 'My own notes.\n');
      const run = here.run('audit', 'in', '--out', 'r', '--samples', '500', '--jobs', jobs);
      expect(here.files()).not.toContain('r/class.md');
      return { ...run, err: withoutProgress(run.err) };
    });
    expect(one).toMatchObject({ code: 1, out: '' });
    expect(one?.err).toContain('report.md is a file that sightdown did not write');
    expect(two).toEqual(one);
  });

  it('is refused for no worker at all', () => {
    expect(room().run('audit', 'in', '--jobs', '0')).toMatchObject({ code: 1, out: '', err: expect.stringContaining('from 1 to 64') as string });
  });

  it.each(sampleOf(['2', '1'], 2))('Ctrl-C in the middle of a chart that %s share ends it with 130, and nothing is written', async (jobs) => {
    const here = folder();
    const child = spawn(process.execPath, [command, 'chart', '--out', 'wall', '--jobs', jobs], { cwd: here.path, stdio: 'ignore' });
    await untilAtWork(child.pid as number);
    child.kill('SIGINT');
    expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(130);
    expect(here.files()).toEqual([]);
  });
});

describe('one who shares the work and ends too soon', () => {
  /** Each of two does what the script says; what came of it, and which answers were taken before. */
  async function sharedBy(script: string): Promise<{ readonly came: unknown; readonly taken: readonly unknown[] }> {
    const taken: unknown[] = [];
    const sharing = { work: 'class', entries: [], bench: null as never, options: null as never } as const;
    const run = shareOut(sharing, 6, 2, { take: (one) => taken.push(one), step: async () => {} }, new URL(`data:text/javascript,${encodeURIComponent(`import { parentPort } from 'node:worker_threads';\n${script}`)}`));
    return { came: await run.then(() => 'done', (error: Error) => error.message), taken };
  }

  it('at once: the work is given up with what to do, instead of being waited for', async () => {
    expect(await sharedBy('process.exit(3);')).toEqual({ came: 'one that shared the work ended too soon (3): try again with --jobs 1', taken: [] });
  });
  it('without a word, as it has nothing more to do', async () => {
    expect((await sharedBy('')).came).toContain('ended too soon (0)');
  });
  it('in the middle: what was done before was taken, in its order', async () => {
    const { came, taken } = await sharedBy('parentPort.on("message", (piece) => { if (piece > 3) process.exit(7); parentPort.postMessage({ piece, answer: piece * 10 }); });');
    expect(came).toContain('ended too soon (7)');
    expect(taken).toEqual([0, 10, 20, 30].slice(0, taken.length));
  });
  it('by an error of its own: that is told', async () => {
    expect((await sharedBy('throw new Error("no room");')).came).toBe('no room');
  });
  it('and where all is done, their ending is no error', async () => {
    expect(await sharedBy('parentPort.on("message", (piece) => parentPort.postMessage({ piece, answer: piece * 10 }));')).toEqual({ came: 'done', taken: [0, 10, 20, 30, 40, 50] });
  });
});

describe('how many share where nobody says', () => {
  it('one where there is little to do, never more than there is work for, and a core is left over', () => {
    expect([0, 1, 7, 15].map((pieces) => usualJobs(pieces, 8))).toEqual([1, 1, 1, 1]);
    const allButOne = Math.max(1, availableParallelism() - 1);
    expect(usualJobs(1_000_000, 8)).toBe(allButOne);
    expect(usualJobs(16, 8)).toBe(Math.min(2, allButOne));
  });

  it('nothing at all is done at once', async () => {
    const taken: unknown[] = [];
    await shareOut({ work: 'class', entries: [], bench: null as never, options: null as never }, 0, 3, { take: (one) => taken.push(one), step: async () => {} });
    expect(taken).toEqual([]);
  });
});
