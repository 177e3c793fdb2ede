import { describe, expect, it } from 'vitest';
import { forceInWords, pressureInWords, pullInWords } from '../../../src/report/words/force.js';

// Expected from exact definitions: 1 kgf = 9.80665 N, 1 lbf = 0.45359237 kgf, 1 ft = 0.3048 m, 1 in = 25.4 mm.
describe('forces one can feel', () => {
  it('a force as a weight', () => {
    expect(forceInWords(9.80665 * 8, 'metric')).toBe('78 N (the weight of 8 kg)');
    expect(forceInWords(9.80665 * 0.45359237 * 14, 'inch')).toBe('14 lbf (the weight of 14 lb)');
  });

  it('a pull as a weight along the edge', () => {
    expect(pullInWords(9.80665 * 20, 'metric')).toBe('as if 20 kg hung on each metre of edge');
    expect(pullInWords((9.80665 * 0.45359237 * 14) / 0.3048, 'inch')).toBe('as if 14 lb hung on each foot of edge');
  });

  it('a pressure as a weight on a small square', () => {
    expect(pressureInWords((9.80665 * 7) / 100, (9.80665 * 10) / 100, 'metric')).toBe('7 to 10 kg on each square centimetre');
    expect(pressureInWords((100 * 9.80665 * 0.45359237) / 25.4 ** 2, (150 * 9.80665 * 0.45359237) / 25.4 ** 2, 'inch')).toBe('100 to 150 lb on each square inch');
  });
});
