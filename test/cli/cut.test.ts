import { describe, expect, it } from 'vitest';
import { folder, looksLikeABug, plan } from './command.js';

interface CutJson {
  readonly format: string;
  readonly boards_cost: number | null;
  readonly total_cost: number | null;
  readonly proven: boolean;
  readonly buy: readonly { readonly stock: string; readonly length_mm: number; readonly price: number; readonly count: number }[];
  readonly cut: readonly { readonly length_mm: number; readonly pieces: readonly { readonly tag: string; readonly cut_mm: number; readonly from_mm: number; readonly to_mm: number }[] }[];
  readonly short: readonly { readonly needed: number; readonly available: number }[];
  readonly rolls: readonly { readonly length_mm: number; readonly roll_mm: number; readonly placed: readonly { readonly name: string; readonly x_mm: number; readonly y_mm: number; readonly along_mm: number; readonly across_mm: number }[] }[];
}

const wide = plan('Wide', '{ width: 660 mm, height: 400 mm }');
const tall = plan('Tall', '{ width: 350 mm, height: 540 mm }', 'count: 2\n');

describe('cut', () => {
  it('cuts every piece of every plan once, on boards it names, for no more than the plans cost alone', () => {
    const here = folder();
    here.write('wide.yaml', wide);
    here.write('tall.yaml', tall);
    const run = (...files: readonly string[]): CutJson => {
      const { code, out } = here.run('cut', ...files, '--format', 'json');
      expect(code).toBe(0);
      return JSON.parse(out) as CutJson;
    };
    const [both, one, other] = [run('wide.yaml', 'tall.yaml'), run('wide.yaml'), run('tall.yaml')] as [CutJson, CutJson, CutJson];
    expect(both.format).toBe('cut/1');
    const tags = both.cut.flatMap(({ pieces }) => pieces.map(({ tag }) => tag)).sort();
    expect(tags).toEqual(['1', '2.1', '2.2'].flatMap((frame) => ['B', 'L', 'R', 'T'].map((bar) => `${frame}-${bar}`)).sort());
    for (const { length_mm, pieces } of both.cut) for (const { from_mm, to_mm, cut_mm } of pieces) {
      expect(to_mm - from_mm).toBeCloseTo(cut_mm, 5);
      expect(from_mm).toBeGreaterThanOrEqual(0);
      expect(to_mm).toBeLessThanOrEqual(length_mm);
    }
    expect(both.buy.reduce((sum, { price, count }) => sum + price * count, 0)).toBeCloseTo(both.boards_cost ?? Number.NaN, 9);
    expect(both.boards_cost).toBeLessThanOrEqual((one.boards_cost ?? 0) + (other.boards_cost ?? 0));
    expect(both.proven).toBe(true);
  });

  it('counts the same boards at the same cost as the audit where boards are picked from more', () => {
    const here = folder();
    here.write('picked.yaml', plan('Picked', '{ width: 900 mm, height: 650 mm }'));
    const cut = JSON.parse(here.run('cut', 'picked.yaml', '--format', 'json').out) as CutJson & { readonly boards: number };
    const { facts } = JSON.parse(here.run('audit', 'picked.yaml', '--format', 'json').out) as { facts: readonly { path: string; value: number }[] };
    const fact = (path: string): number | undefined => facts.find((one) => one.path === path)?.value;
    expect([cut.boards, cut.boards_cost]).toEqual([fact('cutting.boards'), fact('cutting.cost')]);
    expect(here.run('cut', 'picked.yaml', '--format', 'csv', '--list', 'buy').out).toContain('more to pick from');
  });

  it('lays all cloths of one kind on one roll, none over another', () => {
    const here = folder();
    here.write('wide.yaml', wide);
    here.write('tall.yaml', tall);
    const [roll, ...more] = (JSON.parse(here.run('cut', 'wide.yaml', 'tall.yaml', '--format', 'json').out) as CutJson).rolls;
    expect(more).toEqual([]);
    const placed = roll?.placed ?? [];
    expect(placed.map(({ name }) => name).sort()).toEqual(['1', '2.1', '2.2']);
    placed.forEach((a, i) => {
      expect(a.x_mm + a.across_mm).toBeLessThanOrEqual((roll?.roll_mm ?? 0) + 1e-6);
      expect(a.y_mm + a.along_mm).toBeLessThanOrEqual((roll?.length_mm ?? 0) + 1e-6);
      for (const b of placed.slice(i + 1)) {
        const apart = a.x_mm + a.across_mm <= b.x_mm + 1e-6 || b.x_mm + b.across_mm <= a.x_mm + 1e-6 || a.y_mm + a.along_mm <= b.y_mm + 1e-6 || b.y_mm + b.along_mm <= a.y_mm + 1e-6;
        expect(apart, `${a.name} and ${b.name}`).toBe(true);
      }
    });
  });

  it('prints CSV: the cut list, the buying list, or both with an empty line between', () => {
    const here = folder();
    here.write('wide.yaml', wide);
    const csv = (list: string): string => here.run('cut', 'wide.yaml', '--format', 'csv', '--list', list).out;
    const [cut, buy] = [csv('cut'), csv('buy')];
    expect(cut.split('\r\n')).toHaveLength(1 + 4 + 1);
    expect(cut).toMatch(/^stock,board,piece,plan,/);
    expect(buy).toMatch(/^stock,nominal,size,length,/);
    expect(csv('both')).toBe(`${cut}\r\n${buy}`);
    expect(here.files()).toEqual(['wide.yaml']);
    expect(here.run('cut', 'wide.yaml', '--format', 'csv', '--out', 'lists').code).toBe(0);
    expect(here.files()).toEqual(['lists/buying-list.csv', 'lists/cut-list.csv', 'wide.yaml']);
  });

  it('writes a page with a picture of the boards and of the roll', () => {
    const here = folder();
    here.write('wide.yaml', wide);
    here.write('tall.yaml', tall);
    const { code, out } = here.run('cut', 'wide.yaml', 'tall.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(/^3 frames: \d+ boards for [\d.]+ EUR, the least cost, proven; everything together [\d.]+ EUR/);
    expect(here.files()).toEqual(['reports/cut/boards.svg', 'reports/cut/cut.md', 'reports/cut/roll.svg', 'tall.yaml', 'wide.yaml']);
  });

  it('a piece longer than any board: exit 3, with what would help and no joined boards', () => {
    const here = folder();
    here.write('long.yaml', plan('Long', '{ width: 2600 mm, height: 400 mm }'));
    const { code, out, err } = here.run('cut', 'long.yaml', '--out', 'page', '--format', 'json');
    expect(code).toBe(3);
    expect(`${out}${err}`).not.toMatch(looksLikeABug);
    const page = here.run('cut', 'long.yaml', '--out', 'page');
    expect(page.code).toBe(3);
  });

  it('too few boards on the shelf: exit 2, and how many are missing', () => {
    const here = folder();
    here.write('shelf.yaml', 'shelf: 1\nlumber:\n  few-19x38: { size: 19 x 38 mm, lengths: [ { length: 2400 mm, price: 3, available: 1 } ] }\n');
    here.write('tall.yaml', tall.replace('strip-19x38', 'few-19x38'));
    const { code, out } = here.run('cut', 'tall.yaml', '--shelf', 'shelf.yaml', '--format', 'json');
    expect(code).toBe(2);
    const { short, buy } = JSON.parse(out) as CutJson;
    expect(short).toEqual([expect.objectContaining({ needed: buy[0]?.count, available: 1 })]);
    // two frames of 2 × 540 + 2 × 350 mm do not fit on one board of 2400 mm, and do on two
    expect(buy[0]?.count).toBe(2);
  });

  it('takes no plan that must stop, names it, and cuts it only --even-so', () => {
    const here = folder();
    here.write('wide.yaml', wide);
    here.write('weak.yaml', plan('Weak', '{ width: 1700 mm, height: 1100 mm }'));
    const refused = here.run('cut', 'wide.yaml', 'weak.yaml', '--format', 'json');
    expect({ code: refused.code, out: refused.out }).toEqual({ code: 3, out: '' });
    expect(refused.err).toMatch(/STOP {2}Weak: .+ It must not be cut as it stands\.[\s\S]*--even-so/);
    const done = here.run('cut', 'wide.yaml', 'weak.yaml', '--format', 'json', '--even-so');
    expect(done.err).toContain('It is cut even so, as you asked.');
    expect((JSON.parse(done.out) as CutJson).cut.length).toBeGreaterThan(0);
  });
});
