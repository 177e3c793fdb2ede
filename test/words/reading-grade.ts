/** Syllables of an English word by its vowels in a row, less a silent e; numbers are read as one. An estimate, as usual for such counts. */
function syllables(word: string): number {
  if (/\d/u.test(word)) return 1;
  const lower = word.toLowerCase().replace(/[^a-z]/gu, '');
  const groups = lower.replace(/(?:[^laeiouy]es|[^dt]ed|[^l]e)$/u, (end) => end.charAt(0)).match(/[aeiouy]+/gu);
  return Math.max(1, groups?.length ?? 1);
}

/**
 * The Flesch-Kincaid grade: the year of school at which a text reads easily, 0.39 words/sentence + 11.8 syllables/word - 15.59.
 * Source: Kincaid, Fishburne, Rogers and Chissom, Derivation of New Readability Formulas, Research Branch Report 8-75, 1975.
 */
export function readingGrade(text: string): number {
  const sentences = text.split(/[.!?]+(?=\s|$)/u).filter((part) => /\w/u.test(part)).length;
  const words = text.split(/[\s–—]+/u).filter((word) => /[A-Za-z\d]/u.test(word));
  return (0.39 * words.length) / Math.max(1, sentences) + (11.8 * words.reduce((sum, word) => sum + syllables(word), 0)) / Math.max(1, words.length) - 15.59;
}

/** The middle one. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN) + (sorted[Math.ceil((sorted.length - 1) / 2)] ?? NaN)) / 2;
};
