import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { digest, fingerprint } from '../../src/base/digest.js';

/** FIPS 180-4, examples of SHA-256 published by NIST: one block, and two blocks. */
const published: readonly (readonly [text: string, digest: string])[] = [
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
];

describe('the digest', () => {
  test.each(published)('of %s is the published one', (text, wanted) => expect(digest(text)).toBe(wanted));

  test('of any text is what Node makes of its UTF-8', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
      expect(digest(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
      expect(fingerprint(text)).toBe(digest(text).slice(0, 8));
    }), { numRuns: 50 });
  });
});
