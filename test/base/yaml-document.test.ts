import { describe, expect, it } from 'vitest';
import { limitProblems, pathText, readYaml } from '../../src/base/yaml-document.js';
import { problemAt, problemCodes } from '../../src/base/messages.js';
import { quoted } from '../../src/base/wording.js';
import { showProblem } from '../../src/base/show-problem.js';

describe('reading YAML', () => {
  it('gives plain data', () => {
    const { source, problems } = readYaml('a: 1\nb: [ x, 2.5, true, null ]\nc: { d: 1/8, e: 3-1/2", f: no }\n', 'a.yaml');
    expect(problems).toEqual([]);
    expect(source?.data).toEqual({ a: 1, b: ['x', 2.5, true, null], c: { d: '1/8', e: '3-1/2"', f: 'no' } });
  });

  it('reads YAML 1.1 as 1.2 and says so, for `yes` would be no word in it', () => {
    const { source, problems } = readYaml('%YAML 1.1\n---\na: yes\nb: 010\nc: 2001-12-14\n', 'a.yaml');
    expect(problems.map(({ code, line }) => [code, line])).toEqual([['yaml-version', 1]]);
    expect(source?.data).toEqual({ a: 'yes', b: 10, c: '2001-12-14' });
    expect(readYaml('%YAML 1.2\n---\na: yes\n', 'a.yaml').problems).toEqual([]);
    expect(readYaml('%YAML 1.3\n---\na: yes\n', 'a.yaml').problems.map(({ code }) => code)).toEqual(['bad-yaml']);
  });

  it('takes no tag for anything, whatever stands behind it', () => {
    for (const value of ['!!omap [ a: 1, a: 2 ]', '!!set { a }', '!!binary x', '!!timestamp 2001', '!!merge <<', '!!str x', '!own x'])
      expect(readYaml(`k: ${value}\n`, 'a.yaml').problems.map(({ code }) => code), value).toEqual(['tag']);
  });

  it('follows a handful of aliases', () => {
    const { source, problems } = readYaml('a: &x { b: 1 }\nc: *x\nd: [ *x, *x ]\n', 'a.yaml');
    expect(problems).toEqual([]);
    expect(source?.data).toEqual({ a: { b: 1 }, c: { b: 1 }, d: [{ b: 1 }, { b: 1 }] });
    expect(source?.place(['d', 1, 'b'])).toMatchObject({ line: 1, column: 12 });
  });

  it('finds keys and values inside flow maps and lists, and the nearest part of what is not there', () => {
    const { source } = readYaml('a:\n  - { b: one, c: two }\n  - 3\nd:\n', 'a.yaml');
    expect(source?.place(['a', 0, 'c'])).toMatchObject({ path: 'a[0].c', line: 2, column: 18, excerpt: '  - { b: one, c: two }' });
    expect(source?.place(['a', 0, 'c'], 'key')).toMatchObject({ line: 2, column: 15 });
    expect(source?.place(['a', 1])).toMatchObject({ line: 3, column: 5 });
    expect(source?.place(['a', 0, 'z'])).toMatchObject({ line: 2, column: 5 });
    expect(source?.place(['a', 9, 'z'])).toMatchObject({ line: 2, column: 3 });
    expect(source?.place(['d'])).toMatchObject({ line: 4, column: 1 });
    expect(source?.place(['nowhere', 'at', 'all'])).toMatchObject({ line: 1, column: 1 });
    expect(source?.written(['a', 0, 'c'])).toBe('two');
  });

  it('does not take brackets in texts for nesting', () => {
    const text = `a: "${'['.repeat(500)}"\nb: |\n  ${'['.repeat(500)}\nc: x${'- '.repeat(100)}\n`;
    expect(readYaml(text, 'a.yaml').problems).toEqual([]);
  });

  it('takes twenty-four levels but no more', () => {
    const nest = (levels: number): string => `${'['.repeat(levels)}1${']'.repeat(levels)}`;
    expect(readYaml(nest(24), 'a.yaml').problems).toEqual([]);
    expect(readYaml(nest(25), 'a.yaml').problems.map(({ code }) => code)).toEqual(['too-deep']);
    const indented = Array.from({ length: 30 }, (_, level) => `${' '.repeat(level)}k:`).join('\n');
    expect(readYaml(indented, 'a.yaml').problems.map(({ code }) => code)).toEqual(['too-deep']);
  });

  it('counts every part, those behind aliases too, and says once where there are too many', () => {
    const limits = { size: 1000, depth: 24, nodes: 12, tokens: 1000 };
    const told = (text: string) => readYaml(text, 'a.yaml', limits).problems.map(({ code, line, column }) => `${code} ${line}:${column}`);
    expect(told(`[ ${'x, '.repeat(11)} ]`)).toEqual([]);
    expect(told(`[ ${'x, '.repeat(14)} ]`)).toEqual(['too-many-parts 1:36']);
    expect(told('a: &a [ 1, 2, 3, 4 ]\nb: [ *a ]')).toEqual(['too-many-aliases 2:6']);
    expect(told('a: &a [ 1, 2, 3 ]\nb: *a')).toEqual([]);
    expect(told('a: &a [ [ *a ] ]\nb: [ 1, *c ]').sort()).toEqual(['alias-loop 1:11', 'unknown-alias 2:9']);
  });

  it('names the way to each fault', () => {
    const { problems } = readYaml('a: [ 1, { b: 0x10, b: 2, __proto__: 3 } ]\nc: [ [ !t x ], *d ]\n', 'a.yaml');
    expect(problems.map(({ code, path }) => `${code} ${path}`)).toEqual(['not-decimal a[1].b', 'duplicate-key a[1].b', 'forbidden-key a[1].__proto__', 'tag c[0][0]', 'unknown-alias c[1]']);
  });

  it('keeps the first of a repeated key and goes on', () => {
    const { source, problems } = readYaml('a: 1\nb: 2\na: 3\nb: 4\n', 'a.yaml');
    expect(source?.data).toEqual({ a: 1, b: 2 });
    expect(problems.map(({ code, line }) => `${code} ${line}`)).toEqual(['duplicate-key 3', 'duplicate-key 4']);
  });

  it('leaves the prototype of objects alone', () => {
    const { source, problems } = readYaml('a: { __proto__: { bad: 1 }, constructor: 2, b: 3 }\n', 'a.yaml');
    expect(problems.map(({ code }) => code)).toEqual(['forbidden-key', 'forbidden-key']);
    expect((source?.data as { a: object }).a).toEqual({ b: 3 });
    expect(({} as { bad?: number }).bad).toBeUndefined();
  });
});

describe('telling problems', () => {
  it('has whole sentences for every code, whatever it is told', () => {
    const place = { file: 'a.yaml', path: 'x.y', line: 3, column: 2, excerpt: 'x: 1' };
    for (const code of problemCodes)
      for (const details of [{}, { value: 'v', name: 'n', allowed: 'something', nearest: 'near' }]) {
        const problem = problemAt(code, place, details);
        expect(problem).toMatchObject({ code, file: 'a.yaml', line: 3, severity: 'error' });
        expect(problem.hint).toMatch(/^[A-Z].*[.?]$/);
        if ('value' in details) expect(`${problem.found} ${problem.allowed}`).not.toContain('undefined');
      }
  });

  it('shows control characters and long texts harmlessly', () => {
    expect(quoted('a\u001b[31mred\u0007\nline')).toBe('a?[31mred? line');
    expect(quoted('x'.repeat(500))).toHaveLength(60);
    const shown = showProblem(problemAt('bad-text', { file: 'a.yaml', path: 'name', line: 1, column: 150, excerpt: `${'x'.repeat(149)}\u001b[2J!${'y'.repeat(400)}` }, { value: 'v' }));
    expect(shown).not.toContain('\u001b');
    for (const line of shown.split('\n')) expect(line.length).toBeLessThan(140);
    const [, source = '', caret = ''] = shown.split('\n');
    expect(source[caret.indexOf('^')]).toBe('?');
  });

  it('colours only what it is given paint for', () => {
    const wrap = (text: string): string => `<${text}>`;
    const problem = problemAt('empty-file', { file: 'a.yaml', path: '', line: 0, column: 0 });
    expect(showProblem(problem, { strong: wrap, bad: wrap, mild: wrap, faint: wrap })).toBe('<a.yaml> <error> found an empty file; allowed: a YAML text.\n    <Check that it was saved, and that this is the right file: its first line says what it is, such as `plan: 1`.>');
  });

  it('writes paths as one reads them', () => {
    expect(pathText(['crossbars', 0, 'at'])).toBe('crossbars[0].at');
    expect(pathText([])).toBe('');
  });

  it('tells nothing twice', () => {
    const problem = problemAt('tab-indent', { file: 'a.yaml', path: '', line: 1, column: 1 });
    expect(limitProblems([problem, problem])).toHaveLength(1);
  });
});
