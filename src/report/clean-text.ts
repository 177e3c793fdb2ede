/** Letters, figures and signs of common text, single spaces between them: nothing in it needs cleaning. */
const usual = /^(?: ?[!-~¡-¬®-ʯ–—‘’“”…×−●▲◆✕■□←→])* ?$/u;

/**
 * Text that is safe to put on one line of any document: no line breaks, control characters, bidi overrides or broken
 * characters.
 * Runs of white space become one space; leading and trailing spaces stay, so pieces of a sentence can be joined.
 * Of invisible format characters, bidi overrides among them, the two joiners that scripts and emoji need stay.
 */
export function cleanText(text: string): string {
  if (usual.test(text)) return text;
  return text
    .replace(/\p{Surrogate}/gu, '\uFFFD')
    .replace(/\p{Noncharacter_Code_Point}/gu, '\uFFFD')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')
    .replace(/(?![\u200C\u200D])\p{Cf}/gu, '')
    .replace(/\s+/gu, ' ');
}

/**
 * A person's own words (the plan's name, a stock key …), cleaned, trimmed and shortened to at most `most` characters;
 * `(no name)` when nothing is left.
 */
export function userText(text: string, most = 80): string {
  const characters = [...cleanText(text).trim()];
  if (characters.length === 0) return '(no name)';
  return characters.length <= most ? characters.join('') : `${characters.slice(0, most - 1).join('')}…`;
}
