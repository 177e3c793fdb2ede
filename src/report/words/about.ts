import { barNames, cornerNames, spokenName, type About } from '../../base/names.js';
import { userText } from '../clean-text.js';

/**
 * An element as one says it: `left bar`, `top left corner`, `crossbar 1`, `whole frame`; what is one for a frame, such
 * as its cloth, is told as the whole.
 */
export function aboutInWords(about: About): string {
  if (about === 'frame' || about === 'cloth' || about === 'hanging' || about === 'cutting') return 'whole frame';
  if ((barNames as readonly string[]).includes(about)) return `${about} bar`;
  if ((cornerNames as readonly string[]).includes(about)) return `${spokenName(about)} corner`;
  return userText(about.replaceAll('-', ' '), 60);
}

/** Several elements in one line; all four bars or corners are said together. */
export function aboutsInWords(abouts: readonly About[]): string {
  const all = (names: readonly string[]): boolean =>
    names.length === abouts.length && names.every((name) => abouts.includes(name));
  if (all(barNames)) return 'all four bars';
  if (all(cornerNames)) return 'all four corners';
  return abouts.map(aboutInWords).join(', ');
}
