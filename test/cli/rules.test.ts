import { describe, expect, it } from 'vitest';
import { folder, looksLikeABug, plan } from './command.js';

const overlay = (limits: string, rules = ''): string => `ruleset: 1\nname: Our own\nbuilds-on: [ baseline ]\nlimits:\n${limits}${rules}`;

describe('rules check', () => {
  it.each(['baseline', 'class-first-year', 'class-advanced'])('%s, as shipped, has no errors', (name) => {
    const { code, out } = folder().run('rules', 'check', name);
    expect(out).toMatch(/\d+ rules, \d+ limits, \d+ examples tried; 0 errors/);
    expect(code).toBe(0);
  });

  it('shows every problem with its line and column: exit 1', () => {
    const here = folder();
    here.write('own.yaml', overlay('  inward-bow: { value: 1/400, of: bar.spam_mm, source: proposal }\n  moisture-gap: { value: 3 kg, source: proposal }\n'));
    const { code, err, out } = here.run('rules', 'check', 'own.yaml');
    expect(code).toBe(1);
    expect(err).toContain('own.yaml:5:');
    expect(err).toContain('own.yaml:6:');
    expect(err).not.toMatch(looksLikeABug);
    expect(out).toContain('own.yaml: does not load');
  });

  it('tries examples and finds limits that nothing uses', () => {
    const here = folder();
    here.write('own.yaml', overlay('  our-limit: { value: 3, source: practice }\n', 'rules:\n  - id: own/crossbars\n    each: frame\n    require: { fact: frame.crossbars_count, at-most: 1 }\n    otherwise: caution\n    say: "{actual} crossbars; {limit} is the most."\n    do: [ "Leave one out." ]\n    source: practice\n    examples: { clear: 2, edge: 1, fails: 3 }\n'));
    const { code, err } = here.run('rules', 'check', 'own.yaml');
    expect(code).toBe(1);
    expect(err).toContain('our-limit');
    expect(err).toMatch(/own\/crossbars: the example `clear` is caution/);
  });

  it('a misspelt ruleset in one’s own file is told its neighbour, where it stands, by check and audit alike', () => {
    const here = folder();
    here.write('own.yaml', 'ruleset: 1\nname: Our own\nbuilds-on: [ basline ]\n');
    here.write('plan.yaml', plan('Slack water'));
    for (const command of [['rules', 'check', 'own.yaml'], ['audit', 'plan.yaml', '--rules', 'own.yaml']]) {
      const { code, err } = here.run(...command);
      expect(code).toBe(1);
      expect(err).toMatch(/own\.yaml:3:14 error[\s\S]*Did you mean `baseline`\?/);
    }
  });

  it('a file that is not there: exit 1', () => {
    const { code, err } = folder().run('rules', 'check', 'gone.yaml');
    expect(code).toBe(1);
    expect(err).toContain('gone.yaml error found no such file');
  });
});

describe('rules compare on a folder', () => {
  it('compares the plans that read, says how many do not, and ends with an input error', () => {
    const here = folder();
    here.write('plans/good.yaml', plan('Good one'));
    here.write('plans/bad.yaml', 'plan: 1\nname: Bad\n');
    here.write('plans/sheet.yaml', 'sheet: 1\nplan: Good one\n');
    const { code, out, err } = here.run('rules', 'compare', 'baseline', 'class-first-year', 'plans');
    expect(code).toBe(1);
    expect(out).toContain('Good one:');
    expect(out).toContain('Not compared, because it could not be read: 1 file.');
    expect(err).toContain('plans/bad.yaml');
  });
});

describe('rules show and facts', () => {
  it('a rule as a page with its limit, source and history of overlays', () => {
    const here = folder();
    here.write('own.yaml', overlay('  inward-bow: { value: 1/300, of: bar.span_mm, source: practice }\n'));
    const { code, out } = here.run('rules', 'show', 'bars/inward-bow', '--rules', 'own.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(/^# bars\/inward-bow/);
    expect(out).toContain('Studio baseline (baseline.yaml): 1/400 of bar.span_mm');
    expect(out).toContain('Our own (own.yaml): 1/300 of bar.span_mm');
  });

  it('without an id all rules; a mistyped id names the nearest: exit 1', () => {
    const here = folder();
    const list = here.run('rules', 'show');
    expect(list.code).toBe(0);
    expect(list.out).toContain('bars/inward-bow\n');
    const wrong = here.run('rules', 'show', 'bars/inward-bows');
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain('did you mean bars/inward-bow?');
  });

  it('facts: the whole catalogue or those with a word in them, as text or JSON', () => {
    const here = folder();
    const all = JSON.parse(here.run('rules', 'facts', '--format', 'json').out) as { readonly format: string; readonly facts: readonly { readonly path: string }[] };
    expect(all.format).toBe('facts/1');
    for (const path of ['bar.inward_bow_mm', 'frame.twist_reserve', 'warp.corner_lift_chance', 'cutting.cost']) expect(all.facts.map((fact) => fact.path)).toContain(path);
    const some = here.run('rules', 'facts', 'twist_reserve').out;
    // Each fact in a line, its meaning in the next.
    expect(some).toMatch(/^frame\.twist_reserve {2}\(.*\)\n {4}[A-Z].*\.\n/mu);
    expect(some).not.toContain('cutting.cost');
    expect(here.run('rules', 'facts', 'xylophone').code).toBe(2);
    expect(here.run('rules', 'facts', 'xylophone').out).toContain('No fact has “xylophone”');
  });
});

describe('rules compare', () => {
  it('an edited limit: which plans change, which rule, from what to what, and why', () => {
    const here = folder();
    here.write('small.yaml', plan('Small'));
    here.write('large.yaml', plan('Large', '{ width: 680 mm, height: 500 mm }'));
    here.write('own.yaml', 'ruleset: 1\nname: Smaller faces\nbuilds-on: [ class-first-year ]\nlimits:\n  class-face: { value: 600 mm, source: practice }\n');
    const { code, out, err } = here.run('rules', 'compare', 'class-first-year', 'own.yaml', 'small.yaml', 'large.yaml', '--samples', '500');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('1 of 2 plans gets another verdict');
    expect(out).toMatch(/^Small: still \w+, nothing changes$/m);
    expect(out).toMatch(/^Large: (?:clear|caution) → stop$/m);
    expect(out).toContain('class/small-face, the frame: clear → stop. The limit was 700 mm and is 600 mm');
  });

  it('the same rules twice change nothing', () => {
    const here = folder();
    here.write('small.yaml', plan('Small'));
    expect(here.run('rules', 'compare', 'baseline', 'baseline', 'small.yaml', '--samples', '500').out).toContain('0 of 1 plan');
  });

  it('new checks that are clear are counted, not listed', () => {
    const here = folder();
    here.write('small.yaml', plan('Small'));
    const { out } = here.run('rules', 'compare', 'baseline', 'class-first-year', 'small.yaml', '--samples', '500');
    expect(out).toMatch(/\d+ checks that are clear are new or no longer made\./);
    expect(out).not.toContain('nothing said → clear');
  });
});
