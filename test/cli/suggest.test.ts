import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from './command.js';

/** Measured boards keep the space small: stock and plies stay. */
const plan = `# Door panel, second try
plan: 1
name: Door panel
face: { width: 1050 mm, height: 880 mm }   # as the hall door
bars: { stock: planed-21x45, lay: flat }
lumber: { moisture: 15 % } # damp still
boards: [ { for: top, twist: 0.6 deg/m } ]
hang: { by: none }
`;

describe('suggest', () => {
  it('prints plans without a stop, writes the picked one with comments kept after showing the difference, and never over a file', () => {
    const here = folder();
    here.write('door.yaml', plan);
    const first = here.run('suggest', 'door.yaml', '--samples', '200', '--write', 'better.yaml', '--pick', 'least-change');
    expect({ code: first.code, err: first.err }).toEqual({ code: 0, err: '' });
    expect(first.out).toMatch(/^Door panel: plans that are without a stop\.$/m);
    expect(first.out).toContain('+++ better.yaml');
    expect(first.out.indexOf('+++ better.yaml')).toBeLessThan(first.out.indexOf('Written: better.yaml'));
    expect(first.out).toMatch(/^The search was complete: none of \d+ plans that will do costs less, weighs less or changes less\.$/mu);
    for (const told of ['What was looked through:', 'Most often in the way', 'had to be worked out']) expect(first.out).not.toContain(told);
    const whole = here.run('suggest', 'door.yaml', '--samples', '200', '--verbose').out;
    for (const told of ['What was looked through:', 'had to be worked out']) expect(whole).toContain(told);
    const written = readFileSync(join(here.path, 'better.yaml'), 'utf8');
    for (const kept of ['# Door panel, second try', 'face: { width: 1050 mm, height: 880 mm }   # as the hall door']) expect(written).toContain(kept);
    expect(written).not.toBe(plan);
    const audited = here.run('audit', 'better.yaml', '--format', 'json', '--samples', '200');
    expect([0, 2]).toContain(audited.code);
    const again = here.run('suggest', 'door.yaml', '--samples', '200', '--write', 'better.yaml');
    expect(again.code).toBe(1);
    expect(again.err).toContain('better.yaml');
    expect(readFileSync(join(here.path, 'better.yaml'), 'utf8')).toBe(written);
  });

  it('json: one suggest/1 document', () => {
    const here = folder();
    here.write('door.yaml', plan);
    const { code, out } = here.run('suggest', 'door.yaml', '--clear', '--samples', '200', '--format', 'json');
    expect(code).toBe(0);
    const document = JSON.parse(out) as { readonly format: string; readonly wish: string; readonly found: readonly { readonly verdict: string; readonly changes: readonly string[] }[]; readonly tried: { readonly candidates: number } };
    expect(document).toMatchObject({ format: 'suggest/1', wish: 'clear' });
    expect(document.found.length).toBeGreaterThan(0);
    expect(document.found.map(({ verdict }) => verdict)).toEqual(document.found.map(() => 'clear'));
    expect(document.tried.candidates).toBeGreaterThan(100);
    expect(here.files()).toEqual(['door.yaml']);
  });

  it('nothing found: exit 2, and what stands in the way; a plan that cannot be read: exit 1', () => {
    const here = folder();
    here.write('wide.yaml', plan.replace('1050 mm', '2300 mm').replace('880 mm', '2200 mm'));
    const none = here.run('suggest', 'wide.yaml', '--samples', '200', '--write', 'wide-2.yaml');
    expect(none.code).toBe(2);
    expect(none.out).toContain('cloth/roll');
    here.write('broken.yaml', plan.replace('flat', 'sideways'));
    expect(here.run('suggest', 'broken.yaml').code).toBe(1);
    expect(here.run('suggest', 'missing.yaml').code).toBe(1);
    expect(here.files()).toEqual(['broken.yaml', 'wide.yaml']);
  });
});
