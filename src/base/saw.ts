/** How pieces are cut: the best saw at hand, or `none` where a shop cuts them; nobody said: undefined. */
export type SawAtHand = 'mitre-box' | 'power' | 'hand' | 'none';
