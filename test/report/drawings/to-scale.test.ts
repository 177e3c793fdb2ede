import { describe, expect, it } from 'vitest';
import { barSection } from '../../../src/report/drawings/bar-section.js';
import { clothCut } from '../../../src/report/drawings/cloth-cut.js';
import { cornerBuild } from '../../../src/report/drawings/corner-build.js';
import { cutBoards } from '../../../src/report/drawings/cut-boards.js';
import { frontView, type FrontView } from '../../../src/report/drawings/front-view.js';
import { hanging } from '../../../src/report/drawings/hanging.js';
import { liftChance } from '../../../src/report/drawings/lift-chance.js';
import { propeller } from '../../../src/report/drawings/propeller.js';
import { rollPicture } from '../../../src/report/drawings/roll.js';
import type { Point } from '../../../src/report/drawings/svg.js';
import { labelsOf, pathsOf, sizeOf } from '../svg-reading.js';

/** Sheet units are kept to 0.01, so a length of a few hundred units is true to about 0.02. */
const line = 0.03;

const front: FrontView = {
  units: 'metric', width_mm: 1230, height_mm: 870, bar_w_mm: { top: 64, bottom: 38, left: 30, right: 50 }, cut: 'mitre', seams_mm: [],
  crossbars: [{ name: 'crossbar-1', runs: 'upright', at: 0.4, w_mm: 20 }, { name: 'crossbar-2', runs: 'level', at: 0.25, w_mm: 44 }],
  braces: [{ corner: 'bottom-left', kind: 'timber', leg_mm: 210, w_mm: 25 }],
};

const boxes = (svg: string, closedOnly = false): readonly { readonly points: readonly Point[]; readonly width: number; readonly height: number; readonly x: number; readonly y: number }[] =>
  pathsOf(svg, closedOnly).map((points) => ({ points, ...sizeOf(points), x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) }));

/** The path whose box is nearest to a wanted size. */
function nearest(svg: string, width: number, height: number) {
  const all = boxes(svg).filter((b) => b.points.length >= 4);
  return all.reduce((best, b) => (Math.hypot(b.width - width, b.height - height) < Math.hypot(best.width - width, best.height - height) ? b : best));
}

/** The largest four-sided path: the face. */
const largest = (svg: string) => boxes(svg).filter((b) => b.points.length === 4).reduce((most, b) => (b.width * b.height > most.width * most.height ? b : most));

describe('the front view is to scale', () => {
  const { svg } = frontView(front);
  const outer = largest(svg);
  const scale = outer.width / front.width_mm;

  it('keeps the proportion of the face and the width of every bar', () => {
    expect(outer.height / scale).toBeCloseTo(front.height_mm, 0);
    const inner = nearest(svg, (1230 - 30 - 50) * scale, (870 - 64 - 38) * scale);
    expect(Math.abs(inner.width - 1150 * scale)).toBeLessThan(line);
    expect(Math.abs(inner.height - 768 * scale)).toBeLessThan(line);
    expect(Math.abs(inner.x - outer.x - 30 * scale)).toBeLessThan(line);
    expect(Math.abs(inner.y - outer.y - 64 * scale)).toBeLessThan(line);
  });

  it('puts each crossbar at its fraction of the centre-line span, and says that place', () => {
    const upright = nearest(svg, 20 * scale, 768 * scale);
    const centre_mm = 15 + 0.4 * (1230 - 15 - 25);
    expect(Math.abs(upright.x + upright.width / 2 - outer.x - centre_mm * scale)).toBeLessThan(line);
    const level = nearest(svg, 1150 * scale, 44 * scale);
    const up_mm = 19 + 0.25 * (870 - 19 - 32);
    expect(Math.abs(outer.y + outer.height - (level.y + level.height / 2) - up_mm * scale)).toBeLessThan(line);
    const said = labelsOf(svg).map(({ text }) => text);
    for (const words of ['1230 mm', '870 mm', '491 mm', '224 mm', 'leg 210 mm']) expect(said).toContain(words);
  });

  it('lets the centre line of a brace meet the bars’ centre lines at its leg', () => {
    const corner = { x: outer.x + 15 * scale, y: outer.y + outer.height - 19 * scale };
    const brace = pathsOf(svg).filter((points) => points.length === 4).find((points) => points.filter((p) => Math.abs(p.x - outer.x - 30 * scale) < line).length === 2 && points.filter((p) => Math.abs(outer.y + outer.height - p.y - 38 * scale) < line).length === 2);
    if (brace === undefined) throw new Error('no brace drawn');
    const sums = brace.map((p) => (p.x - corner.x) / scale + (corner.y - p.y) / scale);
    expect(Math.min(...sums)).toBeCloseTo(210 - 25 / Math.SQRT2, 0);
    expect(Math.max(...sums)).toBeCloseTo(210 + 25 / Math.SQRT2, 0);
  });

  it('says inches for a plan in inches', () => {
    const said = labelsOf(frontView({ ...front, units: 'inch', width_mm: 898.525 }).svg).map(({ text }) => text);
    expect(said).toContain('35-3/8 in');
    expect(said.join(' ')).not.toMatch(/ mm/u);
  });

  it('never draws two different plans alike', () => {
    expect(frontView(front).svg).toBe(frontView(front).svg);
    expect(frontView({ ...front, height_mm: 871 }).svg).not.toBe(frontView(front).svg);
    expect(frontView({ ...front, cut: 'butt' }).svg).not.toBe(frontView({ ...front, cut: 'half-lap' }).svg);
  });
});

describe('the other drawings are to scale', () => {
  it('section: bar, plies and where the pull acts', () => {
    const { svg } = barSection({ units: 'metric', w_mm: 57, d_mm: 38, plies: 3, stack: 'side-by-side', bond: 'glue', lip_mm: 6, fixing: 'back', turn_mm: 50 });
    const bars = boxes(svg, true).filter((b) => b.points.length === 4);
    const whole = bars.reduce((most, b) => (b.width * b.height > most.width * most.height ? b : most));
    expect(whole.width / whole.height).toBeCloseTo(38 / 57, 3);
    expect(bars.filter((b) => Math.abs(b.height - whole.height / 3) < line && Math.abs(b.width - whole.width) < line)).toHaveLength(3);
    expect(labelsOf(svg).map(({ text }) => text)).toEqual(expect.arrayContaining(['57 mm', '38 mm', '25 mm', 'glue line']));
  });

  it('corner: both bars, brace and nail', () => {
    const { svg } = cornerBuild({
      units: 'metric', cut: 'butt', glued: true, level_w_mm: 64, upright_w_mm: 40, nails: { count: 1, length_mm: 75, name: 'nail', place_mm: 32 }, brace: null, plate_screws: null, ply_screws: null, seams_mm: [],
    });
    const level = labelsOf(svg).map(({ text }) => text);
    expect(level).toEqual(expect.arrayContaining(['64 mm', '40 mm']));
    const joint = boxes(svg).find((b) => b.points.length === 2 && b.width < line && b.height > 10);
    if (joint === undefined) throw new Error('no joint line');
    const scale = joint.height / 64;
    const nail = boxes(svg).find((b) => b.points.length === 2 && b.height < line && Math.abs(b.width - 75 * scale) < line);
    expect(nail, 'a nail 75 mm long').toBeDefined();
    expect(Math.abs((nail?.y ?? 0) - joint.y - 32 * scale)).toBeLessThan(line);
  });

  it('boards: every piece at its place, slanted ends by their slant, the rest left over', () => {
    const { svg } = cutBoards({
      units: 'metric',
      boards: [{ label: 'board 1', length_mm: 2000, left_mm: 440, pieces: [{ label: 'A', from_mm: 10, to_mm: 910, slant_mm: 38, long_side: 'upper' }, { label: 'B', from_mm: 877, to_mm: 1560, slant_mm: 38, long_side: 'lower' }] }],
    });
    const scale = (400 - 28) / 2000;
    const pieces = boxes(svg).filter((b) => b.points.length === 4 && Math.abs(b.width - 2000 * scale) > 1);
    expect(pieces.map((b) => [Math.round((b.x - 14) / scale), Math.round(b.width / scale)])).toEqual([[10, 900], [877, 683]]);
    const first = pieces[0]?.points ?? [];
    expect(Math.round(((first[3]?.x ?? 0) - (first[0]?.x ?? 0)) / scale)).toBe(38);
    expect(labelsOf(svg).map(({ text }) => text)).toContain('440 mm over');
  });

  it('cloth and roll', () => {
    const cloth = clothCut({ units: 'metric', cut_width_mm: 1500, cut_height_mm: 900, along: 'width', folds: [{ name: 'face', in_from_edge_mm: 120 }, { name: 'staples', in_from_edge_mm: 70 }] });
    const [edge, face, staples] = boxes(cloth.svg);
    const scale = (edge?.width ?? 0) / 1500;
    expect((edge?.height ?? 0) / scale).toBeCloseTo(900, 0);
    expect((face?.width ?? 0) / scale).toBeCloseTo(1260, 0);
    expect((staples?.height ?? 0) / scale).toBeCloseTo(760, 0);
    const roll = rollPicture({ units: 'metric', roll_width_mm: 1500, length_mm: 2500, cloths: [{ label: 'one', along_mm: 300, across_mm: 200, length_mm: 1000, width_mm: 1300 }] });
    const sizes = boxes(roll.svg).filter((b) => b.points.length === 4);
    const whole = sizes[0];
    const piece = sizes[1];
    const per_mm = (whole?.width ?? 0) / 2500;
    expect((whole?.height ?? 0) / per_mm).toBeCloseTo(1500, 0);
    expect(((piece?.x ?? 0) - (whole?.x ?? 0)) / per_mm).toBeCloseTo(300, 0);
    expect((piece?.height ?? 0) / per_mm).toBeCloseTo(1300, 0);
  });

  it('hanging: rings at their drop and span in the back view', () => {
    const given = {
      units: 'metric', by: 'wire', strips: [], hooks: 1, width_mm: 1000, height_mm: 800, bar_w_mm: 40, bar_d_mm: 40, drop_mm: 200, ring_span_mm: 920, rise_mm: 120, hooks_apart_mm: 0,
      wire_angle_deg: 14.6, wire_tension_N: 80, inward_pull_N: 77, weight_N: 40, lean_deg: 1.5, top_standoff_mm: 21, behind: null,
    } as const;
    const { svg } = hanging({ ...given, frame: { ...front, width_mm: 1000, height_mm: 800, bar_w_mm: { top: 40, bottom: 40, left: 40, right: 40 }, crossbars: [{ name: 'crossbar-1', runs: 'upright', at: 0.25, w_mm: 20 }], braces: [] } });
    const outer = largest(svg);
    const scale = outer.width / 1000;
    const wire = boxes(svg).find((b) => b.points.length === 3 && Math.abs(b.width - 920 * scale) < line);
    expect((wire?.height ?? 0) / scale).toBeCloseTo(120, 0);
    expect(((wire?.y ?? 0) + (wire?.height ?? 0) - outer.y) / scale).toBeCloseTo(200, 0);
    expect(labelsOf(svg).map(({ text }) => text).join(' ')).toContain('77 N');
    // seen from behind, a crossbar a quarter of the way from the left stands a quarter from the right: 1000 − (20 + 0.25 × 960)
    const crossbar = boxes(svg).find((b) => b.points.length === 4 && Math.abs(b.width - 20 * scale) < line && b.height > 100);
    expect(((crossbar?.x ?? 0) + (crossbar?.width ?? 0) / 2 - outer.x) / scale).toBeCloseTo(740, 0);
  });

  it('hanging: seams and mitre lines are drawn; behind a half-lap the upright bar lies in front; what stands out keeps the bars off the wall', () => {
    const bars = { top: 40, bottom: 40, left: 40, right: 40 };
    const given = {
      units: 'metric', by: 'two-hooks', strips: [], hooks: 2, width_mm: 1000, height_mm: 800, bar_w_mm: 40, bar_d_mm: 20, drop_mm: 200, ring_span_mm: 900, rise_mm: null, hooks_apart_mm: 0,
      wire_angle_deg: null, wire_tension_N: null, inward_pull_N: null, weight_N: 40, lean_deg: 0, top_standoff_mm: 0, behind: null,
    } as const;
    const drawn = (cut: FrontView['cut'], behind: Parameters<typeof hanging>[0]['behind'] = null): string =>
      hanging({ ...given, behind, frame: { ...front, cut, width_mm: 1000, height_mm: 800, bar_w_mm: bars, seams_mm: [15], crossbars: [], braces: [] } }).svg;
    const scale = largest(drawn('mitre')).width / 1000;
    const lines = (svg: string, width: number, height: number): number => boxes(svg).filter((b) => b.points.length === 2 && Math.abs(b.width - width * scale) < line && Math.abs(b.height - height * scale) < line).length;
    expect([lines(drawn('mitre'), 40, 40), lines(drawn('mitre'), 970, 0), lines(drawn('mitre'), 0, 770)]).toEqual([4, 2, 2]);
    // from behind the seam of the upright bars runs through to the outside, that of the level ones ends at them
    expect([lines(drawn('half-lap'), 920, 0), lines(drawn('half-lap'), 0, 800)]).toEqual([2, 2]);
    const plates = drawn('mitre', { out_mm: 9, up_mm: [[0, 160], [640, 800]] });
    const wall = boxes(plates).filter((b) => b.points.length === 4 && b.x >= 296 - line);
    expect(wall.map((b) => Math.round(b.height)).sort((a, b) => a - b)).toEqual([27, 27, 136]);
    const bar = wall.reduce((most, b) => (b.height > most.height ? b : most));
    expect(bar.x).toBeGreaterThan(296 + 3);
    expect(labelsOf(plates).map(({ text }) => text)).toContain('bars 9 mm off the wall');
  });

  it('the depth of a section is told beside its centre line, not across it', () => {
    const { svg } = barSection({ units: 'metric', w_mm: 38, d_mm: 38, plies: 2, stack: 'side-by-side', bond: 'glue', lip_mm: 6, fixing: 'back', turn_mm: 50 });
    const depth = labelsOf(svg).filter(({ text }) => text === '38 mm').map(({ box }) => box).reduce((low, one) => (one.y > low.y ? one : low));
    const through = boxes(svg).filter((b) => b.points.length === 2 && b.width < line && b.x > depth.x && b.x < depth.x + depth.width && b.y < depth.y + depth.height - 1 && b.y + b.height > depth.y + 1);
    expect(through).toEqual([]);
  });

  it('half-lap: the level bar lies in front, its edge drawn through, the upright’s hidden', () => {
    const { svg } = frontView({ ...front, cut: 'half-lap', crossbars: [], braces: [] });
    const [outer] = boxes(svg).filter((b) => b.points.length === 4).sort((a, b) => b.width * b.height - a.width * a.height);
    const scale = (outer?.width ?? 0) / 1230;
    const dashed = [...svg.matchAll(/<path d="M([\d.]+) ([\d.]+) L([\d.]+) ([\d.]+)"[^>]*stroke-dasharray/gu)].map(([, ...n]) => n.map(Number) as [number, number, number, number]);
    const through = boxes(svg).filter((b) => b.points.length === 2 && b.height < line && Math.abs(b.width - 30 * scale) < line);
    expect(through).toHaveLength(2);
    expect(through.map((b) => Math.round((b.y - (outer?.y ?? 0)) / scale)).sort((a, b) => a - b)).toEqual([64, 870 - 38]);
    expect(dashed.filter(([x1, , x2]) => Math.abs(x1 - x2) < line)).toHaveLength(4);
    expect(dashed.filter(([, y1, , y2]) => Math.abs(y1 - y2) < line)).toHaveLength(0);
  });
});

describe('pictures of shapes', () => {
  const twist = (x: number, y: number): number => (x / 1000 - 0.5) * (y / 600 - 0.5);
  const member = (name: string, from: Point, to: Point) => ({
    member: name,
    points: [0, 0.25, 0.5, 0.75, 1].map((t) => {
      const [x, y] = [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
      return { x, y, dx: 0, dy: 0, dz: twist(x, y) };
    }),
  });
  const [a, b, c, d] = [{ x: 0, y: 0 }, { x: 1000, y: 0 }, { x: 1000, y: 600 }, { x: 0, y: 600 }] as const;
  const lines = [member('bottom', a, b), member('right', b, c), member('top', d, c), member('left', a, d)];

  it('a propeller has two corners forward and two back, whatever tilt of the whole frame the solver left in it', () => {
    const plain = propeller({ units: 'metric', words: 'propeller', lines });
    const tilted = propeller({ units: 'metric', words: 'propeller', lines: lines.map((l) => ({ ...l, points: l.points.map((p) => ({ ...p, dz: p.dz + 0.3 + 0.002 * p.x - 0.001 * p.y })) })) });
    expect(labelsOf(plain?.svg ?? '').map(({ text }) => text)).toEqual(expect.arrayContaining(['bottom left comes forward', 'top right comes forward', 'top left goes back', 'bottom right goes back']));
    expect(tilted?.svg).toBe(plain?.svg);
  });

  it('the largest movement is drawn as long as the picture says', () => {
    const svg = propeller({ units: 'metric', words: 'propeller', lines })?.svg ?? '';
    const flat = boxes(svg)[0];
    const scale = (flat?.width ?? 0) / 1000;
    const rise = boxes(svg).filter((p) => p.points.length === 2 && p.width < line && p.height > 5);
    const said = Number(/drawn as (\d+) mm/u.exec(labelsOf(svg).map(({ text }) => text).join(' '))?.[1]);
    expect(said).toBe(200);
    // the shaft of an arrow stops at the base of its head, 9 units short of the tip
    for (const shaft of rise) expect(shaft.height + 9).toBeCloseTo(said * scale, 0);
  });

  it('nothing to show is no picture: a frame that does not move, a lift without spread', () => {
    expect(propeller({ units: 'metric', words: 'propeller', lines: lines.map((l) => ({ ...l, points: l.points.map((p) => ({ ...p, dz: 0 })) })) })).toBeNull();
    expect(liftChance({ units: 'metric', mean_mm: 1, sd_mm: 0, limit_mm: 5, chance: 0 })).toBeNull();
    expect(liftChance({ units: 'metric', mean_mm: Number.NaN, sd_mm: 1, limit_mm: 5, chance: 0.1 })).toBeNull();
  });

  it('the dark part of the hill has the share that the chance says', () => {
    const [mean, sd, limit] = [1, 4, 6];
    const svg = liftChance({ units: 'metric', mean_mm: mean, sd_mm: sd, limit_mm: limit, chance: 0.1456 })?.svg ?? '';
    const area = (points: readonly Point[]): number => Math.abs(points.reduce((sum, p, i) => sum + p.x * ((points[(i + 1) % points.length] as Point).y - (points.at(i - 1) as Point).y), 0)) / 2;
    const [hill, left, right] = pathsOf(svg).filter((points) => points.length > 100);
    // P(|lift| > 6) for a normal of mean 1 and sd 4: Q(5/4) + Q(7/4) = 0.10565 + 0.04006
    expect((area(left ?? []) + area(right ?? [])) / area(hill ?? [])).toBeCloseTo(0.1457, 2);
  });
});
