import { barNames, cornerNames } from '../base/names.js';
import { remembered } from '../base/remembered.js';
import type { BarName, CornerName } from '../base/names.js';
import type { MembraneBorder, Structure, Support, Theory } from '../frame3d/index.js';
import type { CrossbarShape, FrameShape, PointForce, Section } from '../model/frame-shape.js';
import { Layout } from './mesh-layout.js';
import type { MeshMember } from './mesh-layout.js';
import { meshLines } from './mesh-lines.js';
import type { MeshLines } from './mesh-lines.js';

/** A frame shape cut into elements. Nodes lie in the plane z = 0, the bottom-left corner at the origin, mm. */
export interface FrameMesh {
  readonly structure: Structure;
  readonly corners: Readonly<Record<CornerName, number>>;
  /** The spring that stands for the plate at each corner; null where none is. */
  readonly plates: Readonly<Record<CornerName, number | null>>;
  readonly bars: Readonly<Record<BarName, MeshMember>>;
  readonly crossbars: readonly MeshMember[];
  readonly braces: readonly MeshMember[];
  readonly border: MembraneBorder;
  /** Node at a fraction along a bar that was among the places asked for. */
  readonly nodeAt: (bar: BarName, at: number) => number;
}

/**
 * How fine the mesh is: elements along a shorter side bar, and at least along a crossbar of that length and a brace.
 */
export interface MeshFineness {
  readonly bar: number;
  readonly crossbar: number;
  readonly brace: number;
}

/** The two corners a bar runs between, and the two bars that meet at a corner, with their ends there. */
export const barEnds: Readonly<Record<BarName, readonly [CornerName, CornerName]>> = {
  bottom: ['bottom-left', 'bottom-right'],
  top: ['top-left', 'top-right'],
  left: ['bottom-left', 'top-left'],
  right: ['bottom-right', 'top-right'],
};

/** The level and the upright bar that meet at a corner. */
export const barsAt = (corner: CornerName): readonly [BarName, BarName] => [
  corner.startsWith('bottom') ? 'bottom' : 'top',
  corner.endsWith('left') ? 'left' : 'right',
];

const isLevel = (bar: BarName): boolean => bar === 'bottom' || bar === 'top';

const isSize = (value: number): boolean => value > 0 && value < Infinity;
const sizes = ['w_mm', 'A_mm2', 'I_plane_mm4', 'I_out_mm4', 'J_mm4', 'E_MPa', 'G_MPa'] as const;
const hasSize = (section: Section): boolean => sizes.every((name) => isSize(section[name]));

/** Throws a RangeError for a shape that is no frame; looked at once, since none is changed in place. */
const checkShape = remembered((shape: FrameShape): true => {
  const sections = [
    ...barNames.map((b) => shape.bars[b]),
    ...shape.crossbars.map((c) => c.section),
    ...shape.braces.map((b) => b.section),
  ];
  if (!(isSize(shape.span_x_mm) && isSize(shape.span_y_mm) && sections.every(hasSize))) {
    throw new RangeError('a frame needs spans and sections of positive, finite size');
  }
  const gives = [...Object.values(shape.corner_give), ...[...shape.crossbars, ...shape.braces].map((c) => c.give)];
  if (!gives.every(({ plane, out, twist }) => plane >= 0 && out >= 0 && twist >= 0 && plane + out + twist < Infinity))
    throw new RangeError('the give of a joint is a finite number, 0 or more');
  if (!Object.values(shape.corner_plate_Nmm_per_rad).every((k) => k >= 0 && Number.isFinite(k)))
    throw new RangeError('the stiffness of a corner plate is a finite number, 0 or more');
  if (!shape.crossbars.every((c) => Number.isFinite(c.at))) throw new RangeError('a crossbar needs a place');
  const shorter = Math.min(shape.span_x_mm, shape.span_y_mm);
  if (!shape.braces.every((b) => b.leg_mm > 0 && b.leg_mm < shorter))
    throw new RangeError('a brace leg must be shorter than the bars it joins');
  return true;
});

/** Where a brace meets the level and the upright bar at its corner, as fractions of their spans. */
function bracePlaces(
  shape: FrameShape,
  corner: CornerName,
  leg_mm: number,
): { readonly level: number; readonly upright: number } {
  const x = leg_mm / shape.span_x_mm;
  const y = leg_mm / shape.span_y_mm;
  return { level: corner.endsWith('left') ? x : 1 - x, upright: corner.startsWith('bottom') ? y : 1 - y };
}

/**
 * Steps along the width and the height: the longer way gets more, by the root of the ratio, or its long elements would
 * decide the error.
 */
function stepsAlong({ span_x_mm: x, span_y_mm: y }: FrameShape, steps: number): readonly [number, number] {
  const along = (span: number): number => Math.ceil(steps * Math.sqrt(span / Math.min(x, y)) - 1e-9);
  return [along(x), along(y)];
}

/** Crossbar places first, so that braces and point forces that come very near give way to them. */
function linesOf(shape: FrameShape, extra: readonly PointForce[], steps: number): { x: MeshLines; y: MeshLines } {
  const [along_x, along_y] = stepsAlong(shape, steps);
  const places = shape.braces.map((b) => bracePlaces(shape, b.corner, b.leg_mm));
  const at = (runs: CrossbarShape['runs']): number[] => shape.crossbars.filter((c) => c.runs === runs).map((c) => c.at);
  const forces = (level: boolean): number[] => extra.filter((f) => isLevel(f.bar) === level).map((f) => f.at);
  return {
    x: meshLines([...at('upright'), ...places.map((p) => p.level), ...forces(true)], along_x),
    y: meshLines([...at('level'), ...places.map((p) => p.upright), ...forces(false)], along_y),
  };
}

/** Crossbars of both directions, sharing a node wherever two of them cross. */
function layCrossbars(
  layout: Layout,
  shape: FrameShape,
  lines: { x: MeshLines; y: MeshLines },
  edge: (a: number, b: number) => number,
  steps: number,
): MeshMember[] {
  const crossings = new Map<string, number>();
  const along = stepsAlong(shape, steps);
  return shape.crossbars.map((crossbar) => {
    const upright = crossbar.runs === 'upright';
    const [own, other] = upright ? [lines.x, lines.y] : [lines.y, lines.x];
    const line = own.indexOf(crossbar.at);
    const last = other.at.length - 1;
    const across = shape.crossbars.filter((c) => c.runs !== crossbar.runs).map((c) => c.at);
    const stops = meshLines(across, along[upright ? 1 : 0]);
    const crossed = new Map(across.map((place) => [stops.indexOf(place), other.indexOf(place)]));
    const ends = [0, last].map((end, which) => {
      const node = upright ? edge(line, end) : edge(end, line);
      return layout.behindJoint(
        node,
        `${crossbar.name} ${which === 0 ? 'start' : 'end'}`,
        crossbar.section,
        crossbar.give,
        upright ? [0, 1] : [1, 0],
      );
    });
    const nodes = stops.at.map((fraction, s) => {
      if (s === 0) return ends[0]!;
      if (s === stops.at.length - 1) return ends[1]!;
      const x = upright ? own.at[line]! * shape.span_x_mm : fraction * shape.span_x_mm;
      const y = upright ? fraction * shape.span_y_mm : own.at[line]! * shape.span_y_mm;
      const crossing = crossed.get(s);
      if (crossing === undefined) return layout.node(`${crossbar.name} ${s}`, x, y);
      const key = upright ? `${line} ${crossing}` : `${crossing} ${line}`;
      const known = crossings.get(key);
      if (known !== undefined) return known;
      const node = layout.node(`crossing ${key}`, x, y);
      crossings.set(key, node);
      return node;
    });
    return layout.chain(crossbar.name, 'crossbar', crossbar.section, nodes);
  });
}

/** Timber braces. One so short that it meets both bars in the corner itself holds nothing and is left out. */
function layBraces(
  layout: Layout,
  shape: FrameShape,
  lines: { x: MeshLines; y: MeshLines },
  edge: (a: number, b: number) => number,
  steps: number,
): MeshMember[] {
  return shape.braces.flatMap(({ corner, leg_mm, section, give }) => {
    const places = bracePlaces(shape, corner, leg_mm);
    const onLevel = edge(lines.x.indexOf(places.level), corner.startsWith('bottom') ? 0 : lines.y.at.length - 1);
    const onUpright = edge(corner.endsWith('left') ? 0 : lines.x.at.length - 1, lines.y.indexOf(places.upright));
    if (onLevel === onUpright) return [];
    const [start, end] = corner.endsWith('left') ? [onUpright, onLevel] : [onLevel, onUpright];
    const [a, b] = [layout.nodes[start]!, layout.nodes[end]!];
    const name = `${corner} brace`;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const along = [(b.x - a.x) / length, (b.y - a.y) / length] as const;
    const [from, to] = [
      layout.behindJoint(start, `${name} start`, section, give, along),
      layout.behindJoint(end, `${name} end`, section, give, along),
    ];
    const inner = Array.from({ length: steps - 1 }, (_, n) => {
      const s = (n + 1) / steps;
      return layout.node(`${name} ${n + 1}`, a.x + s * (b.x - a.x), a.y + s * (b.y - a.y));
    });
    return [layout.chain(name, 'brace', section, [from, ...inner, to])];
  });
}

/**
 * Cuts a frame into elements: bars from left to right and bottom to top, a node at every corner, bar and crossbar ends
 * behind their joints, brace ends too, crossbars rigid where they cross. Point forces get a node of their own.
 * Throws a RangeError for a shape that is no frame (sizes not positive and finite, a brace leg longer than a bar).
 */
export function meshFrame(
  shape: FrameShape,
  extra: readonly PointForce[],
  fineness: MeshFineness,
  theory: Theory,
): FrameMesh {
  checkShape(shape);
  const layout = new Layout(theory);
  const lines = linesOf(shape, extra, fineness.bar);
  const [right, top] = [lines.x.at.length - 1, lines.y.at.length - 1];
  const round = new Int32Array((right + 1) * (top + 1)).fill(-1);
  const edge = (a: number, b: number): number => round[b * (right + 1) + a]!;
  const place = (id: string, a: number, b: number): number => {
    const node = layout.node(id, lines.x.at[a]! * shape.span_x_mm, lines.y.at[b]! * shape.span_y_mm);
    round[b * (right + 1) + a] = node;
    return node;
  };
  const corners: Record<CornerName, number> = {
    'bottom-left': place('bottom-left', 0, 0),
    'bottom-right': place('bottom-right', right, 0),
    'top-left': place('top-left', 0, top),
    'top-right': place('top-right', right, top),
  };
  const bar = (name: BarName): MeshMember => {
    const level = isLevel(name);
    const fixed = name === 'top' ? top : name === 'right' ? right : 0;
    const last = level ? right : top;
    const section = shape.bars[name];
    const end = (corner: CornerName): number =>
      layout.behindJoint(
        corners[corner],
        `${name} at ${corner}`,
        section,
        shape.corner_give[corner],
        level ? [1, 0] : [0, 1],
      );
    const nodes = [end(barEnds[name][0])];
    for (let s = 1; s < last; s++)
      nodes.push(level ? place(`${name} ${s}`, s, fixed) : place(`${name} ${s}`, fixed, s));
    nodes.push(end(barEnds[name][1]));
    return layout.chain(name, 'bar', section, nodes);
  };
  const bars = { bottom: bar('bottom'), right: bar('right'), top: bar('top'), left: bar('left') };
  const endAt = (name: BarName, corner: CornerName): number => {
    const { nodes: along } = bars[name];
    return barEnds[name][0] === corner ? along[0]! : along[along.length - 1]!;
  };
  const plateAt = (corner: CornerName): number | null => {
    const [level, upright] = barsAt(corner);
    return layout.plate(endAt(level, corner), endAt(upright, corner), shape.corner_plate_Nmm_per_rad[corner]);
  };
  const plates = Object.fromEntries(cornerNames.map((corner) => [corner, plateAt(corner)])) as Record<
    CornerName,
    number | null
  >;
  const crossbars = layCrossbars(layout, shape, lines, edge, fineness.crossbar);
  const braces = layBraces(layout, shape, lines, edge, fineness.brace);
  const supports: Support[] = [
    { node: corners['bottom-left'], fix: { ux: 0, uy: 0, uz: 0 } },
    { node: corners['bottom-right'], fix: { uy: 0, uz: 0 } },
    { node: corners['top-left'], fix: { uz: 0 } },
  ];
  const border: MembraneBorder = {
    width: shape.span_x_mm,
    height: shape.span_y_mm,
    along_x: lines.x.at,
    along_y: lines.y.at,
    bottom: bars.bottom.nodes,
    top: bars.top.nodes,
    left: bars.left.nodes,
    right: bars.right.nodes,
  };
  const nodeAt = (name: BarName, at: number): number => {
    const index = (isLevel(name) ? lines.x : lines.y).indexOf(at);
    const fixed = name === 'top' ? top : name === 'right' ? right : 0;
    return isLevel(name) ? edge(index, fixed) : edge(fixed, index);
  };
  const { nodes, members, springs } = layout;
  return { structure: { nodes, members, springs, supports }, corners, plates, bars, crossbars, braces, border, nodeAt };
}
