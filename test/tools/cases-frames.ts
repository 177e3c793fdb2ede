import { directions, eulerBernoulli, solveFrame, timoshenko } from '../../src/frame3d/index.js';
import type { FrameSolution, Loads, Member, Spring, Structure, Support, Theory, Vector } from '../../src/frame3d/index.js';

/** What a runner of worked cases reports: a line per case, and how many agree. */
export interface CaseRun {
  readonly lines: string[];
  readonly within: number;
  readonly total: number;
  readonly tolerance: string;
}

type Six = readonly [number, number, number, number, number, number];
type NamedLoad = { readonly [key: string]: number | string };

/** One case as written in a file of frame cases. */
export interface FrameCase {
  readonly id: string;
  readonly materials: Readonly<Record<string, { E: number; G: number }>>;
  readonly sections: Readonly<Record<string, { A: number; Iy: number; Iz: number; J: number }>>;
  readonly nodes: Readonly<Record<string, Vector>>;
  readonly members: Readonly<
    Record<string, { i: string; j: string; section: string; material?: string; zref: Vector; releases?: NonNullable<Member['releases']> }>
  >;
  readonly supports: readonly { node: string; fix: Support['fix'] }[];
  readonly nodeLoads?: readonly NamedLoad[];
  readonly memberLoads?: readonly { member: string; q?: Vector; m?: Vector }[];
  readonly springs?: readonly { i: string; j: string; k: Six }[];
  readonly expected: {
    readonly displacements?: Readonly<Record<string, Six>>;
    readonly displacementsTimoshenko?: Readonly<Record<string, Six>>;
    readonly reactions?: Readonly<Record<string, Readonly<Record<string, number>>>>;
    readonly endForces?: Readonly<Record<string, readonly number[]>>;
    readonly closedForm?: Readonly<Record<string, number | string>>;
    readonly published?: Readonly<Record<string, number | string | readonly number[] | Readonly<Record<string, number>>>>;
  };
}

/** A case as the solver takes it, and where each name went. */
export interface BuiltCase {
  readonly structure: Structure;
  readonly loads: Loads;
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly memberOf: ReadonlyMap<string, number>;
}

const none: Vector = [0, 0, 0];
const forceNames = ['Fx', 'Fy', 'Fz', 'Mx', 'My', 'Mz'] as const;
const tolerance = 1e-6;

/** Turns the named parts of a case into the solver's structure. Throws an Error naming a reference to nothing. */
export function buildCase(c: FrameCase): BuiltCase {
  const nodeOf = new Map(Object.keys(c.nodes).map((name, p) => [name, p]));
  const memberOf = new Map(Object.keys(c.members).map((name, e) => [name, e]));
  const find = (map: ReadonlyMap<string, number>, name: string, what: string): number => {
    const at = map.get(name);
    if (at === undefined) throw new Error(`it speaks of ${what} "${name}", which it does not have`);
    return at;
  };
  const node = (name: string): number => find(nodeOf, name, 'a node');
  const onlyMaterial = Object.keys(c.materials)[0] ?? '';
  const members = Object.entries(c.members).map(([id, m]): Member => {
    const section = c.sections[m.section];
    const material = c.materials[m.material ?? onlyMaterial];
    if (!section || !material) throw new Error(`member "${id}" has no section or material`);
    const base = { id, i: node(m.i), j: node(m.j), zref: m.zref, E: material.E, G: material.G };
    const { A, Iy, Iz, J } = section;
    return { ...base, A, Iy, Iz, J, ...(m.releases ? { releases: m.releases } : {}) };
  });
  const pick = (load: NamedLoad, names: readonly string[]): Vector => names.map((n) => Number(load[n] ?? 0)) as unknown as Vector;
  return {
    nodeOf,
    memberOf,
    structure: {
      nodes: Object.entries(c.nodes).map(([id, [x, y, z]]) => ({ id, x, y, z })),
      members,
      springs: (c.springs ?? []).map((s): Spring => ({ i: node(s.i), j: node(s.j), k: s.k })),
      supports: c.supports.map((s) => ({ node: node(s.node), fix: s.fix })),
    },
    loads: {
      nodes: (c.nodeLoads ?? []).map((l) => ({
        node: node(String(l['node'])),
        force: pick(l, ['Fx', 'Fy', 'Fz']),
        moment: pick(l, ['Mx', 'My', 'Mz']),
      })),
      members: (c.memberLoads ?? []).map((l) => ({
        member: find(memberOf, l.member, 'a member'),
        force: l.q ?? none,
        moment: l.m ?? none,
      })),
    },
  };
}

/** Largest difference between pairs of numbers, over the largest expected one of the same kind. */
class Comparison {
  readonly #pairs: { kind: string; found: number; expected: number }[] = [];

  add(kind: string, found: number, expected: number): void {
    this.#pairs.push({ kind, found, expected });
  }

  get size(): number {
    return this.#pairs.length;
  }

  worst(): number {
    const largest = new Map<string, number>();
    for (const { kind, expected } of this.#pairs) largest.set(kind, Math.max(largest.get(kind) ?? 0, Math.abs(expected)));
    let worst = 0;
    for (const { kind, found, expected } of this.#pairs) {
      const scale = largest.get(kind)!;
      const off = Math.abs(found - expected) / (scale > 0 ? scale : 1);
      if (!(off <= worst)) worst = Number.isNaN(off) ? Infinity : off;
    }
    return worst;
  }
}

const movementKind = (d: number): string => (d < 3 ? 'shift' : 'turn');
const actionKind = (d: number): string => (d % 6 < 3 ? 'force' : 'moment');

function compareDisplacements(built: BuiltCase, solution: FrameSolution, expected: Readonly<Record<string, Six>>): number {
  const comparison = new Comparison();
  for (const [name, six] of Object.entries(expected)) {
    const p = built.nodeOf.get(name);
    six.forEach((value, d) => comparison.add(movementKind(d), p === undefined ? NaN : solution.u[6 * p + d]!, value));
  }
  return comparison.worst();
}

function compareActions(c: FrameCase, built: BuiltCase, solution: FrameSolution): { reactions: number; endForces: number } {
  const reactions = new Comparison();
  const endForces = new Comparison();
  for (const [name, values] of Object.entries(c.expected.reactions ?? {})) {
    const p = built.nodeOf.get(name);
    for (const [key, value] of Object.entries(values)) {
      const d = forceNames.indexOf(key as (typeof forceNames)[number]);
      reactions.add(actionKind(d), p === undefined ? NaN : solution.reactions[6 * p + d]!, value);
    }
  }
  for (const [name, values] of Object.entries(c.expected.endForces ?? {})) {
    const forces = solution.endForces[built.memberOf.get(name) ?? -1];
    values.forEach((value, r) => {
      endForces.add(actionKind(r), forces?.[r] ?? NaN, value);
      reactions.add(actionKind(r), value, value);
    });
  }
  return { reactions: reactions.worst(), endForces: endForces.worst() };
}

/** A number of the solution by its name in the file: `N3.ux`, `R.N1.Mz`, or one of the named results of a plain frame. */
function lookUp(name: string, built: BuiltCase, solution: FrameSolution): number {
  const parts = name.split('.');
  if (parts[0] === 'R' && parts.length === 3) {
    const d = forceNames.indexOf(parts[2] as (typeof forceNames)[number]);
    return solution.reactions[6 * (built.nodeOf.get(parts[1]!) ?? NaN) + d] ?? NaN;
  }
  if (parts.length === 2) {
    const d = directions.indexOf(parts[1] as (typeof directions)[number]);
    return solution.u[6 * (built.nodeOf.get(parts[0]!) ?? NaN) + d] ?? NaN;
  }
  return plainFrameResult(name, built, solution);
}

/** Named results of a rectangle of four bars with corners N1 (origin), N2, N3, N4 anticlockwise. */
function plainFrameResult(name: string, built: BuiltCase, solution: FrameSolution): number {
  const { nodes } = built.structure;
  const [a, b] = [nodes[built.nodeOf.get('N2')!]!.x, nodes[built.nodeOf.get('N4')!]!.y];
  const at = (x: number, y: number): number => 6 * nodes.findIndex((n) => Math.abs(n.x - x) + Math.abs(n.y - y) < 1e-9);
  const [corner, midBottom, midLeft] = [at(0, 0), at(a / 2, 0), at(0, b / 2)];
  const first = solution.endForces[built.memberOf.get('B1')!]!;
  const side = solution.endForces[built.memberOf.get('L1')!]!;
  const { u } = solution;
  switch (name) {
    case 'cornerMoment': return Math.abs(first[5]!);
    case 'bottomMidDeflRelCorner': return u[midBottom + 1]! - u[corner + 1]!;
    case 'leftMidDeflRelCorner': return u[midLeft]! - u[corner]!;
    case 'axialBottom': return -first[0]!;
    case 'axialLeft': return -side[0]!;
    case 'outOfPlaneMomentBottom': return Math.abs(first[4]!);
    case 'outOfPlaneMomentLeft': return Math.abs(side[4]!);
    case 'bottomMidUzRelCornerAbs': return Math.abs(u[midBottom + 2]! - u[corner + 2]!);
    case 'leftMidUzRelCornerAbs': return Math.abs(u[midLeft + 2]! - u[corner + 2]!);
    case 'bottomMidTwistAbs': return Math.abs(u[midBottom + 3]!);
    case 'leftMidTwistAbs': return Math.abs(u[midLeft + 4]!);
    default: return NaN;
  }
}

function compareClosedForms(c: FrameCase, built: BuiltCase, solution: FrameSolution): number | null {
  let worst: number | null = null;
  for (const [name, value] of Object.entries(c.expected.closedForm ?? {})) {
    if (typeof value !== 'number') continue;
    const off = Math.abs(lookUp(name, built, solution) - value) / Math.abs(value);
    worst = Math.max(worst ?? 0, Number.isNaN(off) ? Infinity : off);
  }
  return worst;
}

/** One unit in the last place a number is printed to. */
function lastPlace(value: number): number {
  const [mantissa, exponent] = value.toString().split('e');
  const decimals = mantissa!.split('.')[1]?.length ?? 0;
  return 10 ** (Number(exponent ?? 0) - decimals);
}

/** Books round along the way as well as at the end: this share of a printed value is allowed beside its last place. */
const handRounding = 0.002;

/**
 * Largest difference from printed values, over what their printing allows (1 = just explained by it): one unit in the
 * last printed place, or a share of the value, `handRounding` or what the source itself admits (`up to 7.6 %`).
 */
function comparePublished(c: FrameCase, built: BuiltCase, solution: FrameSolution): number | null {
  const published = c.expected.published;
  if (!published) return null;
  const stated = /up to ([\d.]+) ?%/.exec(String(published['source'] ?? ''));
  const share = stated ? Number(stated[1]) / 100 : handRounding;
  let worst = 0;
  const check = (found: number, value: number): void => {
    const off = Math.abs(found - value) / Math.max(lastPlace(value), share * Math.abs(value));
    worst = Math.max(worst, Number.isNaN(off) ? Infinity : off);
  };
  for (const [name, value] of Object.entries(published)) {
    if (typeof value === 'string') continue;
    const node = built.nodeOf.get(name.replace(/^R\./, ''));
    const values = name.startsWith('R.') ? solution.reactions : solution.u;
    if (typeof value === 'number') check(lookUp(name, built, solution), value);
    else if (Array.isArray(value)) value.forEach((v: number, d) => check(values[6 * (node ?? NaN) + d]!, v));
    else if (name.endsWith('.i')) {
      const forces = solution.endForces[built.memberOf.get(name.slice(0, -2)) ?? -1];
      Object.values(value as Record<string, number>).forEach((v, r) => check(Math.abs(forces?.[r] ?? NaN), Math.abs(v)));
    } else {
      for (const [key, v] of Object.entries(value as Record<string, number>)) check(lookUp(`${name}.${key}`, built, solution), v);
    }
  }
  return worst;
}

function solved(built: BuiltCase, theory: Theory): FrameSolution {
  const answer = solveFrame(built.structure, built.loads, theory);
  if (!answer.stable) throw new Error(`it is unstable: ${answer.freedoms.map((f) => f.words).join(', ')}`);
  return answer.solution;
}

/** How far one case is off: relative differences, and for published values the share of what their printing allows. */
export interface CaseDifferences {
  readonly eulerBernoulli: number | null;
  readonly timoshenko: number | null;
  readonly reactions: number | null;
  readonly endForces: number | null;
  readonly closedForm: number | null;
  readonly published: number | null;
  readonly within: boolean;
}

/** Solves a case in both theories and compares everything it expects. Throws an Error when the case is malformed or unstable. */
export function differencesOf(c: FrameCase): CaseDifferences {
  const built = buildCase(c);
  const plain = solved(built, eulerBernoulli);
  const { displacements, displacementsTimoshenko } = c.expected;
  const actions = compareActions(c, built, plain);
  const parts = {
    eulerBernoulli: displacements ? compareDisplacements(built, plain, displacements) : null,
    timoshenko: displacementsTimoshenko ? compareDisplacements(built, solved(built, timoshenko), displacementsTimoshenko) : null,
    reactions: c.expected.reactions ? actions.reactions : null,
    endForces: c.expected.endForces ? actions.endForces : null,
    closedForm: compareClosedForms(c, built, plain),
  };
  const published = comparePublished(c, built, plain);
  const given = Object.values(parts).filter((v) => v !== null);
  const checked = given.length + (published === null ? 0 : 1);
  const within = checked > 0 && given.every((v) => v <= tolerance) && (published ?? 0) <= 1;
  return { ...parts, published, within };
}

function describe(id: string, d: CaseDifferences): string {
  const number = (label: string, v: number | null): string[] => (v === null ? [] : [`${label} ${v.toExponential(1)}`]);
  const parts = [
    ...number('Euler-Bernoulli', d.eulerBernoulli),
    ...number('Timoshenko', d.timoshenko),
    ...number('reactions', d.reactions),
    ...number('end forces', d.endForces),
    ...number('closed form', d.closedForm),
    ...(d.published === null ? [] : [`published ${d.published.toFixed(2)} of what printing allows`]),
  ];
  return `${d.within ? 'ok ' : 'OFF'} ${id}: ${parts.join(', ')}`;
}

const isCase = (c: unknown): c is FrameCase =>
  typeof c === 'object' && c !== null && ['id', 'nodes', 'members', 'sections', 'materials', 'supports', 'expected'].every((key) => key in c);

/** Runs every frame case of a document with a `cases` list. Throws an Error with a clear message when it is no such document. */
export async function runFrameCases(document: unknown): Promise<CaseRun> {
  const cases = (document as { cases?: unknown } | null)?.cases;
  if (!Array.isArray(cases) || cases.length === 0) throw new Error('the file has no list of cases');
  const lines: string[] = [];
  let within = 0;
  for (const [index, c] of cases.entries()) {
    if (!isCase(c)) throw new Error(`case ${index + 1} is no frame case: it lacks nodes, members, sections, materials, supports or expected values`);
    try {
      const differences = differencesOf(c);
      if (differences.within) within++;
      lines.push(describe(c.id, differences));
    } catch (error) {
      lines.push(`OFF ${c.id}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  return { lines, within, total: cases.length, tolerance: '1e-6' };
}
