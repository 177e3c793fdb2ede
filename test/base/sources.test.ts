import { describe, expect, it } from 'vitest';
import { readSources } from '../../src/base/sources.js';
import { fileText } from '../plan/shelf-for-tests.js';

const sources = readSources(fileText('rules/sources.yaml'));

describe('the bibliography', () => {
  it('has the kinds of number that no book stands behind', () => {
    const statuses = Object.fromEntries(sources.map(({ key, status }) => [key, status]));
    expect(statuses).toMatchObject({ practice: 'practice', proposal: 'proposal', measured: 'measured', invented: 'proposal', physics: 'derived' });
  });

  it('says what every entry is good for', () => {
    expect(sources.length).toBeGreaterThan(40);
    for (const { key, title, note } of sources) expect(`${key}: ${title} ${note}`).toMatch(/^[a-z0-9-]+: .{15,}/);
  });

  it('keeps recalled figures of a book apart from those read', () => {
    for (const { key, status } of sources) if (key.endsWith('-memory')) expect(status).toBe('memory');
    const keys = sources.map(({ key }) => key);
    for (const key of ['nds-2018', 'wood-handbook-2010', 'en1995-1-1', 'en338-2016', 'ps20', 'niosh-94-110', 'rayleigh', 'korotkin-added-mass', 'stevens-johnston-1960']) expect(keys).toContain(key);
  });

  it.each([['list: [ { key: a, title: Some title } ]', 'a needs'], ['list: [ { key: a, title: T, status: seen }, { key: a, title: T, status: seen } ]', 'twice'], ['sources: 1', 'no `list:`']])('throws on %s', (text, message) => {
    expect(() => readSources(text)).toThrow(message);
  });
});
