import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText, userText } from '../../src/report/clean-text.js';
import { nastyText } from './nasty-text.js';

const forbidden = /[\p{Cc}\p{Zl}\p{Zp}\p{Surrogate}\p{Noncharacter_Code_Point}\u061C\u200B\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/u;

describe('clean text', () => {
  it('has no control, bidi, invisible or broken characters left, whatever comes in', () => {
    fc.assert(fc.property(fc.oneof(nastyText, fc.string({ unit: 'binary' })), (text) => {
      expect(cleanText(text)).not.toMatch(forbidden);
    }), { numRuns: 500 });
  });

  it('is the same when cleaned again', () => {
    fc.assert(fc.property(nastyText, (text) => {
      expect(cleanText(cleanText(text))).toBe(cleanText(text));
    }));
  });

  it('keeps ordinary words of any script as they are, joiners of scripts and emoji too', () => {
    for (const words of ['Étude n° 3, “fjord”', 'می‌خواهم', '👩‍🎨', '油彩', 'x < y & z | w']) expect(cleanText(words)).toBe(words);
  });

  it('turns what comes from a person into one line of at most the length asked for, never empty', () => {
    fc.assert(fc.property(nastyText, fc.integer({ min: 1, max: 30 }), (text, most) => {
      const words = userText(text, most);
      expect(words.trim()).not.toBe('');
      expect([...words].length).toBeLessThanOrEqual(Math.max(most, '(no name)'.length));
    }));
  });
});
