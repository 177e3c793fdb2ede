/** The same words with a capital letter first. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
