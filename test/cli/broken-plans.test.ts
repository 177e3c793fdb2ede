import { describe, expect, it } from 'vitest';
import { brokenPlans } from './broken-plans.js';
import { folder, looksLikeABug, plan } from './command.js';

describe('plans that cannot be read', () => {
  it.each(brokenPlans)('$what: exit 1, the place named, no stack trace, nothing written', ({ text, place }) => {
    const here = folder();
    here.write('plan.yaml', text);
    const { code, out, err } = here.run('audit', 'plan.yaml');
    expect(code).toBe(1);
    expect(err).toContain(place === null ? 'plan.yaml error' : `plan.yaml:${place} error`);
    expect(err).not.toMatch(looksLikeABug);
    expect(out).toBe('');
    expect(here.files()).toEqual(['plan.yaml']);
  });

  it('are all listed with their places when audited as a class, and the sound one still gets its page', () => {
    const here = folder();
    const names = brokenPlans.map(({ text }, i) => here.write(`plans/broken-${String(i).padStart(2, '0')}.yaml`, text));
    here.write('plans/sound.yaml', plan('The sound one'));
    const { code, out, err } = here.run('audit', 'plans', '--out', 'pages');
    expect(code).toBe(1);
    expect(err).not.toMatch(looksLikeABug);
    brokenPlans.forEach(({ place }, i) => expect(err).toContain(place === null ? `${names[i]} error` : `${names[i]}:${place} error`));
    expect(out).toContain('The sound one');
    const written = here.files().filter((file) => file.startsWith('pages/'));
    expect(written).toContain('pages/sound/report.md');
    expect(written).toContain('pages/class.md');
    expect(written.filter((file) => file.includes('broken'))).toEqual([]);
  });

  it.each([['audit', 'gone.yaml'], ['cut', 'gone.yaml'], ['rules', 'compare', 'baseline', 'baseline', 'gone.yaml']])('%s says so when the file is not there', (...args) => {
    const here = folder();
    const { code, err } = here.run(...args);
    expect(code).toBe(1);
    expect(err).toContain('gone.yaml error found no such file');
    expect(err).not.toMatch(looksLikeABug);
    expect(here.files()).toEqual([]);
  });

  it('are refused as a whole by `cut`: half a buying list helps nobody', () => {
    const here = folder();
    here.write('sound.yaml', plan('Sound'));
    here.write('broken.yaml', 'plan: 2\n');
    const { code, out, err } = here.run('cut', 'sound.yaml', 'broken.yaml');
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toContain('broken.yaml:1:7 error');
    expect(here.files()).toEqual(['broken.yaml', 'sound.yaml']);
  });

  it('a folder without plans is said to be one', () => {
    const here = folder();
    here.write('notes/readme.txt', 'nothing here');
    const { code, err } = here.run('audit', 'notes');
    expect(code).toBe(1);
    expect(err).toContain('notes error found a folder without plans');
  });
});
