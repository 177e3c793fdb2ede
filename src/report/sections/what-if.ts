import { bullets } from '../tree.js';
import type { Section, Telling } from '../telling.js';

/** What small slips at the bench would do; null when nothing was worked out. */
export function whatIfSection({ audit }: Telling): Section | null {
  const sentences = audit.what_if ?? [];
  return sentences.length === 0 ? null : { title: 'What if I am a little off?', blocks: [bullets(sentences)], pictures: [] };
}
