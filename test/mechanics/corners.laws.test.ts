import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornerFacts } from '../facts/of-subject.js';
import { demoSolved } from './fasteners/demo-model.js';

const braces = [undefined, { kind: 'timber', leg: '200 mm' }, { kind: 'timber', leg: '200 mm', lay: 'edge' }, { kind: 'ply-gusset', leg: '200 mm' }, { kind: 'steel-angle', leg: '120 mm' }];

/** Largest use of a corner at peak pull, and at the accidental pull. */
function uses(corners: object, lay: string): readonly [number, number] {
  const { model, solution } = demoSolved({ face: { width: '930 mm', height: '710 mm' }, bars: { stock: 'strip-19x38', lay }, corners, hang: { by: 'none' } });
  const facts = cornerFacts(model, solution);
  const most = (path: string): number => Math.max(...facts.filter((f) => f.path === path).map(({ value }) => value as number));
  return [most('corner.use_normal'), most('corner.use_accidental')];
}

describe('more to hold a corner never makes it worse', () => {
  // The joint's give goes with its build-up, so the demand changes with it; a little of that may show.
  const slack = 1.02;
  test.each(braces.map((brace, i) => [brace?.kind ?? 'no brace', i] as const))('%s (%i)', (_, i) => {
    for (const lay of ['flat', 'edge']) {
      const brace = braces[i] === undefined ? {} : { brace: braces[i] };
      const [bare, bare_knock] = uses({ glue: 'none', nails: 'none', ...brace }, lay);
      const [nailed, nailed_knock] = uses({ glue: 'none', nails: { use: 'brad-18ga-25', each: 1 }, ...brace }, lay);
      const [both, both_knock] = uses({ glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 }, ...brace }, lay);
      expect(nailed).toBeLessThanOrEqual(bare * slack);
      expect(nailed_knock).toBeLessThanOrEqual(bare_knock * slack);
      expect(both).toBeLessThanOrEqual(nailed * slack);
      expect(both_knock).toBeLessThanOrEqual(nailed_knock * slack);
    }
  });
});

test('a corner with neither glue nor nails is a stop, brace or not', () => {
  fc.assert(
    fc.property(fc.constantFrom(...braces), fc.constantFrom('flat', 'edge'), (brace, lay) => {
      expect(uses({ glue: 'none', nails: 'none', ...(brace === undefined ? {} : { brace }) }, lay)[0]).toBeGreaterThan(2);
    }),
    { numRuns: 10 },
  );
});
