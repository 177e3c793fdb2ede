import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barSection } from '../../../src/report/drawings/bar-section.js';
import { clothCut } from '../../../src/report/drawings/cloth-cut.js';
import { cornerBuild } from '../../../src/report/drawings/corner-build.js';
import { frontView } from '../../../src/report/drawings/front-view.js';
import { hanging } from '../../../src/report/drawings/hanging.js';
import { overlap } from '../../../src/report/drawings/labels.js';
import { liftChance } from '../../../src/report/drawings/lift-chance.js';
import { sheetNumber } from '../../../src/report/drawings/svg.js';
import { labelsOf, sheetOf } from '../svg-reading.js';
import { runs } from '../../effort.js';

const units = fc.constantFrom('metric' as const, 'inch' as const);
const mm = (min: number, max: number) => fc.integer({ min, max });

/** No label on another, none off the sheet. */
function readable(svg: string): void {
  const labels = labelsOf(svg);
  const { width, height } = sheetOf(svg);
  for (const { text, box } of labels) {
    expect(box.x, `“${text}” off the left`).toBeGreaterThanOrEqual(0);
    expect(box.y, `“${text}” off the top`).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width, `“${text}” off the right`).toBeLessThanOrEqual(width);
    expect(box.y + box.height, `“${text}” off the bottom`).toBeLessThanOrEqual(height);
  }
  labels.forEach((a, i) => labels.slice(i + 1).forEach((b) => expect(overlap(a.box, b.box), `“${a.text}” on “${b.text}”`).toBeLessThan(1)));
}

describe('labels never collide and never leave the sheet', () => {
  it('front view', () => {
    const crossbar = fc.record({ runs: fc.constantFrom('upright' as const, 'level' as const), at: fc.constantFrom(0.25, 1 / 3, 0.5, 2 / 3, 0.75), w_mm: mm(19, 64) });
    fc.assert(fc.property(units, mm(400, 2400), mm(400, 2400), mm(19, 64), fc.constantFrom('mitre' as const, 'butt' as const, 'half-lap' as const), fc.uniqueArray(crossbar, { maxLength: 3, selector: (c) => `${c.runs}${c.at}` }), fc.option(fc.constantFrom('timber' as const, 'ply-gusset' as const, 'steel-angle' as const)),
      (unit, width_mm, height_mm, w, cut, crossbars, kind) => {
        fc.pre(Math.max(width_mm, height_mm) / Math.min(width_mm, height_mm) <= 3);
        const corners = ['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const;
        readable(frontView({
          units: unit, width_mm, height_mm, bar_w_mm: { top: w, bottom: w, left: w, right: w }, cut, seams_mm: [w / 3, (2 * w) / 3],
          crossbars: crossbars.map((c, i) => ({ ...c, name: `crossbar-${i + 1}` })),
          braces: kind === null ? [] : corners.map((corner) => ({ corner, kind, leg_mm: Math.min(width_mm, height_mm) / 4, w_mm: 38 })),
        }).svg);
      }), { numRuns: runs(300) });
  });

  it('section through a bar', () => {
    fc.assert(fc.property(units, mm(17, 120), mm(17, 120), fc.integer({ min: 1, max: 4 }), fc.constantFrom('side-by-side' as const, 'front-to-back' as const), fc.constantFrom('none' as const, 'screws' as const, 'glue' as const, 'glue+screws' as const), mm(0, 10), fc.constantFrom('back' as const, 'edge' as const),
      (unit, w_mm, d_mm, plies, stack, bond, lip_mm, fixing) => {
        readable(barSection({ units: unit, w_mm, d_mm, plies, stack, bond: plies === 1 ? 'single' : bond, lip_mm, fixing, turn_mm: 50 }).svg);
      }), { numRuns: runs(300) });
  });

  it('corner', () => {
    const nails = fc.option(fc.record({ count: fc.integer({ min: 1, max: 3 }), length_mm: mm(19, 64), name: fc.constant('nail'), place_mm: mm(9, 30) }));
    const brace = fc.option(fc.record({ kind: fc.constantFrom('timber' as const, 'ply-gusset' as const, 'steel-angle' as const), leg_mm: mm(90, 400), w_mm: mm(19, 64) }));
    const ply = fc.option(fc.record({ level_mm: fc.constantFrom([], [71], [83, 262, 455]), upright_mm: fc.constantFrom([64], [97, 221, 360]), length_mm: mm(30, 70), from: fc.constantFrom('inner-edge' as const, 'back' as const) }));
    fc.assert(fc.property(units, fc.constantFrom('mitre' as const, 'butt' as const, 'half-lap' as const), mm(19, 90), mm(19, 90), fc.boolean(), nails, brace, ply, (unit, cut, level_w_mm, upright_w_mm, glued, n, b, ply_screws) => {
      readable(cornerBuild({ units: unit, cut, glued, level_w_mm, upright_w_mm, nails: n, brace: b, plate_screws: b === null ? null : { places_mm: [19], length_mm: 38 }, ply_screws, seams_mm: [9.5, 19] }).svg);
    }), { numRuns: runs(300) });
  });

  it('hanging', () => {
    fc.assert(fc.property(units, mm(300, 2400), mm(300, 2400), fc.constantFrom(1, 2), mm(5, 300), fc.constantFrom(0, 0.8, 3, 12), (unit, width_mm, height_mm, hooks, weight_N, lean_deg) => {
      fc.pre(Math.max(width_mm, height_mm) / Math.min(width_mm, height_mm) <= 4);
      const span = width_mm - 76;
      readable(hanging({
        units: unit, by: 'wire', strips: [], hooks,
        frame: { units: unit, width_mm, height_mm, bar_w_mm: { top: 38, bottom: 38, left: 38, right: 38 }, cut: 'mitre', seams_mm: [], crossbars: [{ name: 'crossbar-1', runs: 'upright', at: 0.4, w_mm: 19 }], braces: [{ corner: 'top-left', kind: 'timber', leg_mm: 120, w_mm: 19 }] },
        width_mm, height_mm, bar_w_mm: 38, bar_d_mm: 38, drop_mm: height_mm / 5, ring_span_mm: span, rise_mm: span / 8, hooks_apart_mm: hooks === 2 ? span / 3 : 0,
        wire_angle_deg: 20, wire_tension_N: weight_N * 1.46, inward_pull_N: weight_N * 1.37, weight_N, lean_deg, top_standoff_mm: (lean_deg / 57.3) * height_mm, behind: null,
      }).svg);
    }), { numRuns: runs(200) });
  });

  it('cloth, and chance of lift', () => {
    fc.assert(fc.property(units, mm(400, 2500), mm(400, 2500), fc.constantFrom('width' as const, 'height' as const, 'either' as const), (unit, w, h, along) => {
      fc.pre(Math.max(w, h) / Math.min(w, h) <= 3);
      readable(clothCut({ units: unit, cut_width_mm: w, cut_height_mm: h, along, folds: [{ name: 'face', in_from_edge_mm: 136 }, { name: 'back-edge', in_from_edge_mm: 98 }, { name: 'staples', in_from_edge_mm: 79 }] }).svg);
    }), { numRuns: runs(150) });
    fc.assert(fc.property(units, mm(-100, 100), mm(1, 300), mm(10, 200), fc.double({ min: 0, max: 1, noNaN: true }), (unit, mean, sd, limit, chance) => {
      const made = liftChance({ units: unit, mean_mm: mean / 10, sd_mm: sd / 10, limit_mm: limit / 10, chance });
      if (made === null) throw new Error('there is a spread to show');
      readable(made.svg);
    }), { numRuns: runs(200) });
  });
});

describe('numbers on a sheet', () => {
  it('are rounded to two decimals, never minus nought, never anything but a number', () => {
    fc.assert(fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
      const shown = sheetNumber(value);
      expect(Object.is(shown, -0)).toBe(false);
      expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.005 + 1e-9);
    }));
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(() => sheetNumber(value)).toThrow(RangeError);
    // A number right between two of them: the last bits of one engine lie below, of another above.
    for (const noise of [-1e-12, 0, 1e-12]) expect(sheetNumber(21.375 + noise)).toBe(21.38);
  });
});
