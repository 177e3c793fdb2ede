/** A fraction of whole numbers, in lowest terms, with a positive denominator: shop inches without binary dust. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

const greatestCommonDivisor = (a: bigint, b: bigint): bigint => {
  let x = a < 0n ? -a : a;
  let y = b;
  while (y !== 0n) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
};

/** The fraction n/d in lowest terms. Throws a RangeError when d is zero: callers check first. */
export function rational(n: bigint | number, d: bigint | number = 1n): Rational {
  let top = BigInt(n);
  let bottom = BigInt(d);
  if (bottom === 1n) return { n: top, d: bottom };
  if (bottom === 0n) throw new RangeError('a fraction cannot have a zero below the line');
  if (bottom < 0n) {
    top = -top;
    bottom = -bottom;
  }
  const shared = greatestCommonDivisor(top, bottom);
  return shared > 1n ? { n: top / shared, d: bottom / shared } : { n: top, d: bottom };
}

/** a + b. */
export const plus = (a: Rational, b: Rational): Rational => rational(a.n * b.d + b.n * a.d, a.d * b.d);

/** a × b. */
export const times = (a: Rational, b: Rational): Rational => rational(a.n * b.n, a.d * b.d);

/** −a. */
export const negated = (a: Rational): Rational => ({ n: -a.n, d: a.d });

const exactly = 2n ** 53n;

/** The nearest floating-point number: one rounding, so 35941/40 is the very number one writes as 898.525. */
export function toNumber(a: Rational): number {
  const magnitude = a.n < 0n ? -a.n : a.n;
  if (magnitude <= exactly && a.d <= exactly) return Number(a.n) / Number(a.d);
  const digits = 10n ** 25n;
  const whole = a.n / a.d;
  const rest = ((a.n % a.d) * digits) / a.d;
  const sign = a.n < 0n ? '-' : '';
  const positive = (value: bigint): bigint => (value < 0n ? -value : value);
  return Number(`${sign}${positive(whole)}.${positive(rest).toString().padStart(25, '0')}`);
}

const decimal = /^([+-]?)(\d{0,20})(?:\.(\d{0,20}))?(?:[eE]([+-]?\d{1,4}))?$/;

/** The exact value of a decimal such as `1.2`, `-.5` or `2e-3`; null when it is none; `Infinity` beyond 10^±15. */
export function parseDecimal(text: string): Rational | null | typeof Infinity {
  const match = decimal.exec(text);
  if (match === null) return null;
  const [, sign, whole = '', part = '', exponent = '0'] = match;
  if (whole === '' && part === '') return null;
  const power = Number(exponent) - part.length;
  if (Math.abs(Number(exponent)) > 15 || whole.length > 15) return Infinity;
  const digits = BigInt(`${whole}${part}`);
  const signed = sign === '-' ? -digits : digits;
  return power >= 0 ? rational(signed * 10n ** BigInt(power)) : rational(signed, 10n ** BigInt(-power));
}

const fraction = /^([+-]?)(?:(\d{1,9})(?:\s*-\s*|\s+))?(\d{1,9})\s*\/\s*(\d{1,9})$/;

/**
 * The exact value of a shop number: `35`, `35.375`, `3/8`, `35-3/8` or `35 3/8`; null when it is none; `Infinity`
 * beyond 10^±15.
 */
export function parseShopNumber(text: string): Rational | null | typeof Infinity {
  const match = fraction.exec(text);
  if (match === null) return parseDecimal(text);
  const [, sign, whole = '0', top = '0', bottom = '0'] = match;
  if (BigInt(bottom) === 0n) return null;
  const size = plus(rational(BigInt(whole)), rational(BigInt(top), BigInt(bottom)));
  return sign === '-' ? negated(size) : size;
}
