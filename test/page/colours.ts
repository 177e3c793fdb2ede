/** Red, green and blue, each from 0 to 1. */
export type Colour = readonly [number, number, number];

/** Reads `rgb(1, 2, 3)`; throws on anything see-through or unknown, because contrast has no meaning there. */
export function readColour(css: string): Colour {
  const parts = /^rgba?\((\d+(?:\.\d+)?), (\d+(?:\.\d+)?), (\d+(?:\.\d+)?)(?:, (\d+(?:\.\d+)?))?\)$/u.exec(css);
  if (parts === null || (parts[4] !== undefined && Number(parts[4]) !== 1)) throw new RangeError(`not a solid colour: ${css}`);
  return [Number(parts[1]) / 255, Number(parts[2]) / 255, Number(parts[3]) / 255];
}

/** Relative luminance, 0 to 1: WCAG 2.2, definition of "relative luminance" (from memory). */
export function luminance([r, g, b]: Colour): number {
  const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

/** Contrast of two colours, 1 to 21: WCAG 2.2, definition of "contrast ratio" (from memory). */
export function contrast(one: Colour, other: Colour): number {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** True for black, white and what lies between: what a black-and-white printer shows as it is. */
export const isGrey = ([r, g, b]: Colour): boolean => Math.max(r, g, b) - Math.min(r, g, b) < 1e-9;
