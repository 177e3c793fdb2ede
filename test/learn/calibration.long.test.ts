import { expect, test } from 'vitest';
import { chanceOfAtLeast, chiSquareShare } from '../../src/learn/chances.js';
import { learnFrames } from '../../src/learn/learn.js';
import { calibrate } from './calibration.js';
import { answers, asPromised, Chance, shelf, studioYear } from './invented-studio.js';

test('400 invented studios: ranks of the truths are even, and nine in ten of the bands hold them', () => {
  const found = calibrate(400, 12, 1000);
  expect(found.length).toBe(7);
  for (const { number, held, chi_square } of found) {
    process.stdout.write(`${number}: held ${(100 * held).toFixed(1)} %, chi-square ${chi_square.toFixed(1)} of 9\n`);
    expect(held, number).toBeGreaterThanOrEqual(0.86);
    expect(held, number).toBeLessThanOrEqual(0.94);
    expect(chiSquareShare(9, chi_square), number).toBeGreaterThan(0.01);
    expect(chiSquareShare(9, chi_square), number).toBeLessThan(0.99);
  }
}, 1_200_000);

test('a hundred years of frames exactly as promised raise a false alarm in no more of them than is said', () => {
  let alarms = 0;
  for (let i = 0; i < 100; i++) {
    const { departures } = learnFrames(studioYear(9, asPromised, new Chance(7000 + i)), shelf, undefined, new Map(answers));
    if (departures.some(({ alarm }) => alarm)) alarms++;
  }
  process.stdout.write(`${alarms} of 100 honest years raised an alarm\n`);
  expect(chanceOfAtLeast(100, alarms, 0.05)).toBeGreaterThan(0.05);
}, 1_200_000);
