import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { command, folder, looksLikeABug, plan, stopPlan } from './command.js';

const commands: readonly (readonly string[])[] = [
  ['audit'], ['suggest'], ['cut'], ['new'], ['schema'], ['measure'], ['measure', 'sag'], ['measure', 'twist'], ['measure', 'spread'], ['measure', 'tap'], ['measure', 'push'],
  ['rules'], ['rules', 'check'], ['rules', 'show'], ['rules', 'compare'], ['rules', 'facts'],
];

describe('help', () => {
  it.each(commands.map((words) => [words.join(' '), words] as const))('of `%s` has an example of that very command', (name, words) => {
    const { code, out, err } = folder().run(...words, '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Examples?:$/m);
    expect(out).toContain(`\n  sightdown ${name}`);
  });

  it('of the whole lists every command, with a line each', () => {
    const { code, out } = folder().run('--help');
    expect(code).toBe(0);
    for (const [name = ''] of commands) expect(out).toMatch(new RegExp(`^ {2}${name}\\b.* {2}\\S`, 'm'));
  });

  it.each([[['paint']], [['audit']], [['measure']], [['measure', 'smell']], [['rules', 'show', '--colour']]])('`%j` is refused in words: exit 1', (args) => {
    const { code, err } = folder().run(...args);
    expect(code).toBe(1);
    expect(err.length).toBeGreaterThan(20);
    expect(err).not.toMatch(looksLikeABug);
  });

  it('--version prints the version alone', () => {
    expect(folder().run('--version')).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) as string });
  });
});

describe('at the terminal', () => {
  it('help is no wider than a narrow terminal, whatever the command', () => {
    for (const words of [[], ['audit'], ['place'], ['measure', 'twist']]) {
      const { stdout } = spawnSync(process.execPath, [command, ...words, '--help'], { encoding: 'utf8', env: { PATH: process.env['PATH'] ?? '', COLUMNS: '60' } });
      expect(stdout).toContain('Usage: sightdown');
      expect(stdout.split('\n').filter((line) => line.length > 60)).toEqual([]);
    }
  });

  it('all that is wrong with a command line is told in one round', () => {
    const { code, err } = folder().run('audit', 'a.yaml', '--seed', 'x', '--format', 'pdf', '--samples', '3');
    expect(code).toBe(1);
    expect(err.match(/^error: /gmu)).toHaveLength(3);
    expect(err).toContain('Run with --help');
  });

  it('a stop tells three reasons, a cure and what to type next; a caution one reason', () => {
    const here = folder();
    here.write('thin.yaml', stopPlan);
    const stop = here.run('audit', 'thin.yaml', '--samples', '200');
    expect(stop.code).toBe(3);
    expect(stop.out).toMatch(/^✕ STOP {2}/u);
    expect(stop.out.match(/^ {2}✕ /gmu)?.length).toBeLessThanOrEqual(3);
    expect(stop.out).toMatch(/^ {2}✕ /mu);
    expect(stop.out).toContain('Next: sightdown suggest thin.yaml');
    here.write('wet.yaml', plan('Wet boards').replace('9 %', '19 %'));
    const caution = here.run('audit', 'wet.yaml', '--samples', '200');
    expect(caution.out.match(/^ {2}▲ /gmu)).toHaveLength(1);
    expect(caution.out).toContain('Next: sightdown suggest wet.yaml --clear');
  });
});
