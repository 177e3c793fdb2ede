/**
 * A dozen unsymmetric plans, invented: no two sides, and few pulls and humidities, are equal. Numbers are mm, N/m, °C and percent;
 * the plan text and the sums by hand are both made from them.
 */
export interface WholePlan {
  readonly name: string;
  readonly face: readonly [width: number, height: number];
  /** Section as built: in the plane of the cloth, and at right angles to it. */
  readonly w: number;
  readonly d: number;
  readonly bars: Readonly<Record<string, string | number>>;
  /** E and G, MPa; density, kg/m³; change of size tangentially for each 1 % of moisture. */
  readonly wood: readonly [E: number, G: number, density: number, change: number];
  readonly board: readonly [thickness: number, width: number];
  /** Lengths sold, with their prices. */
  readonly sold: readonly (readonly [length: number, price: number])[];
  readonly cut: 'mitre' | 'butt' | 'half-lap';
  readonly give: number;
  readonly working: readonly [x: number, y: number];
  readonly peak: readonly [x: number, y: number];
  readonly cloth: readonly [key: string, g_per_m2: number, roll: number, stiffness_N_per_m: number];
  readonly fixing: readonly [to: 'back' | 'edge', every: number, turn: number];
  readonly coats: number;
  readonly moisture: number;
  readonly room: readonly [driest: number, dampest: number, temperature: number];
  /** (1 + k_def) − 1 by EN 1995-1-1 table 3.2 for solid timber: 0.6 up to 65 % humidity, 0.8 up to 85 %, 2.0 above. */
  readonly k_def: number;
  readonly hang: readonly [
    by: 'wire' | 'two-hooks' | 'd-rings', from: 'inside' | 'back', drop: number, slack: number, hooks: number,
  ];
}

const spruce = [9000, 560, 420, 0.00289] as const;
const pine = [8550, 8550 / 16, 380, 0.00212] as const;
const duck = ['cotton-duck-340', 340, 1500, 50_000] as const;
const number10 = ['cotton-duck-500', 499, 2100, 70_000] as const;
const linen = ['linen-300', 300, 2100, 90_000] as const;
const strip = [[1800, 2.5], [2400, 3.2]] as const;
const clear = [[1800, 4.1], [2400, 5.4]] as const;
const wide = [[1800, 3.4], [2400, 4.5]] as const;
const square = [[1800, 3.6], [2400, 4.7]] as const;
const stud = [[2400, 5.2], [3000, 6.6], [3600, 8.1]] as const;
const planed = [[2100, 3.9], [2400, 4.4]] as const;

export const wholePlans: readonly WholePlan[] = [
  {
    name: 'heron', face: [1130, 690], w: 19, d: 38, bars: { stock: 'strip-19x38', lay: 'edge' },
    wood: spruce, board: [19, 38], sold: strip, cut: 'mitre', give: 0,
    working: [170, 230], peak: [410, 340], cloth: linen,
    fixing: ['back', 50, 50], coats: 2, moisture: 11, room: [30, 70, 18], k_def: 0.8,
    hang: ['wire', 'inside', 160, 70, 2],
  },
  {
    name: 'teal', face: [540, 760], w: 38, d: 19, bars: { stock: 'strip-19x38', lay: 'flat' },
    wood: spruce, board: [19, 38], sold: strip, cut: 'mitre', give: 4,
    working: [210, 160], peak: [380, 450], cloth: duck,
    fixing: ['back', 40, 45], coats: 3, moisture: 12, room: [35, 60, 20], k_def: 0.6,
    hang: ['wire', 'back', 140, 50, 1],
  },
  {
    name: 'rail', face: [870, 620], w: 38, d: 38, bars: { stock: 'square-38x38', lay: 'flat' },
    wood: spruce, board: [38, 38], sold: square, cut: 'half-lap', give: 2,
    working: [180, 180], peak: [360, 360], cloth: number10,
    fixing: ['edge', 60, 30], coats: 1, moisture: 13.5, room: [32, 58, 21], k_def: 0.6,
    hang: ['two-hooks', 'back', 120, 60, 2],
  },
  {
    name: 'snipe', face: [980, 1210], w: 19, d: 64, bars: { stock: 'board-19x64', lay: 'edge' },
    wood: spruce, board: [19, 64], sold: wide, cut: 'mitre', give: 6,
    working: [140, 190], peak: [300, 420], cloth: number10,
    fixing: ['back', 45, 55], coats: 2, moisture: 10.5, room: [40, 55, 19], k_def: 0.6,
    hang: ['wire', 'inside', 210, 90, 1],
  },
  {
    name: 'wren', face: [410, 330], w: 38, d: 19, bars: { stock: 'pine-19x38', lay: 'flat' },
    wood: pine, board: [19, 38], sold: clear, cut: 'butt', give: 12,
    working: [160, 240], peak: [330, 500], cloth: duck,
    fixing: ['edge', 35, 25], coats: 0, moisture: 9.8, room: [38, 62, 22], k_def: 0.6,
    hang: ['d-rings', 'back', 70, 40, 2],
  },
  {
    name: 'crake', face: [1460, 1040], w: 38, d: 64, bars: { stock: 'stud-38x64', lay: 'edge' },
    wood: spruce, board: [38, 64], sold: stud, cut: 'mitre', give: 3,
    working: [250, 205], peak: [440, 405], cloth: linen,
    fixing: ['back', 55, 60], coats: 2, moisture: 14, room: [36, 64, 17], k_def: 0.6,
    hang: ['wire', 'inside', 190, 130, 2],
  },
  {
    name: 'plover', face: [1020, 740], w: 38, d: 38, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, stack: 'side-by-side', bond: 'glue' },
    wood: spruce, board: [19, 38], sold: strip, cut: 'mitre', give: 4,
    working: [190, 215], peak: [370, 430], cloth: duck,
    fixing: ['back', 50, 50], coats: 2, moisture: 12.4, room: [34, 66, 20], k_def: 0.8,
    hang: ['wire', 'back', 150, 85, 2],
  },
  {
    name: 'curlew', face: [660, 905], w: 38, d: 38, bars: { stock: 'strip-19x38', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'glue' },
    wood: spruce, board: [19, 38], sold: strip, cut: 'mitre', give: 0,
    working: [155, 155], peak: [310, 310], cloth: linen,
    fixing: ['back', 48, 40], coats: 4, moisture: 11.2, room: [37, 63, 16], k_def: 0.6,
    hang: ['two-hooks', 'inside', 130, 60, 2],
  },
  {
    name: 'dunlin', face: [735, 565], w: 28, d: 45, bars: { stock: 'planed-28x45', lay: 'edge' },
    wood: spruce, board: [28, 45], sold: planed, cut: 'mitre', give: 5,
    working: [225, 175], peak: [390, 355], cloth: number10,
    fixing: ['back', 42, 38], coats: 1, moisture: 10.9, room: [42, 60, 23], k_def: 0.6,
    hang: ['wire', 'inside', 110, 66, 2],
  },
  {
    name: 'knot', face: [1195, 585], w: 64, d: 19, bars: { stock: 'board-19x64', lay: 'flat' },
    wood: spruce, board: [19, 64], sold: wide, cut: 'mitre', give: 4,
    working: [130, 260], peak: [280, 490], cloth: duck,
    fixing: ['back', 50, 35], coats: 2, moisture: 12, room: [33, 67, 20], k_def: 0.8,
    hang: ['wire', 'inside', 125, 110, 1],
  },
  {
    name: 'avocet', face: [930, 1330], w: 64, d: 38, bars: { stock: 'stud-38x64', lay: 'flat' },
    wood: spruce, board: [38, 64], sold: stud, cut: 'half-lap', give: 2,
    working: [205, 150], peak: [500, 280], cloth: linen,
    fixing: ['edge', 65, 45], coats: 3, moisture: 13, room: [39, 61, 18], k_def: 0.6,
    hang: ['wire', 'back', 230, 75, 1],
  },
  {
    name: 'stilt', face: [505, 615], w: 19, d: 38, bars: { stock: 'pine-19x38', lay: 'edge' },
    wood: pine, board: [19, 38], sold: clear, cut: 'mitre', give: 4,
    working: [165, 185], peak: [345, 320], cloth: duck,
    fixing: ['back', 50, 50], coats: 2, moisture: 12, room: [60, 88, 20], k_def: 2,
    hang: ['d-rings', 'back', 100, 45, 2],
  },
];

/** The words of such a plan. */
export const planOf = (p: WholePlan): object => ({
  plan: 1, name: p.name,
  face: { width: `${p.face[0]} mm`, height: `${p.face[1]} mm` },
  bars: p.bars,
  corners: { cut: p.cut, glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 }, give: p.give },
  cloth: {
    use: p.cloth[0], pull: { working: pull(p.working), peak: pull(p.peak) },
    fixing: { to: p.fixing[0], every: `${p.fixing[1]} mm`, turn: `${p.fixing[2]} mm` },
  },
  ground: { coats: p.coats },
  lumber: { chosen: 'plain', moisture: `${p.moisture} %`, knots: 'few' },
  room: { humidity: `${p.room[0]}..${p.room[1]} %`, temperature: `${p.room[2]} C` },
  hang: {
    by: p.hang[0], from: p.hang[1], drop: `${p.hang[2]} mm`,
    ...(p.hang[0] === 'wire' ? { slack: `${p.hang[3]} mm`, hooks: p.hang[4] } : {}),
  },
});

const pull = ([x, y]: readonly [number, number]): object => ({ x: `${x} N/m`, y: `${y} N/m` });
