import { describe, expect, it } from 'vitest';
import { readSources } from '../../src/base/sources.js';
import { proposalNumbers } from '../../src/shelf/proposals.js';
import { readShelf } from '../../src/shelf/read-shelf.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { fileText, shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();
const sources = readSources(fileText('rules/sources.yaml'));
const statusOf = new Map(sources.map(({ key, status }) => [key, status]));

function over(text: string, base = shelf): Shelf {
  const result = readShelf(`shelf: 1\n${text}`, 'mine.yaml', base);
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

const problems = (text: string, base?: Shelf): readonly string[] => {
  const result = readShelf(text, 'mine.yaml', base, new Set(statusOf.keys()));
  return result.ok ? [] : result.problems.map(({ code, path, line, column }) => `${line}:${column} ${code} ${path}`);
};

describe('the shipped shelf', () => {
  it('stocks what plans name by default and the sizes people ask for', () => {
    for (const key of ['strip-19x38', 'board-19x64', 'board-19x89', 'square-38x38', 'stud-38x64', 'stud-38x89', 'planed-21x45', 'planed-45x45']) expect(Object.keys(shelf.lumber)).toContain(key);
    for (const key of ['brad-18ga-25', 'brad-18ga-19']) expect(Object.keys(shelf.nails)).toContain(key);
    for (const key of ['screw-6x32', 'screw-8x64']) expect(Object.keys(shelf.screws)).toContain(key);
    expect(Object.keys(shelf.glues)).toEqual(expect.arrayContaining(['pva', 'epoxy']));
    expect(Object.keys(shelf.cloths)).toEqual(expect.arrayContaining(['cotton-duck-340', 'linen-300', 'cotton-duck-500']));
  });

  it('gives the strip its actual size under its shop name', () => {
    expect(shelf.lumber['strip-19x38']).toMatchObject({ nominal: '1x2', thickness_mm: 19, width_mm: 38, E_MPa: 9000, G_MPa: 560, density_kg_per_m3: 420, species: { key: 'spruce-pine-fir', specific_gravity: 0.42 } });
  });

  it('sells strips to 2400 mm and studs to 3600 mm, at prices it calls invented', () => {
    const longest = (key: string): number => Math.max(...(shelf.lumber[key]?.lengths ?? []).map(({ length_mm }) => length_mm));
    expect(['strip-19x38', 'square-38x38', 'stud-38x64', 'stud-38x89'].map(longest)).toEqual([2400, 2400, 3600, 3600]);
    expect(shelf.demo_prices).toBe(true);
    expect(shelf.sources['lumber.strip-19x38.price']).toBe('invented');
    expect(shelf.sources['screws.screw-6x32.price']).toBe('invented');
  });

  it('names a source in the bibliography for every number, and for none of them its owner', () => {
    expect(Object.entries(shelf.sources).filter(([, key]) => !statusOf.has(key))).toEqual([]);
    expect(Object.keys(shelf.sources).length).toBeGreaterThan(300);
    expect(Object.values(shelf.sources)).not.toContain('owner');
    expect(shelf.measured).toEqual([]);
    expect(problems(fileText('rules/shelf.yaml'))).toEqual([]);
  });

  it('marks recalled numbers as memory', () => {
    for (const where of ['screws.screw-6x32.root', 'screws.screw-6x32.head', 'species.spruce-pine-fir.radial', 'screws.screw-8x64.yield', 'glues.pva.spread']) expect(statusOf.get(shelf.sources[where] ?? '')).toBe('memory');
    for (const where of ['screws.screw-6x32.shank', 'screws.screw-10x89.root', 'species.spruce-pine-fir.gravity', 'lumber.strip-19x38.size', 'lumber.strip-19x38.E', 'nails.brad-18ga-25.diameter']) expect(statusOf.get(shelf.sources[where] ?? '')).toBe('seen');
  });

  it('holds every editable number, each in its unit', () => {
    expect(Object.fromEntries(Object.entries(shelf.proposals).map(([name, { unit }]) => [name, unit]))).toEqual(Object.fromEntries(Object.entries(proposalNumbers).map(([name, { unit }]) => [name, unit])));
  });

  it('refuses an editable number outside its range, with its place: it would hide a danger', () => {
    for (const [name, { unit, least, most }] of Object.entries(proposalNumbers))
      for (const value of [least - (Math.abs(least) || 1), most * 2 + 1]) {
        const read = readShelf(`shelf: 1\nproposals:\n  ${name}: { value: ${value}, unit: ${unit}, source: proposal }\n`, 'own.yaml', shelf);
        expect(read.ok ? [] : read.problems.map(({ code, path, line }) => [code, path, line]), `${name} ${value}`).toEqual([['out-of-range', `proposals.${name}.value`, 3]]);
        expect(read.ok ? '' : read.problems[0]?.allowed).toBe(unit === 'ratio' ? `from ${least} to ${most}` : `from ${least} to ${most} ${unit}`);
      }
  });

  it('is plain data that survives being written as JSON', () => {
    expect(JSON.parse(JSON.stringify(shelf))).toEqual(shelf);
  });

  it('lists drills by growing diameter, inch and metric together', () => {
    const diameters = shelf.drills.map(({ diameter_mm }) => diameter_mm);
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
    expect(shelf.drills).toContainEqual({ label: '5/64 in', diameter_mm: (5 * 25.4) / 64 });
    expect(shelf.drills).toContainEqual({ label: '2.5 mm', diameter_mm: 2.5 });
  });
});

describe('published numbers on the shelf', () => {
  it.each([6, 8, 10])('shank of screw No. %i is 0.060 in + 0.013 in x number (ASME B18.6.1)', (number) => {
    const shanks = Object.values(shelf.screws).filter(({ name }) => name.startsWith(`Wood screw No. ${number} `)).map(({ shank_mm }) => shank_mm);
    expect(shanks.length).toBeGreaterThan(0);
    for (const shank of shanks) expect(shank).toBeCloseTo((0.06 + 0.013 * number) * 25.4, 2);
  });

  it('change coefficients are 1/(3000/S - 20) of the shrinkage S of Wood Handbook Table 4-3 (white spruce and eastern white pine from memory; redcedar, Douglas fir read)', () => {
    const coefficient = (S: number): number => 1 / (3000 / S - 20);
    const rows: readonly (readonly [string, number, number])[] = [['spruce-pine-fir', 4.7, 8.2], ['eastern-white-pine', 2.1, 6.1], ['western-redcedar', 2.4, 5.0], ['douglas-fir', 4.8, 7.6], ['hem-fir', 4.2, 7.8], ['aspen', 3.5, 6.7], ['red-maple', 4.0, 8.2]];
    for (const [key, radial, tangential] of rows) {
      expect(shelf.species[key]?.change_radial).toBeCloseTo(coefficient(radial), 5);
      expect(shelf.species[key]?.change_tangential).toBeCloseTo(coefficient(tangential), 5);
    }
  });

  it('numbered duck weighs 19 ounces less its number for 36 x 22 in', () => {
    const mass = (number: number): number => (((19 - number) * 36) / 22) * 33.9057;
    expect(Math.abs((shelf.cloths['cotton-duck-500']?.mass_g_per_m2 ?? 0) - mass(10))).toBeLessThan(0.5);
    expect(Math.abs((shelf.cloths['cotton-duck-no-12']?.mass_g_per_m2 ?? 0) - mass(12))).toBeLessThan(0.5);
  });

  it('sizes are those of PS 20, half an inch or a quarter under the name', () => {
    const nominal = Object.values(shelf.lumber).filter(({ nominal: name }) => name !== null);
    const dressed = (name: number): number => (name === 1 ? 0.75 : name - 0.5);
    expect(nominal.length).toBeGreaterThanOrEqual(6);
    for (const { nominal: name, thickness_mm, width_mm } of nominal) {
      const [t = 0, w = 0] = (name ?? '').split('x').map(Number);
      expect(Math.abs(thickness_mm - dressed(t) * 25.4)).toBeLessThanOrEqual(0.6);
      expect(Math.abs(width_mm - dressed(w) * 25.4)).toBeLessThanOrEqual(0.6);
    }
  });
});

describe('a shelf laid over it', () => {
  it('needs only a size; the rest falls back and is listed', () => {
    const mine = over('lumber: { bar-20x50: { size: 50 x 20 mm } }').lumber['bar-20x50'];
    expect(mine).toMatchObject({ thickness_mm: 20, width_mm: 50, E_MPa: 9000, G_MPa: 9000 / 16, density_kg_per_m3: 420, species: { key: 'spruce-pine-fir' }, lengths: null, source: 'owner', nominal: null });
    expect(mine?.assumed).toEqual(['E', 'G', 'density', 'species', ...['unsorted', 'plain', 'picked'].flatMap((way) => ['twist', 'bow', 'crook'].map((kind) => `spread.${way}.${kind}`))]);
    expect(mine?.spread).toEqual(shelf.spread);
  });

  it('takes G from E over 16 unless told otherwise', () => {
    const mine = over('lumber: { a: { size: 20 x 50 mm, E: 10 GPa }, b: { size: 20 x 50 mm, E: 10 GPa, E-over-G: 20 }, c: { size: 3/4 x 1-1/2 in, G: 600 MPa } }').lumber;
    expect([mine['a']?.G_MPa, mine['b']?.G_MPa, mine['c']?.G_MPa]).toEqual([625, 500, 600]);
    expect(mine['c']).toMatchObject({ thickness_mm: 19.05, width_mm: 38.1 });
  });

  it('adds and replaces by key and leaves the rest alone', () => {
    const mine = over('lumber: { strip-19x38: { size: 18 x 37 mm, source: measured } }\nnails: { tack: { name: Tack, diameter: 1.5 mm, length: 14 mm, price: 0 } }');
    expect(mine.lumber['strip-19x38']).toMatchObject({ thickness_mm: 18, width_mm: 37, nominal: null, lengths: null });
    expect(mine.lumber['stud-38x89']).toEqual(shelf.lumber['stud-38x89']);
    expect(Object.keys(mine.nails)).toEqual([...Object.keys(shelf.nails), 'tack']);
    expect(mine.measured).toEqual(['lumber.strip-19x38.size']);
    expect(mine.sources['lumber.strip-19x38.E']).toBeUndefined();
    expect(mine.name).toBe(shelf.name);
  });

  it('carries a changed default spread or species to the boards that lean on it', () => {
    const mine = over('spread: { plain: { twist: { mean: 0.1 deg/m, sd: 0.2 deg/m } } }\nspecies: { spruce-pine-fir: { name: My spruce, gravity: 0.44, radial: 0.15 %, tangential: 0.3 % } }');
    expect(mine.lumber['strip-19x38']?.spread.plain.twist_rad_per_m.sd).toBeCloseTo((0.2 * Math.PI) / 180, 12);
    expect(mine.lumber['strip-19x38']?.spread.plain.bow_per_m).toEqual(shelf.spread.plain.bow_per_m);
    expect(mine.lumber['strip-19x38']?.species).toMatchObject({ name: 'My spruce', specific_gravity: 0.44 });
    expect(over('spread: { plain: { bow: { mean: 0 /m, sd: 0.001 /m } } }', over('lumber: { x: { size: 20 x 50 mm, spread: { plain: { bow: { mean: 0 /m, sd: 0.009 /m } } } } }')).lumber['x']?.spread.plain.bow_per_m.sd).toBe(0.009);
  });

  it('changes single joints, allowances and numbers', () => {
    const mine = over('joints: { give: { mitre-glued: 8 }, source: measured }\ncutting: { kerf: 1/8 in }\nproposals: { wire-factor: { value: 5 } }\ndrills: { metric: [ 2 mm ] }\nprices: { currency: USD, demo: false }');
    expect(mine.joints).toMatchObject({ give: { mitre_glued: { plane: 8, out: 8, twist: 8 }, mitre_glued_nailed: { twist: 4 }, keyed: { plane: 100, out: 8, twist: 8 } }, bond_MPa: { mitre: 2 } });
    expect(mine.cutting).toEqual({ ...shelf.cutting, kerf_mm: 3.175 });
    expect(mine.proposals['wire-factor']).toEqual({ value: 5, unit: 'ratio', source: 'owner' });
    expect(mine.drills).toEqual([{ label: '2 mm', diameter_mm: 2 }]);
    expect([mine.currency, mine.demo_prices]).toEqual(['USD', false]);
  });

  it('lays over another that was laid over the first', () => {
    const twice = over('lumber: { b: { size: 30 x 60 mm } }', over('lumber-defaults: { E: 11 GPa }\nlumber: { a: { size: 20 x 50 mm } }'));
    expect([twice.lumber['a']?.E_MPa, twice.lumber['b']?.E_MPa]).toEqual([11_000, 11_000]);
  });
});

describe('broken shelves', () => {
  it('shows every problem with its place', () => {
    expect(problems(['shelf: 1', 'lumber:', '  a: { size: 19 x 38, E: 9000, sourc: practice }', '  b: { size: 0 x 38 mm, species: oakk, G: 1 MPa }', '  "bad key": { size: 19 x 38 mm }', 'nails: { n: { name: N, diameter: 1 mm, length: 20 mm } }', ''].join('\n'), shelf)).toEqual(expect.arrayContaining([
      '3:14 not-a-quantity lumber.a.size', '3:26 no-unit lumber.a.E', '3:32 unknown-key lumber.a.sourc', '4:14 out-of-range lumber.b.size', '4:43 out-of-range lumber.b.G', '5:3 bad-key-name lumber.bad key', '6:13 missing nails.n.price',
    ]));
  });

  it('looks up species, sources, and the names of numbers', () => {
    expect(problems(['shelf: 1', 'lumber: { a: { size: 19 x 38 mm, species: douglas-fur, G: 500 MPa, E-over-G: 16, source: nds-2081, sources: { siz: ps20 } } }', 'proposals: { wire-facter: { value: 3 }, hook-factor: { value: 3, unit: mm } }', ''].join('\n'), shelf)).toEqual([
      '2:43 unknown-on-shelf lumber.a.species', '2:68 both-G lumber.a.E-over-G', '2:90 unknown-source lumber.a.source', '2:111 unknown-source-field lumber.a.sources.siz',
      '3:14 unknown-proposal proposals.wire-facter', '3:72 other-unit-of-proposal proposals.hook-factor.unit',
    ]);
  });

  it('says what a shelf that stands alone lacks', () => {
    const lacking = problems('shelf: 1\njoints: { bond: { mitre: 2 MPa } }\n');
    for (const path of ['lumber', 'spread', 'cutting', 'joints.give.nothing', 'joints.bond.butt', 'proposals']) expect(lacking.some((line) => line.endsWith(`missing ${path}`))).toBe(true);
  });

  it.each([['plan: 1\n', '1:1 not-this-format '], ['shelf: 2\n', '1:8 later-format shelf'], ['', '1:1 empty-file '], ['shelf: 1\n__proto__: {}\n', '2:1 forbidden-key __proto__']])('refuses %j', (text, expected) => {
    expect(problems(text, shelf)).toContain(expected);
  });
});

describe('screws that cannot be', () => {
  const screw = (sizes: string): readonly string[] => problems(`shelf: 1\nscrews:\n  odd: { name: Odd, ${sizes}, length: 31 mm, price: 0.1 }`, shelf).map((line) => line.split(' ').slice(1).join(' '));
  it('are refused with the size that is wrong', () => {
    expect(screw('shank: 2 mm, root: 4 mm, head: 1 mm')).toEqual(['impossible-screw screws.odd.root', 'impossible-screw screws.odd.head']);
    expect(screw('shank: 3.7 mm, root: 2.6 mm, head: 7 mm, thread: 33 mm')).toEqual(['impossible-screw screws.odd.thread']);
    expect(screw('shank: 3.7 mm, root: 2.6 mm, head: 7 mm, thread: 31 mm')).toEqual([]);
  });
  it('say what was found and what is allowed', () => {
    const result = readShelf('shelf: 1\nscrews:\n  odd: { name: Odd, shank: 2 mm, root: 4 mm, head: 6 mm, length: 31 mm, price: 0.1 }', 'mine.yaml', shelf);
    expect(result.ok ? null : result.problems[0]).toMatchObject({ found: 'a root of 4 mm', allowed: 'no more than the shank, 2 mm' });
  });
});
