import { describe, expect, it } from 'vitest';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { folder, looksLikeABug, plan, type Folder } from './command.js';

const shelf = shippedShelf();

/** The lines between the rules: what a user copies. */
function pasted(out: string): readonly string[] {
  return [...out.matchAll(/^--------\n([\s\S]*?)\n--------$/gm)].map(([, lines]) => `${lines}\n`);
}

/** The shelf as it is after the user saved the pasted lines. */
function shelfWith(text: string | undefined) {
  const result = readShelf(text ?? '', 'own.yaml', shelf);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function measured(here: Folder, ...args: readonly string[]): string {
  const { code, out, err } = here.run('measure', ...args);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out;
}

describe('measure sag', () => {
  it('tells all that is wrong with its options in one round, a board that is not on the shelf as well', () => {
    const { code, err } = folder().run('measure', 'sag', '--stock', 'strip-19x39', '--span', '3', '--weight', 'x', '--sag', '2');
    expect(code).toBe(1);
    expect(err.split('\n').map((line) => line.split(':')[0])).toEqual(['--span', '--weight', '--sag', '--stock', 'Run with --help to see what is possible.', '']);
    expect(err).toContain('did you mean strip-19x38?');
  });

  // 5 kg in the middle of 1500 mm on a strip 38 wide and 19 high sinks 17.6 mm at 9000 MPa without shear: 49.03 N × 1500³ ÷ (48 × 21,720 mm⁴ × 9000 MPa)
  const sags = ['17.6 mm', '16 mm', '20 mm'] as const;

  it('several boards: the mean goes into a whole shelf entry that loads, named as measured, with the day', () => {
    const out = measured(folder(), 'sag', '--stock', 'strip-19x38', '--span', '1500 mm', '--weight', '5 kg', '--sag', ...sags, '--date', '2024-05-02');
    expect(out.match(/^Board \d$/gm)).toHaveLength(3);
    const [entry] = pasted(out);
    expect(entry).toMatch(/E: \d+ MPa # measured 2024-05-02, mean of 3 boards/);
    const own = shelfWith(entry);
    const I_mm4 = (38 * 19 ** 3) / 12;
    const mean_MPa = sags.map((sag) => (5 * 9.80665 * 1500 ** 3) / (48 * I_mm4 * Number.parseFloat(sag))).reduce((sum, E) => sum + E, 0) / 3;
    expect(own.lumber['strip-19x38']?.E_MPa).toBeGreaterThan(mean_MPa);
    expect(own.lumber['strip-19x38']?.E_MPa).toBeLessThan(mean_MPa * 1.01); // shear adds 0.3 % at this span
    expect(own.measured).toEqual(['lumber.strip-19x38.E']);
  });

  it('leaves everything else of the entry as the shelf has it, with its own sources', () => {
    const before = shelf.lumber['strip-19x38'];
    const own = shelfWith(pasted(measured(folder(), 'sag', '--stock', 'strip-19x38', '--span', '1500 mm', '--weight', '5 kg', '--sag', '17 mm'))[0]);
    const { E_MPa, source, ...rest } = own.lumber['strip-19x38'] as NonNullable<typeof before>;
    expect({ ...before, ...rest }).toEqual(before);
    for (const field of ['size', 'G', 'density', 'species', 'lengths', 'price']) expect(own.sources[`lumber.strip-19x38.${field}`], field).toBe(shelf.sources[`lumber.strip-19x38.${field}`]);
  });

  it('a kind of one’s own needs its size; the same board in inches gives the same stiffness', () => {
    const here = folder();
    const metric = shelfWith(pasted(measured(here, 'sag', '--stock', 'my-ash', '--size', '19.05 x 38.1 mm', '--span', '1524 mm', '--weight', '4535.9237 g', '--sag', '12.7 mm'))[0]);
    const inch = shelfWith(pasted(measured(here, 'sag', '--stock', 'my-ash', '--size', '3/4 x 1-1/2 in', '--span', '5 ft', '--weight', '10 lb', '--sag', '1/2 in'))[0]);
    expect(inch.lumber['my-ash']?.E_MPa).toBe(metric.lumber['my-ash']?.E_MPa);
    expect(inch.measured).toEqual(['lumber.my-ash.size', 'lumber.my-ash.E']);
    const { code, err } = here.run('measure', 'sag', '--stock', 'strip-19x83', '--span', '1500 mm', '--weight', '5 kg', '--sag', '17 mm');
    expect(code).toBe(1);
    expect(err).toContain('did you mean strip-19x38?');
  });
});

describe('measure twist', () => {
  it('one board: a line for the plan that loads, in degrees per metre', () => {
    const out = measured(folder(), 'twist', '--rise', '3 mm', '--width', '400 mm', '--length', '2000 mm', '--for', 'left');
    const result = readPlanWith(`${plan('Measured')}${pasted(out)[0] ?? ''}`, 'plan.yaml', shelf);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const [board] = result.value.boards;
    expect(board).toMatchObject({ for: 'left', ply: 1 });
    expect(board?.twist_rad_per_m).toBeCloseTo(Math.atan(3 / 400) / 2, 4);
  });

  it('several boards: their spread goes to the shelf, a negative rise turning the other way', () => {
    const out = measured(folder(), 'twist', '--rise', '3 mm', '-1 mm', '5 mm', '2 mm', '--width', '400 mm', '--length', '2000 mm', '--stock', 'strip-19x38', '--chosen', 'picked', '--date', '2024-05-02');
    const own = shelfWith(pasted(out)[0]);
    const rates = [3, -1, 5, 2].map((rise) => Math.atan(rise / 400) / 2);
    const mean = rates.reduce((sum, x) => sum + x, 0) / 4;
    const sd = Math.sqrt(rates.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 3);
    const { picked, plain } = own.lumber['strip-19x38']!.spread;
    expect(picked.twist_rad_per_m.mean).toBeCloseTo(mean, 4);
    expect(picked.twist_rad_per_m.sd).toBeCloseTo(sd, 4);
    expect(picked.bow_per_m).toEqual(shelf.spread.picked.bow_per_m);
    expect(plain).toEqual(shelf.lumber['strip-19x38']!.spread.plain);
    expect(own.measured).toEqual(['lumber.strip-19x38.spread']);
    expect(out).toContain('# measured 2024-05-02, twist of 4 boards');
  });

  it('says which bars were named wrongly', () => {
    const here = folder();
    const run = (...bars: readonly string[]) => here.run('measure', 'twist', '--rise', '3 mm', '2 mm', '--width', '400 mm', '--length', '2 m', '--for', ...bars);
    expect(run('left').err).toContain('--for names 1 of 2 boards');
    expect(run('left', 'left').err).toContain('names a bar twice');
    expect(run('left', 'middle').err).toContain('found `middle`');
  });
});

describe('measure spread', () => {
  it('twist and bow of several boards: mean and standard deviation as computed by hand', () => {
    const out = measured(folder(), 'spread', '--stock', 'my-pine', '--size', '20 x 40 mm', '--twist', '0.4 deg/m', '1.1 deg/m', '-0.2 deg/m', '--bow', '3 mm', '5 mm', '1 mm', '--over', '2400 mm', '--date', '2024-05-02');
    const { spread } = shelfWith(pasted(out)[0]).lumber['my-pine']!;
    // mean (0.4 + 1.1 − 0.2) / 3 = 0.4333; deviations −0.0333, 0.6667, −0.6333; sd √(0.8467 / 2) = 0.6506
    expect((spread.plain.twist_rad_per_m.mean * 180) / Math.PI).toBeCloseTo(0.4333, 3);
    expect((spread.plain.twist_rad_per_m.sd * 180) / Math.PI).toBeCloseTo(0.6506, 3);
    // 8 × 3 mm ÷ (2.4 m)² = 0.0041667 /m, sd 8 × 2 mm ÷ (2.4 m)² = 0.0027778 /m
    expect(spread.plain.bow_per_m.mean).toBeCloseTo(0.0041667, 5);
    expect(spread.plain.bow_per_m.sd).toBeCloseTo(0.0027778, 5);
  });

  it('refuses a single board and a rise without its length', () => {
    const here = folder();
    expect(here.run('measure', 'spread', '--stock', 'strip-19x38', '--twist', '1 deg/m')).toMatchObject({ code: 1, out: '' });
    expect(here.run('measure', 'spread', '--stock', 'strip-19x38', '--bow', '3 mm', '2 mm').err).toContain('--over is missing');
    expect(here.run('measure', 'spread', '--stock', 'strip-19x38').err).toContain('at least two boards');
  });
});

describe('measure tap and push', () => {
  const pullOf = (lines: string | undefined): number => {
    const result = readPlanWith(`${plan('Tapped')}${lines ?? ''}`, 'plan.yaml', shelf);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(result.value.cloth.peak.x_N_per_m / result.value.cloth.working.x_N_per_m).toBeCloseTo(2, 1);
    return result.value.cloth.working.x_N_per_m;
  };

  it('tap: the pasted pull loads, lies in the band printed, and above that of the cloth without air', () => {
    const out = measured(folder(), 'tap', '--width', '860 mm', '--height', '610 mm', '--mass', '480 g/m2', '--note', '22 Hz');
    const pull = pullOf(pasted(out)[0]);
    const [, low, high] = /between ([\d.]+) N\/m and ([\d.]+) N\/m/.exec(out) ?? [];
    expect(pull).toBeGreaterThanOrEqual(Number(low));
    expect(pull).toBeLessThanOrEqual(Number(high));
    // in vacuum: f = ½ √(N / m) √(1/a² + 1/b²)
    expect(pull).toBeGreaterThan((4 * 22 ** 2 * 0.48) / (1 / 0.86 ** 2 + 1 / 0.61 ** 2));
  });

  it('push: half the sag means twice the pull; readings of one cloth are averaged', () => {
    const here = folder();
    const push = (...sags: readonly string[]): number => pullOf(pasted(measured(here, 'push', '--width', '824 mm', '--height', '574 mm', '--weight', '500 g', '--pad', '50 mm', '--sag', ...sags))[0]);
    const [one, other] = [push('7 mm'), push('3.5 mm')];
    expect(other / one).toBeCloseTo(2, 1);
    expect(push('7 mm', '3.5 mm')).toBeCloseTo((one + other) / 2, -1);
  });

  it('take size, mass and stiffness from a plan when it is named', () => {
    const here = folder();
    here.write('plan.yaml', plan('From the plan', '{ width: 700 mm, height: 520 mm }'));
    expect(measured(here, 'tap', '--plan', 'plan.yaml', '--bare', '--note', '25 Hz')).toContain('662 × 482 mm, cloth 340 g/m²');
    expect(measured(here, 'push', '--plan', 'plan.yaml', '--weight', '500 g', '--sag', '6 mm')).toContain('624 × 444 mm');
  });
});

describe('options that cannot be used', () => {
  it.each([
    [['sag', '--stock', 'strip-19x38', '--span', '1500', '--weight', '5 kg', '--sag', '17 mm'], '--span: found `1500`'],
    [['sag', '--stock', 'strip-19x38', '--span', '1500 mm', '--weight', '5 mm', '--sag', '17 mm'], '--weight: found `5 mm`'],
    [['sag', '--stock', 'strip-19x38', '--span', '1500 mm', '--weight', '5 kg'], '--sag is missing'],
    [['sag', '--stock', 'strip-19x38', '--span', '0 mm', '--weight', '5 kg', '--sag', '17 mm'], 'above zero'],
    [['twist', '--rise', '3 mm', '--width', '1,2 m', '--length', '2 m'], 'point for the decimals'],
    [['twist', '--rise', '3 mm', '2 mm', '--width', '0.4 m', '--length', '2 m', '--stock', 'strip-19x38', '--date', '2024-02-30'], '--date: found `2024-02-30`'],
    [['tap', '--note', '20 Hz', '--width', '800 mm', '--height', '600 mm'], '--mass is missing'],
  ])('%j', (args, words) => {
    const { code, out, err } = folder().run('measure', ...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(words);
    expect(err).not.toMatch(looksLikeABug);
  });
});

describe('several options that cannot be used', () => {
  it.each([
    [['sag', '--stock', 'strip-19x38', '--span', '1500', '--weight', '5 mm', '--sag', '17 mm', '16', '1,5 mm', '--date', 'today'], ['--span: found `1500`', '--weight: found `5 mm`', '--sag: found `16`', '--sag: found `1,5 mm`', '--date: found `today`']],
    [['twist', '--rise', '3', '--width', '400', '--ply', '9', '--for', 'middle'], ['--rise: found `3`', '--width: found `400`', '--length is missing', '--ply: found `9`', '--for: found `middle`']],
    [['spread', '--twist', '1 deg', '2 deg', '--bow', '3 kg', '2 mm', '--over', 'long', '--size', 'thick'], ['--stock is missing', '--twist: found `1 deg`', '--twist: found `2 deg`', '--bow: found `3 kg`', '--over: found `long`', '--size: found `thick`']],
    [['tap', '--note', 'a', '--width', 'b', '--mass', 'c', '--error', 'd'], ['--note: found `a`', '--width: found `b`', '--height is missing', '--mass: found `c`', '--error: found `d`']],
    [['push', '--sag', 'a', '--weight', 'b', '--pad', 'c', '--plan', 'nowhere.yaml'], ['--sag: found `a`', '--weight: found `b`', '--pad: found `c`', 'The plan cannot be read']],
    [['joint', '--weight', 'a', '--arm', 'b', '--movement', 'c', 'd'], ['--stock is missing', '--weight: found `a`', '--arm: found `b`', '--movement: found `c`', '--movement: found `d`']],
  ] as const)('%j: all are told at once, each once', (args, words) => {
    const { code, out, err } = folder().run('measure', ...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    for (const word of words) expect(err.split(word), `${word} in ${err}`).toHaveLength(2);
    expect(err).not.toMatch(looksLikeABug);
  });
});

describe('a studio’s own numbers', () => {
  it('change the audit when the pasted shelf is used: boards measured twice as stiff bend half as far', () => {
    const here = folder();
    here.write('plan.yaml', plan('Studio', '{ width: 700 mm, height: 520 mm }'));
    const bow = (...more: readonly string[]): number => {
      const { facts } = JSON.parse(here.run('audit', 'plan.yaml', '--format', 'json', ...more).out) as { readonly facts: readonly { readonly path: string; readonly about: string; readonly value: number }[] };
      return facts.find(({ path, about }) => path === 'bar.inward_bow_mm' && about === 'top')?.value ?? Number.NaN;
    };
    const before = bow();
    here.write('own.yaml', pasted(measured(here, 'sag', '--stock', 'strip-19x38', '--span', '1500 mm', '--weight', '5 kg', '--sag', '8.8 mm', '--date', '2024-05-02'))[0] ?? '');
    expect(bow('--shelf', 'own.yaml') / before).toBeCloseTo(0.5, 1);
  });
});
