import { describe, expect, it } from 'vitest';
import { folder, looksLikeABug } from './command.js';

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
