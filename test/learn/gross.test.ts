import { describe, expect, test } from 'vitest';
import { grossReadings, nextReading } from '../../src/learn/gross.js';
import { gatherEvidence } from '../../src/learn/evidence.js';
import { learn, learnedData, type Learned } from '../../src/learn/learn.js';
import { believe, learnFrom } from '../../src/learn/nig.js';
import { composeLearnPage } from '../../src/learn/page.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { answers, asPromised, Chance, planTexts, shelf, studioYear } from './invented-studio.js';

/** A frame so wide, of boards taken as they come, that a lift of 17 mm is nothing odd. */
const wide = { file: 'wide.yaml', text: 'plan: 1\nname: wide\ncount: 9\nface: { width: 1450 mm, height: 1150 mm }\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: unsorted }\n' };

const sheet = (frame: number, lines: string, plan = 'oblong') => ({ file: `s${frame}.yaml`, text: `sheet: 1\nplan: ${plan}\nframe: ${frame}\nwhen: before-cloth\n${lines}\n` });
const pageOf = (found: ReturnType<typeof learn>): string => writeMarkdown(composeLearnPage(found, shelf, { date: null, written: null }).tree);

describe('a lost decimal point', () => {
  test('17 mm and 170 mm in one series of lifts: the large one is asked about, counts, and the numbers stand with and without it', () => {
    const lifts = [17, 12, 170, 9, 4, 14];
    const [found, right] = [lifts, lifts.map((mm) => (mm === 170 ? 17 : mm))].map((all) => learn([wide, ...all.map((mm, i) => sheet(i + 1, `corner-lift: ${mm} mm`, 'wide'))], shelf));
    expect(found!.outliers.map(({ measured }) => measured)).toEqual([170]);
    expect(right!.outliers).toEqual([]);
    const spread = (entries: Learned['entries']): number => entries.find(({ what, of }) => what === 'twist' && of === 'spread')!.posterior.mean;
    expect(spread(found!.entries)).toBeGreaterThan(2 * spread(right!.entries));
    expect(spread(found!.without_outliers!)).toBeLessThan(1.2 * spread(right!.entries));
    const page = pageOf(found!);
    expect(page).toContain('170 mm');
    expect(page).toContain('Without the readings asked about');
    expect(page).toMatch(/## What to do now\n\n1\. Look again at 1 reading /u);
    expect(found!.departures.some(({ alarm }) => alarm)).toBe(true);
    expect(page).toContain('without them it is no more than luck');
    expect(page).toContain(`${spread(found!.without_outliers!).toFixed(2)} °/m`);
  });

  test('a board of 17 deg/m among boards of 1.7: asked about by its odds, counts, and the numbers stand with and without it', () => {
    const twists = [0.6, -1.7, 0.9, 17, -0.4, 1.2, -0.8, 1.7];
    const withTwists = (all: readonly number[]) => learn([...planTexts, ...all.map((twist, i) => sheet(i + 1, `boards: [ { for: left, mark: M${i}, twist: ${twist} deg/m } ]`))], shelf);
    const [found, right] = [withTwists(twists), withTwists(twists.map((one) => (one === 17 ? 1.7 : one)))];
    expect(right.gross).toEqual([]);
    expect(found.gross).toHaveLength(1);
    expect(found.gross[0]).toMatchObject({ file: 's4.yaml', for: 'left', ply: 1, kind: 'twist' });
    expect(found.gross[0]!.odds).toBeGreaterThan(20);
    const spread = (entries: Learned['entries']): number => entries.find(({ what, of }) => what === 'twist' && of === 'spread')!.posterior.mean;
    expect(spread(found.entries)).toBeGreaterThan(2 * spread(right.entries));
    expect(Math.abs(spread(found.without_outliers!) / spread(right.entries) - 1)).toBeLessThan(0.15);
    expect(pageOf(found)).toMatch(/s4\.yaml, frame 4 of “oblong”: the board for left, ply 1, is said to have twist 17\.00 °\/m/u);
    expect(learnedData(found)).toMatchObject({ gross_readings: [{ file: 's4.yaml', for: 'left' }] });
  });

  test('honest boards are hardly ever asked about: fewer than one reading in two hundred', () => {
    let [asked, all] = [0, 0];
    for (let seed = 0; seed < 12; seed++) {
      const { frames } = studioYear(9, asPromised, new Chance(300 + seed));
      const evidence = gatherEvidence(frames.flatMap((frame) => { const answer = answers.get(frame.plan.name); return answer == null ? [] : [{ ...frame, answer }]; }));
      asked += grossReadings(evidence).length;
      all += [...evidence.spreads.values()].reduce((sum, { boards }) => sum + boards.length, 0);
    }
    expect(all).toBeGreaterThan(200);
    expect(asked).toBeLessThanOrEqual(all / 200);
  });
});

test('the density of the next reading holds one in all, and its standard deviation is its own', () => {
  for (const fixed of [false, true]) {
    const next = nextReading(learnFrom(believe(0.3, 1.2), [0.4, 1.9, -0.7], fixed), fixed);
    const step = 0.01;
    let [whole, squared] = [0, 0];
    for (let x = -400; x < 400; x += step) {
      const share = next.density(x + step / 2) * step;
      whole += share;
      squared += share * (x + step / 2 - next.mean) ** 2;
    }
    expect(whole).toBeCloseTo(1, 5);
    expect(Math.sqrt(squared)).toBeCloseTo(next.sd, 2);
  }
});
