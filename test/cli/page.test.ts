import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mostPage_bytes, sentAs_bytes } from '../bench/page-size.js';
import { folder } from './command.js';

describe('the page in one file', () => {
  it('stays within its budget', () => {
    const here = folder();
    expect(here.run('page', '--out', 'page.html').code).toBe(0);
    expect(sentAs_bytes(join(here.path, 'page.html'))).toBeLessThanOrEqual(mostPage_bytes);
  });

  it.each([
    ['--plan', 'plan: 2\n'],
    ['--shelf', 'shelf: 2\n'],
    ['--rules', 'ruleset: 2\n'],
  ])('is not written with a file that cannot be read as %s', (option, text) => {
    const here = folder();
    here.write('broken.yaml', text);
    const { code, err } = here.run('page', option, 'broken.yaml', '--out', 'page.html');
    expect(code).toBe(1);
    expect(err).toContain('broken.yaml:1:');
    expect(here.files()).toEqual(['broken.yaml']);
  });
});
