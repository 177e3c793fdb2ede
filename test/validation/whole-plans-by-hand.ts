import type { WholePlan } from './whole-plans.js';

/** Sums by hand for a bare rectangle of four bars, straight from statics and handbook formulas; nothing of the tool is used. mm, N, MPa. */
export interface ByHand {
  readonly [path: string]: number;
}

const g = 9.80665;
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const odd = (most: number): readonly number[] => Array.from({ length: most }, (_, i) => 2 * i + 1);

/** Moisture that wood settles to, percent: Hailwood–Horrobin with the Celsius constants of Wood Handbook (2010) eq. 4-5. */
function settles_pct(h: number, T: number): number {
  const [W, k] = [349 + 1.29 * T + 0.0135 * T * T, 0.805 + 0.000736 * T - 0.00000273 * T * T];
  const [k1, k2] = [6.27 - 0.00938 * T - 0.000303 * T * T, 1.91 + 0.0407 * T - 0.000293 * T * T];
  const x = k * h;
  return (1800 / W) * (x / (1 - x) + (k1 * x + 2 * k1 * k2 * x * x) / (1 + k1 * x + k1 * k2 * x * x));
}

/**
 * Share by which a board swells from one moisture to another: C (M₂ − M₁) between 6 and 14 % (Wood Handbook eq. 13-2),
 * else by eq. 13-3 with S = 3000/(1/C + 20).
 */
function swells(C: number, from: number, to: number): number {
  const straight = Math.min(from, to) >= 6 && Math.max(from, to) <= 14;
  return straight ? C * (to - from) : (to - from) / (1 / C + 20 - 30 + from);
}

/** Days until nine tenths is done, all sides open: 1 − E = Π (8/π²) Σ exp(−n²π²Dt/L²)/n², D = 1e-10 m²/s; found by halving. */
function waits_days(sides: readonly number[]): number {
  const left = (days: number, L: number): number => {
    const x = (Math.PI ** 2 * 1e-10 * days * 86_400) / (L / 1000) ** 2;
    return (8 / Math.PI ** 2) * sum(odd(200).map((n) => Math.exp(-n * n * x) / n ** 2));
  };
  let [early, late] = [0, 1000];
  for (let i = 0; i < 60; i += 1) {
    const middle = (early + late) / 2;
    if (left(middle, sides[0]!) * left(middle, sides[1]!) > 0.1) early = middle;
    else late = middle;
  }
  return late;
}

/** Torsion constant of a rectangle, Saint-Venant's series. */
function torsion(w: number, d: number): number {
  const [p, q] = [Math.max(w, d), Math.min(w, d)];
  const series = sum(odd(60).map((n) => Math.tanh((n * Math.PI * p) / (2 * q)) / n ** 5));
  return p * q ** 3 * (1 / 3 - (64 / Math.PI ** 5) * (q / p) * series);
}

/**
 * The frame under a pull x and y, N/m. Corner: one moment M at all four, from M (L/2EI of both bars + 2 g w/EI for the
 * two springs in series) = q L³/24EI of both. Inward line of a bar: q x(L−x)(L²+Lx−x²)/24EI + q x(L−x)/2κGA −
 * M x(L−x)/2EI, its largest departure (the pull on the bar across only acts through M).
 */
export function frame(p: WholePlan, [px, py]: readonly [number, number]) {
  const [E, G] = p.wood;
  const [w, d] = [p.w, p.d];
  const [a, b] = [p.face[0] - w, p.face[1] - w];
  const [I, A] = [(d * w ** 3) / 12, w * d];
  const [qa, qb] = [py / 1000, px / 1000];
  const M = (qa * a ** 3 + qb * b ** 3) / 24 / ((a + b) / 2 + 2 * p.give * w);
  const bow = (q: number, L: number): number => {
    const at = (x: number): number => {
      const bent = (q * x * (L - x) * (L * L + L * x - x * x)) / 24 - (M * x * (L - x)) / 2;
      return bent / (E * I) + (q * x * (L - x)) / 2 / ((5 / 6) * G * A);
    };
    const line = Array.from({ length: 2001 }, (_, i) => at((L * i) / 2000));
    return line.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  };
  return { a, b, M_Nm: M / 1000, bow_a: bow(qa, a), bow_b: bow(qb, b), axial_a: (-qb * b) / 2, axial_b: (-qa * a) / 2 };
}

/**
 * Pull at the front edge, half the depth before the axis, turns each bar: a line torque t = q d/2. Half of a bar's, t L/2,
 * bends the bar across at each of its ends, alike over its length: dish M L²/8EI_out. Its own middle turns by t L²/8GJ, by
 * the softness of its end (g w/GJ and, in the other bar, g w/EI_out) and by the slope of the bar across, M L_across/2EI_out.
 */
function turned(p: WholePlan) {
  const [E, G] = p.wood;
  const [w, d] = [p.w, p.d];
  const [a, b] = [p.face[0] - w, p.face[1] - w];
  const [I_out, J] = [(w * d ** 3) / 12, torsion(w, d)];
  const [ta, tb] = [((p.working[1] / 1000) * d) / 2, ((p.working[0] / 1000) * d) / 2];
  const roll = (t: number, L: number, across: number): number => {
    const end = (p.give * w) / (G * J) + (p.give * w) / (E * I_out) + across / (2 * E * I_out);
    return 1000 * ((t * L * L) / (8 * G * J) + ((t * L) / 2) * end);
  };
  const dish = (M: number, L: number): number => (-M * L * L) / (8 * E * I_out);
  return { dish_a: dish((tb * b) / 2, a), dish_b: dish((ta * a) / 2, b), roll_a: roll(ta, a, b), roll_b: roll(tb, b, a) };
}

/**
 * Weights, kg. Steel as the shelf and the report's own allowances say: two rings of 40 g or straps of 24 g, wire 36 g/m,
 * staples 0.15 g, brads 1.21 × 25 mm with a tenth for their heads.
 */
export function weights(p: WholePlan) {
  const [W, H] = p.face;
  const m2 = (W * H) / 1e6;
  const wood = (W * H - (W - 2 * p.w) * (H - 2 * p.w)) * p.d * p.wood[2] * 1e-9;
  const over = 2 * (p.d + p.fixing[2] + (p.fixing[0] === 'back' ? p.w : 0));
  const skin = (p.cloth[1] * (W + over) * (H + over)) / 1e9 + p.coats * 0.11 * m2 + 0.5 * m2;
  const holders = p.hang[0] === 'd-rings' ? 2 * 0.024 : 2 * 0.04 + (p.hang[0] === 'wire' ? (W / 1000) * 0.036 : 0);
  const brads = 4 * 1.1 * 7.85e-6 * (Math.PI / 4) * 1.21 ** 2 * 25;
  const steel = holders + ((2 * (W + H)) / p.fixing[1]) * 0.00015 + brads;
  return { wood, skin, over, total: wood + skin + steel };
}

/**
 * Hanging: of one hook the wire makes a triangle, of two a trapezoid whose level part is a third of the span; moments about
 * the bottom edge give lean and the pull off the wall.
 */
function hung(p: WholePlan): ByHand {
  const [by, from, drop, slack, hooks] = p.hang;
  const { wood, skin, total } = weights(p);
  const weight = total * g;
  const span = p.face[0] - (from === 'inside' ? 2 : 1) * p.w;
  const apart = hooks === 2 ? span / 3 : 0;
  const slant = Math.hypot(span / 2, slack) - apart / 2;
  const run = (span - apart) / 2;
  const rise = by === 'wire' ? Math.sqrt(slant ** 2 - run ** 2) : 0;
  const theta = Math.atan2(rise, run);
  const tension = weight / 2 / Math.sin(theta);
  // the hook stands 8 mm off the wall; rings in the back put the wire 4 mm behind it, rings inside lie deeper than the hook
  const off = from === 'back' ? 12 : 0;
  const arm = p.face[1] - drop + rise;
  const lean = Math.asin(off / arm);
  const cg = ((wood * p.d) / 2 + skin * p.d) / total;
  const away = (weight * (cg * Math.cos(lean) + (p.face[1] / 2) * Math.sin(lean) - off)) / (arm * Math.cos(lean));
  const each = by === 'wire' ? (hooks === 2 ? 2 * tension * Math.sin(theta / 2) : weight) : weight / 2;
  return {
    ...(by === 'wire' ? {
      'hanging.wire_tension_N': tension, 'hanging.wire_angle_deg': (theta * 180) / Math.PI,
      'hanging.inward_pull_N': weight / 2 / Math.tan(theta),
    } : {}),
    'hanging.lean_deg': (lean * 180) / Math.PI, 'hanging.top_standoff_mm': p.face[1] * Math.sin(lean),
    'hanging.hook_below_top_mm': drop - rise,
    'hanging.hook_load_N': Math.hypot(each, Math.max(0, away) / (by === 'wire' ? hooks : 2)),
  };
}

/** Cloth under a 500 g weight on a pad of 50 mm in the middle of the opening: a membrane's double sine series. */
function sinks_mm(p: WholePlan): number {
  const [a, b] = [p.face[0] - 2 * p.w, p.face[1] - 2 * p.w];
  const pressure = (0.5 * g) / 50 ** 2;
  const half = (n: number, L: number): number => Math.sin((n * Math.PI * 25) / L);
  const [x, y] = [p.working[0] / 1000, p.working[1] / 1000];
  const term = (m: number, n: number): number =>
    ((16 * pressure) / (Math.PI ** 4 * m * n)) * half(m, a) * half(n, b) / (x * (m / a) ** 2 + y * (n / b) ** 2);
  return sum(odd(120).flatMap((m) => odd(120).map((n) => term(m, n))));
}

/** Every number of a plan that can be had by hand, by the path of the fact and the part where it has one (`bar.span_mm top`). */
export function byHand(p: WholePlan): ByHand {
  const [W, H] = p.face;
  const { w, d, k_def } = p;
  const at = frame(p, p.working);
  const turn = turned(p);
  const { over, total } = weights(p);
  const inAir = (humidity: number): number => settles_pct(humidity / 100, p.room[2]);
  const [driest, dampest, middle] = [inAir(p.room[0]), inAir(p.room[1]), inAir((p.room[0] + p.room[1]) / 2)];
  const C = p.wood[3];
  const face_mm2 = { 'mitre': 2 * Math.SQRT2 * w * d, 'butt': 2 * w * d, 'half-lap': w * w }[p.cut];
  const plies_mm2 = p.bars['plies'] === 2 ? 2 * (W + H) * (p.bars['stack'] === 'side-by-side' ? d : w) : 0;
  // along the grain wood shrinks by 0.0111 of the moisture lost (mean of 3,600 sticks): too little to leave out
  const loses = Math.max(0, p.moisture - driest);
  const dries = p.cut === 'mitre' && loses > 0 ? -swells(C, p.moisture, driest) - (0.0111 * loses) / 100 : 0;
  return {
    'frame.diagonal_mm': Math.sqrt(W * W + H * H), 'bar.span_mm top': W - w, 'bar.span_mm left': H - w,
    'frame.weight_kg': total,
    'bar.axial_N bottom': at.axial_a, 'bar.axial_N right': at.axial_b,
    'bar.inward_bow_mm top': at.bow_a, 'bar.inward_bow_mm left': at.bow_b,
    'bar.inward_bow_long_term_mm bottom': (1 + k_def) * at.bow_a,
    'bar.inward_bow_long_term_mm right': (1 + k_def) * at.bow_b,
    'corner.moment_Nm top-left': frame(p, p.peak).M_Nm,
    'bar.dish_mm top': turn.dish_a, 'bar.dish_mm left': turn.dish_b,
    'bar.roll_mrad top': turn.roll_a, 'bar.roll_mrad left': turn.roll_b,
    'bar.dish_long_term_mm bottom': (1 + k_def) * turn.dish_a, 'bar.roll_long_term_mrad right': (1 + k_def) * turn.roll_b,
    'cloth.cut_width_mm': W + over + 20, 'cloth.cut_height_mm': H + over + 20,
    'cloth.roll_short_mm': Math.min(W, H) + over + 20 - p.cloth[2],
    'cloth.staple_load_N': (Math.max(...p.peak) * p.fixing[1]) / 1000, 'cloth.push_sag_mm': sinks_mm(p),
    'lumber.room_moisture_pct': middle, 'lumber.moisture_gap_pct': p.moisture - middle,
    'lumber.wait_days': waits_days(p.board),
    'bar.seasonal_width_mm left': w * swells(C, driest, dampest),
    'corner.mitre_gap_mm top-right': w * Math.SQRT2 * dries,
    'frame.glue_ml': ((4 * face_mm2 + plies_mm2) * 1e-6 * 200) / 1.1,
    ...hung(p),
  };
}
