/** The validation page is made from what the proofs note of their comparisons: a proof that notes nothing would be missing there unseen. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const folder = new URL('../validation/', import.meta.url);
const proofs = readdirSync(folder).filter((name) => name.endsWith('.test.ts') && !name.includes('.golden.'));

/** What notes a comparison, called in the proof itself. */
const notes = /\b(?:note|noteShare|expectShare|expectDecimals|expectWithin|expectRow|near)\(/u;

test('there are proofs', () => expect(proofs.length).toBeGreaterThan(20));

test.each(proofs)('%s notes its comparisons for the validation page, after the reference it opens with', (name) => {
  const text = readFileSync(new URL(name, folder), 'utf8');
  expect(text).toMatch(/^\/\*\*/u);
  expect(text).toMatch(notes);
});
