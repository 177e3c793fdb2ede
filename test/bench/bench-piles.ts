import { normalDeviates } from '../../src/risk/normal-deviates.js';

/** Pieces and boards of a placing that is timed. */
export interface Size {
  readonly pieces: number;
  readonly boards: number;
}

/** Ten sizes, from one for one to more boards than any rack holds; the one that the budget names is the last but one. */
export const sizes: readonly Size[] = [[4, 4], [4, 8], [4, 16], [6, 8], [6, 12], [8, 8], [8, 16], [12, 12], [12, 20], [16, 24]].map(([pieces = 0, boards = 0]) => ({ pieces, boards }));

/** The size of the budget. */
export const budgeted: Size = { pieces: 12, boards: 20 };

/** Plies and crossbars that make so many pieces. */
const builds: Readonly<Record<number, { readonly plies: number; readonly crossbars: number }>> = { 4: { plies: 1, crossbars: 0 }, 6: { plies: 1, crossbars: 2 }, 8: { plies: 2, crossbars: 0 }, 12: { plies: 3, crossbars: 0 }, 16: { plies: 4, crossbars: 0 } };

/** An invented plan of so many pieces. */
export function planOfPieces(pieces: number): string {
  const { plies, crossbars } = builds[pieces] ?? { plies: 1, crossbars: 0 };
  const across = Array.from({ length: crossbars }, (_, i) => `  - { runs: ${i === 0 ? 'upright' : 'level'}, at: ${i === 0 ? '1/2' : '2/5'}, lay: flat }`);
  return ['plan: 1', `name: Bench of ${pieces}`, 'face: { width: 1000 mm, height: 760 mm }', `bars: { stock: strip-19x38, lay: edge, plies: ${plies} }`, ...(crossbars === 0 ? [] : ['crossbars:', ...across]), 'lumber: { chosen: unsorted, moisture: 9 % }', ''].join('\n');
}

/** Plans of twelve pieces whose proof is hard when every second board is unread: built of pairs with pairs across, of three flat plies, and of pairs with four flat crossbars. */
export const hardPlans: Readonly<Record<string, string>> = {
  'pairs, crossbars too': plan12('1600 mm', '1300 mm', 'lay: edge, plies: 2', ['upright, at: 1/2, lay: edge, plies: 2', 'level, at: 2/5, lay: edge, plies: 2']),
  'three flat plies': plan12('1000 mm', '760 mm', 'lay: flat, plies: 3', []),
  'pairs, four flat crossbars': plan12('1400 mm', '1000 mm', 'lay: edge, plies: 2', ['upright, at: 1/4, lay: flat', 'upright, at: 1/2, lay: flat', 'upright, at: 3/4, lay: flat', 'level, at: 2/5, lay: flat']),
};

function plan12(width: string, height: string, bars: string, across: readonly string[]): string {
  return ['plan: 1', 'name: Twelve pieces', `face: { width: ${width}, height: ${height} }`, `bars: { stock: strip-19x38, ${bars} }`, ...(across.length === 0 ? [] : ['crossbars:', ...across.map((one) => `  - { runs: ${one} }`)]), 'lumber: { chosen: unsorted, moisture: 9 % }', ''].join('\n');
}

/** An invented pile: twist, bow and crook drawn from a seed, so that it is the same everywhere; every board read, or every second one only. */
export function pileOfBoards(boards: number, read: 'all' | 'half' = 'all', seed = 11, shortest_mm = 1150): string {
  const draws = new Float64Array(3 * boards + ((3 * boards) % 2));
  normalDeviates(seed)(draws);
  const number = (i: number, sd: number): string => ((draws[i] as number) * sd).toFixed(4);
  const lines = Array.from({ length: boards }, (_, b) => `  - { mark: P${b + 1}, stock: strip-19x38, length: ${shortest_mm + 37 * (b % 5)} mm${read === 'half' && b % 2 === 1 ? '' : `, twist: ${number(3 * b, 1.2)} deg/m, bow: ${number(3 * b + 1, 0.004)} /m, crook: ${number(3 * b + 2, 0.002)} /m`} }`);
  return ['pile: 1', 'name: Bench', 'boards:', ...lines, ''].join('\n');
}
