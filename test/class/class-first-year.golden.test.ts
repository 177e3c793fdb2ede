import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, root } from '../cli/command.js';

/** An alarm, no proof: the example class comes out as it is kept. After a change that is meant, `npm run examples` makes it anew. */
describe('the example class', () => {
  it('is what the command makes of its plans, page by page', () => {
    const kept = join(root, 'reports', 'class-first-year');
    const here = folder();
    const { code } = here.run('audit', join(root, 'reports/class-first-year/plans'), '--rules', 'class-first-year', '--out', '.');
    expect(code).toBe(3);
    const names = readdirSync(kept, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name).slice(kept.length + 1)).filter((name) => !name.startsWith('plans/')).sort();
    expect(here.files()).toEqual(names);
    for (const name of names) expect(readFileSync(join(here.path, name), 'utf8'), `${name} is not what the command makes now: npm run examples`).toBe(readFileSync(join(kept, name), 'utf8'));
  });
});
