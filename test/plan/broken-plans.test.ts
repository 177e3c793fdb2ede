import { describe, expect, it, test } from 'vitest';
import { showProblems } from '../../src/base/show-problem.js';
import type { Problem } from '../../src/base/problem.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { fileText, shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const smallest = fileText('test/plans/smallest.yaml');

/** The errors of a plan; a plan without any fails the test. */
function errors(text: string): readonly Problem[] {
  const result = readPlanWith(text, 'plan.yaml', shelf);
  expect(result.ok).toBe(false);
  return result.ok ? [] : result.problems.filter(({ severity }) => severity === 'error');
}

const face = (text: string): string => smallest.replace('{ width: 500 mm, height: 400 mm }', text);
const nested = (open: string, close: string): string => `${smallest}ground: ${open.repeat(20_000)}${close.repeat(20_000)}\n`;

// text, the code of a problem it must have, the place of that problem (line:column, 0:0 = the file as a whole)
const broken: readonly (readonly [string, string, string, string])[] = [
  ['empty', '', 'empty-file', '1:1'],
  ['only comments', '# nothing\n\n', 'empty-file', '1:1'],
  ['binary', `plan: 1\u0000\u0001\u0002`, 'not-text', '0:0'],
  ['undecodable', '\ufffd\ufffdPNG\ufffd\ufffd', 'not-text', '0:0'],
  ['30 MB', `plan: 1\n# ${'x'.repeat(30_000_000)}\n`, 'too-large', '0:0'],
  ['tabs', smallest.replace('bars: {', 'bars:\n\t{'), 'tab-indent', '5:1'],
  ['a negative side', face('{ width: -500 mm, height: 400 mm }'), 'out-of-range', '3:16'],
  ['a side of zero', face('{ width: 500 mm, height: 0 mm }'), 'out-of-range', '3:32'],
  ['1e308', face('{ width: 1e308 mm, height: 400 mm }'), 'out-of-range', '3:16'],
  ['1e308 as a bare number', face('{ width: 1e308, height: 400 mm }'), 'no-unit', '3:16'],
  ['a count of 1e308', `${smallest}count: 1e308\n`, 'out-of-range', '5:8'],
  ['a count of 0', `${smallest}count: 0\n`, 'out-of-range', '5:8'],
  ['NaN', `${smallest}count: .nan\n`, 'not-finite', '5:8'],
  ['NaN with a unit', face('{ width: NaN mm, height: 400 mm }'), 'not-a-quantity', '3:16'],
  ['an infinite budget', `${smallest}spend: { limit: .inf }\n`, 'not-finite', '5:17'],
  ['unknown stock', smallest.replace('strip-19x38', 'strip-19x83'), 'unknown-on-shelf', '4:16'],
  ['stock named like a method', smallest.replace('strip-19x38', 'toString'), 'unknown-on-shelf', '4:16'],
  ['duplicate keys', `${smallest}name: Another\n`, 'duplicate-key', '5:1'],
  ['duplicate keys inside', face('{ width: 500 mm, width: 600 mm, height: 400 mm }'), 'duplicate-key', '3:24'],
  ['deep brackets', nested('[', ']'), 'too-deep', '5:33'],
  ['deep braces', nested('{a: ', '}'), 'too-deep', '5:105'],
  ['deep brackets left open', nested('[', ''), 'too-deep', '5:33'],
  ['deep dashes', `plan: 1\nname: ${'- '.repeat(20_000)}x\n`, 'too-deep', '2:55'],
  ['deep indentation', Array.from({ length: 900 }, (_, level) => `${' '.repeat(level)}a:`).join('\n'), 'too-deep', '202:1'],
  ['bars wider than the face', face('{ width: 500 mm, height: 70 mm }'), 'no-opening', '4:1'],
  ['5,000 crossbars', `${smallest}crossbars:\n${'  - { runs: upright, at: 1/2 }\n'.repeat(5000)}`, 'too-many', '6:3'],
  ['a later format', smallest.replace('plan: 1', 'plan: 2'), 'later-format', '1:7'],
  ['a format in quotes', smallest.replace('plan: 1', 'plan: "1"'), 'not-this-format', '1:7'],
  ['a shelf instead of a plan', 'shelf: 1\n', 'not-this-format', '1:1'],
  ['a list', '- plan: 1\n', 'not-a-map', '1:1'],
  ['a word', 'plan', 'not-a-map', '1:1'],
  ['two documents', `${smallest}---\nplan: 1\n`, 'several-documents', '5:1'],
  ['the older YAML', `# from an old file\n%YAML 1.1\n---\n${smallest}`, 'yaml-version', '2:1'],
  ['a special key', `${smallest}__proto__: { count: 3 }\n`, 'forbidden-key', '5:1'],
  ['a special key deep down', smallest.replace('lay: flat', 'lay: flat, __proto__: {}'), 'forbidden-key', '4:40'],
  ['an alias bomb', `a: &a [1,1,1,1,1,1,1,1,1]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: &d [*c,*c,*c,*c,*c,*c,*c,*c,*c]\ne: [*d,*d,*d,*d,*d,*d,*d,*d,*d]\n${smallest}`, 'too-many-aliases', '5:23'],
  ['an alias of itself', `${smallest}ground: &g { coats: *g }\n`, 'alias-loop', '5:21'],
  ['a tag', smallest.replace('Small study', '!!js/function "x"'), 'tag', '2:21'],
  ['unclosed quotes', smallest.replace('Small study', '"Small study'), 'bad-yaml', '5:1'],
  ['a key without a value', smallest.replace('Small study', ''), 'left-empty', '2:1'],
  ['a missing face', smallest.replace(/face.*\n/, ''), 'missing', '1:1'],
  ['a missing height', face('{ width: 500 mm }'), 'missing', '3:7'],
  ['a side of 21 m', face('{ width: 21 m, height: 400 mm }'), 'out-of-range', '3:16'],
  ['a side in kilograms', face('{ width: 500 kg, height: 400 mm }'), 'other-unit', '3:16'],
  ['a decimal comma', `${smallest.replace('bars: { stock: strip-19x38', 'bars:\n  { lip: "1,5 mm", stock: strip-19x38')}`, 'decimal-comma', '5:10'],
  ['a name of 201 characters', smallest.replace('Small study', 'x'.repeat(201)), 'bad-text', '2:7'],
  ['a name with control characters', smallest.replace('Small study', '"a\\u0007b"'), 'bad-text', '2:7'],
  ['a name that turns the writing round', smallest.replace('Small study', '"a\\u202eb"'), 'bad-text', '2:7'],
  ['half a ply', smallest.replace('lay: flat', 'lay: flat, plies: 1.5'), 'wrong-kind', '4:47'],
  ['five plies', smallest.replace('lay: flat', 'lay: flat, plies: 5'), 'out-of-range', '4:47'],
  ['a peak below the working pull', `${smallest}cloth: { pull: { working: 300 N/m, peak: 200 N/m } }\n`, 'peak-below-working', '5:42'],
  ['only x of a pull', `${smallest}cloth: { pull: { x: 300 N/m } }\n`, 'half-a-pull', '5:16'],
  ['two kinds of pull', `${smallest}cloth: { pull: { x: 300 N/m, y: 200 N/m, peak: 900 N/m } }\n`, 'two-kinds-of-pull', '5:16'],
  ['humidity turned round', `${smallest}room: { humidity: 60..35 % }\n`, 'turned-range', '5:19'],
  ['a board of a ply there is not', `${smallest}boards: [ { for: top, ply: 2, twist: 1 deg/m } ]\n`, 'ply-beyond-plies', '5:28'],
  ['a board twice', `${smallest}boards: [ { for: top, twist: 1 deg/m }, { for: top, twist: 2 deg/m } ]\n`, 'board-twice', '5:41'],
  ['a bow without its length', `${smallest}boards: [ { for: top, bow: 2 mm } ]\n`, 'bow-without-over', '5:28'],
  ['a crossbar at the edge', `${smallest}crossbars: [ { runs: upright, at: 0 } ]\n`, 'at-outside', '5:35'],
  ['a crossbar beyond the face', `${smallest}crossbars: [ { runs: upright, at: 3/2 } ]\n`, 'out-of-range', '5:35'],
  ['a crossbar 2 m across a face of 500 mm', `${smallest}crossbars: [ { runs: upright, at: 2 m } ]\n`, 'at-outside', '5:35'],
  ['a crossbar on the side bar', `${smallest}crossbars: [ { runs: upright, at: 40 mm } ]\n`, 'crossbar-on-bar', '5:35'],
  ['crossbars on one another', `${smallest}crossbars: [ { runs: upright, at: 1/2 }, { runs: upright, at: 260 mm } ]\n`, 'crossbars-overlap', '5:63'],
  ['a setback behind the bars', `${smallest}crossbars: [ { runs: upright, at: 1/2, setback: 19 mm } ]\n`, 'setback-too-deep', '5:49'],
  ['a brace longer than half the bar', `${smallest}corners: { brace: { kind: timber, leg: 200 mm } }\n`, 'leg-too-long', '5:40'],
  ['a brace longer than half of what the bars leave', `${smallest}corners: { brace: { kind: timber, leg: 190 mm } }\n`, 'leg-too-long', '5:40'],
  ['a brace inside the joint', `${smallest}corners: { brace: { kind: timber, leg: 60 mm } }\n`, 'leg-too-short', '5:40'],
  ['ply screws wanted and refused', `${smallest.replace('lay: flat', 'lay: edge, plies: 2, bond: screws')}ply-screws: none\n`, 'ply-screws-missing', '5:13'],
  ['two hooks of which there is one', `${smallest}hang: { by: two-hooks, hooks: 1 }\n`, 'one-of-two-hooks', '5:31'],
  ['a hanging point below the frame', `${smallest}hang: { drop: 400 mm }\n`, 'drop-too-deep', '5:15'],
  ['ply screws in bars that are only glued', `${smallest.replace('lay: flat', 'lay: flat, plies: 2, bond: glue')}ply-screws: { use: screw-6x32 }\n`, 'screws-without-bond', '5:1'],
  ['a nail where a screw belongs', `${smallest.replace('lay: flat', 'lay: flat, plies: 2')}ply-screws: { use: brad-18ga-25 }\n`, 'unknown-on-shelf', '5:20'],
];

describe('broken plans', () => {
  it.each(broken)('%s', (_, text, code, place) => {
    const started = performance.now();
    const found = errors(text);
    expect(performance.now() - started).toBeLessThan(5000);
    expect(found.map((problem) => `${problem.code} ${problem.line}:${problem.column}`)).toContain(`${code} ${place}`);
    for (const problem of found) {
      expect(problem.file).toBe('plan.yaml');
      for (const words of [problem.found, problem.allowed, problem.hint]) expect(words).not.toMatch(/undefined|\[object|^$|[\u0000-\u0008]/);
    }
    expect(new Set(found.map((problem) => `${problem.code} ${problem.path} ${problem.line}:${problem.column}`)).size).toBe(found.length);
    expect(showProblems(found)).not.toMatch(/\n\s+at |Error:/);
  });
});

describe('all problems at once', () => {
  const text = [
    'plan: 1', 'name: Many slips', 'face: { width: 900, height: 700 mm }', 'bars: { stock: strp-19x38, lay: flatt, bnd: glue }', 'crossbars:', '  - { runs: upright, at: 1/2, stok: strip-19x38 }', '  - { runs: sideways }',
    'corners: { glue: pvc, brace: { kind: timbr, leg: 2 N } }', 'cloth: { use: cotton-duck-304, pull: { workng: 3 } }', 'count: 900', '',
  ].join('\n');
  const found = errors(text);

  it('finds each with its line and column, shelf names among them, in the order of the file', () => {
    expect(found.map(({ code, path, line, column }) => `${line}:${column} ${code} ${path}`)).toEqual([
      '3:16 no-unit face.width', '4:16 unknown-on-shelf bars.stock', '4:33 not-one-of bars.lay', '4:40 unknown-key bars.bnd',
      '6:31 unknown-key crossbars[0].stok', '7:13 not-one-of crossbars[1].runs', '8:18 unknown-on-shelf corners.glue', '8:38 not-one-of corners.brace.kind', '8:50 other-unit corners.brace.leg',
      '9:15 unknown-on-shelf cloth.use', '9:40 unknown-key cloth.pull.workng', '10:8 out-of-range count',
    ]);
  });

  it('names the nearest thing there is', () => {
    const hints = new Map(found.map(({ path, hint }) => [path, hint]));
    for (const [path, name] of [['bars.stock', 'strip-19x38'], ['bars.lay', 'flat'], ['bars.bnd', 'bond'], ['crossbars[0].stok', 'stock'], ['corners.glue', 'pva'], ['corners.brace.kind', 'timber'], ['cloth.use', 'cotton-duck-340'], ['cloth.pull.workng', 'working']] as const)
      expect(hints.get(path)).toBe(`Did you mean \`${name}\`?`);
  });

  it('stops counting at forty', () => {
    const flood = errors(`${smallest}${Array.from({ length: 100 }, (_, i) => `k${i}: 1`).join('\n')}\n`);
    expect(flood).toHaveLength(41);
    expect(flood.at(-1)?.found).toBe('60 more problems');
  });
});

describe('places', () => {
  it('survive a byte order mark and Windows line ends', () => {
    const [problem] = errors(`\ufeff${smallest.replace('flat', 'flt')}`.replace(/\n/g, '\r\n'));
    expect(problem).toMatchObject({ line: 4, column: 34, excerpt: 'bars: { stock: strip-19x38, lay: flt }' });
  });

  it('lead through aliases to where the value stands', () => {
    const [problem] = errors(`${smallest.replace('{ stock: strip-19x38, lay: flat }', '{ stock: strip-19x38, lay: &l flt }')}crossbars: [ { runs: upright, lay: *l } ]\n`);
    expect(problem).toMatchObject({ line: 4, column: 37 });
  });

  it('stand under a caret on the terminal', () => {
    const shown = showProblems(errors(smallest.replace('flat', 'flt')));
    expect(shown).toBe(['plan.yaml:4:34 error bars.lay: found `flt`; allowed: `flat` or `edge`.', '    bars: { stock: strip-19x38, lay: flt }', '                                     ^', '    Did you mean `flat`?'].join('\n'));
  });
});

describe('warnings travel with the plan', () => {
  const warnings = (text: string): readonly string[] => {
    const result = readPlanWith(text, 'plan.yaml', shelf);
    return result.ok ? result.warnings.map(({ code, severity }) => `${severity} ${code}`) : ['refused'];
  };
  it.each([
    ['ply screws on one ply', `${smallest}ply-screws: { use: screw-6x32 }\n`, 'screws-without-plies'],
    ['a wire above the frame', `${smallest}hang: { drop: 50 mm, slack: 60 mm }\n`, 'wire-above-frame'],
    ['a crossbar behind the bars', `${smallest}crossbars: [ { runs: upright, stock: square-38x38, lay: flat, setback: 3 mm } ]\n`, 'crossbar-stands-out'],
    ['a crossbar in the way of a brace', `${smallest}crossbars: [ { runs: upright, at: 1/4 } ]\ncorners: { brace: { leg: 120 mm } }\n`, 'brace-meets-crossbar'],
  ])('%s', (_, text, code) => {
    expect(warnings(text)).toEqual([`warning ${code}`]);
  });
});

describe('a slip of the pen is told with what to write instead', () => {
  test.each([
    ['a comma for the decimals', face('{ width: 47,5 cm, height: 35 cm }'), 'write a point for the decimals'],
    ['no space after a colon', face('{ width:500 mm, height: 400 mm }'), 'Put a space after the colon.'],
    ['a name of figures', smallest.replace('Small study', '01'), 'Put it in quotes'],
    ['one value for two', face('500 x 400 mm'), '`face: { width: 900 mm, height: 650 mm }`'],
    ['a price with its currency', `${smallest}spend: { limit: 60 EUR }\n`, 'Write the number alone.'],
    ['half a board', smallest.replace('lay: flat', 'lay: flat, plies: 2.5'), 'Write a whole number'],
    ['a brace in one word', `${smallest}corners: { brace: steel }\n`, '`brace: { kind: timber, leg: 200 mm }`'],
    ['a list that is a block', `${smallest}crossbars: { runs: upright, at: 1/2 }\n`, '`crossbars: [ { runs: upright, at: 1/2 } ]`'],
    ['a brace left open', smallest.replace('400 mm }', '400 mm'), 'Close it with `}`'],
    ['a comma left out', face('{ width: 500 mm height: 400 mm }'), 'put a comma after each value'],
    ['two keys on a line', face('width: 500 mm'), 'Give each key a line of its own'],
    ['a bracket too many', face('{ width: 500 mm, height: 400 mm }}'), 'a closing bracket that nothing opened'],
    ['a quotation mark left open', smallest.replace('Small study', '"Small study'), 'a quotation mark further up that is never closed'],
  ])('%s', (_, text, words) => {
    expect(errors(text).map(({ found, hint }) => `${found} ${hint}`).join('\n')).toContain(words);
  });

  test('the examples in the hints read as plans do', () => {
    for (const text of ['bars: { stock: strip-19x38, lay: flat }', 'crossbars: [ { runs: upright, at: 1/2 } ]', 'corners: { cut: mitre, glue: pva }', 'ground: { coats: 2 }', 'spend: { limit: 60 }', 'door: { width: 760 mm, height: 1980 mm }', 'hang: { by: two-hooks }', 'room: { humidity: 35..60 % }', 'lumber: { chosen: plain, moisture: 12 % }', 'cloth: { use: cotton-duck-340 }']) {
      const [key] = text.split(':');
      const place = `plan.yaml:1 ${key}`;
      const said = errors(key === 'bars' ? smallest.replace(/bars:.*/u, 'bars: x') : `${smallest}${key}: x\n`).map(({ hint }) => hint).join(' ');
      expect(said, place).toContain(text);
      const plan = key === 'bars' ? smallest.replace(/bars:.*/u, text) : `${smallest}${text}\n`;
      expect(readPlanWith(plan, 'plan.yaml', shelf), place).toMatchObject({ ok: true });
    }
  });
});
