import { rememberedBy } from '../base/remembered.js';
import { mustBePositive, type ClothSpan } from './span.js';

/** Pull of the cloth along its width and its height, N/m. */
export interface BothPulls {
  readonly x_N_per_m: number;
  readonly y_N_per_m: number;
}

/**
 * An even push on a rectangle of cloth; sides in mm, centre as fractions of the width (from the left) and height (from
 * the bottom).
 */
export interface Push {
  readonly force_N: number;
  readonly patch_width_mm: number;
  readonly patch_height_mm: number;
  readonly at_x: number;
  readonly at_y: number;
}

/** A push on a square pad in the middle of the cloth. */
export function middlePush(force_N: number, pad_mm: number): Push {
  return { force_N, patch_width_mm: pad_mm, patch_height_mm: pad_mm, at_x: 0.5, at_y: 0.5 };
}

/** One direction of the cloth: span, patch, place of its centre, pull. */
interface Direction {
  readonly span: number;
  readonly patch: number;
  readonly at: number;
  readonly pull: number;
}

/**
 * How far the cloth sinks under the centre of an even push, mm.
 * Constant pull (N/m), flat supports, small slope: the double sine series with the sum in one direction closed and the
 * slow part of the other taken out,
 * so that what is left dies like exp(−π·m·patch/2a). Source: rayleigh (membrane), series derived here and checked
 * against the plain one.
 * Throws RangeError when the patch leaves the cloth or a number is not above zero.
 */
export function patchSag_mm(span: ClothSpan, pull: BothPulls, push: Push): number {
  mustBePositive({
    width: span.width_mm,
    height: span.height_mm,
    'pull x': pull.x_N_per_m,
    'pull y': pull.y_N_per_m,
    'patch width': push.patch_width_mm,
    'patch height': push.patch_height_mm,
  });
  const x: Direction = {
    span: span.width_mm,
    patch: push.patch_width_mm,
    at: push.at_x * span.width_mm,
    pull: pull.x_N_per_m / 1000,
  };
  const y: Direction = {
    span: span.height_mm,
    patch: push.patch_height_mm,
    at: push.at_y * span.height_mm,
    pull: pull.y_N_per_m / 1000,
  };
  mustLieInside(x);
  mustLieInside(y);
  const rate = (waves: Direction, closed: Direction): number =>
    (Math.sqrt(waves.pull / closed.pull) * closed.patch) / waves.span;
  return push.force_N * (rate(x, y) >= rate(y, x) ? sagPerForce(x, y) : sagPerForce(y, x));
}

function mustLieInside({ span, patch, at }: Direction): void {
  const slack = 1e-9 * span;
  if (!(at - patch / 2 >= -slack && at + patch / 2 <= span + slack))
    throw new RangeError(`the pad (${patch} mm) must lie on the cloth (${span} mm)`);
}

/** Sags kept: a search asks for the same few again and again. */
const mostKept = 500;

const keyOf = ({ span, patch, at, pull }: Direction): string => `${span} ${patch} ${at} ${pull}`;

/** mm per N. `waves` is the direction that keeps its sine series, `closed` the one summed in closed form. */
const sagPerForce = rememberedBy(
  (waves: Direction, closed: Direction) => `${keyOf(waves)} ${keyOf(closed)}`,
  sumSag,
  mostKept,
);

function sumSag(waves: Direction, closed: Direction): number {
  const { span: a, patch: c, at: x0, pull: T } = waves;
  const { span: b, patch: d, at: y0 } = closed;
  const h = d / 2;
  const stiffer = Math.sqrt(T / closed.pull);
  // if the cloth were held along the waves' direction only: a string under an even load
  const asString = ((x0 * (a - x0)) / a - c / 8) / (d * T);
  let held = 0;
  for (let m = 1; m <= 200_000; m++) {
    const k = (m * Math.PI) / a;
    const kappa = k * stiffer;
    const spread = Math.sin((k * c) / 2) / ((k * c) / 2);
    const share = 2 / (a * d * T * k * k);
    // sinh(κA) cosh(κB) / sinh(κb) on either side of the place, with A + B = b − h
    const pad = 0.5 * Math.exp(-kappa * h);
    const whole = -Math.expm1(-2 * kappa * b);
    const near = side(pad, kappa, b - y0, y0 - h) / whole;
    const far = side(pad, kappa, y0, b - y0 - h) / whole;
    held += share * Math.sin(k * x0) ** 2 * spread * (near + far);
    if (share * (near + far) < 1e-13 * asString) break;
  }
  return asString - held;
}

/**
 * What of sinh(κA) cosh(κB) / sinh(κb) hangs on the side, written so that nothing overflows; `pad` is exp(−κh)/2, h the
 * half patch.
 */
function side(pad: number, kappa: number, A: number, B: number): number {
  return pad * -Math.expm1(-2 * kappa * A) * (1 + Math.exp(-2 * kappa * Math.max(B, 0)));
}
