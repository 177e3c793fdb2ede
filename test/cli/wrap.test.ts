import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wrapLine } from '../../src/cli/wrap.js';
import { showProblem } from '../../src/base/show-problem.js';
import { problemAt } from '../../src/base/messages.js';

describe('a line at a terminal', () => {
  test('breaks between words, and what goes on hangs below its text', () => {
    expect(wrapLine('  ✕ The flat frame turns at 0.44 times the pull.', 24)).toEqual(['  ✕ The flat frame turns', '    at 0.44 times the', '    pull.']);
    expect(wrapLine('    - Glue a brace across.', 18)).toEqual(['    - Glue a brace', '      across.']);
  });

  test('keeps numbers with their units, and what is to be typed in one piece', () => {
    expect(wrapLine('One corner stands 31-11/16 in off the wall', 27)).toEqual(['One corner stands', '31-11/16 in off the wall']);
    expect(wrapLine('20 frames  →  learned/learn.md', 20)).toEqual(['20 frames', '→  learned/learn.md']);
    expect(wrapLine('Run `sightdown rules facts` to see', 16)).toEqual(['Run', '`sightdown rules facts`', 'to see']);
  });

  test('a command goes on by itself, and where even that is too long a shell can read on', () => {
    expect(wrapLine('  Next: sightdown suggest plans/banner.yaml', 40)).toEqual(['  Next:', '    sightdown suggest plans/banner.yaml']);
    expect(wrapLine('  Next: sightdown suggest plans/banner.yaml --clear', 42)).toEqual(['  Next:', '    sightdown suggest plans/banner.yaml \\', '      --clear']);
  });

  test('colours take no room', () => {
    expect(wrapLine('\u001b[1mNext: \u001b[22mtake a wider bar', 16)).toEqual(['\u001b[1mNext: \u001b[22mtake a', 'wider bar']);
  });

  test('no line is wider than it may be unless one word is, and nothing is lost', () => {
    fc.assert(fc.property(fc.array(fc.stringMatching(/^[a-z0-9.]{1,12}$/u), { minLength: 1, maxLength: 30 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 30, max: 90 }), (words, indent, width) => {
      const line = `${' '.repeat(indent)}${words.join(' ')}`;
      const lines = wrapLine(line, width);
      expect(lines.filter((one) => one.length > width && one.trim().includes(' ') && !/\d [a-z]/u.test(one))).toEqual([]);
      expect(lines.map((one) => one.trim()).join(' ')).toBe(line.trim());
      expect(lines.filter((one) => !one.startsWith(' '.repeat(indent)))).toEqual([]);
    }), { seed: 11, numRuns: 200 });
  });
});

test('the line of a file that is shown fits the terminal, with the caret under its place', () => {
  const excerpt = `${'a'.repeat(70)} lay: flta ${'b'.repeat(70)}`;
  const problem = problemAt('bad-text', { file: 'plan.yaml', path: 'bars.lay', line: 3, column: 77, excerpt }, { value: 'flta', allowed: '`flat` or `edge`', nearest: 'flat' });
  const same = (text: string): string => text;
  for (const width of [40, 60, 100]) {
    const lines = showProblem(problem, { strong: same, bad: same, mild: same, faint: same, width }).split('\n');
    expect(lines[1]!.length).toBeLessThanOrEqual(width);
    expect(lines[1]!.slice(lines[2]!.indexOf('^')).startsWith('flta')).toBe(true);
  }
});
