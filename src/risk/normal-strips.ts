import { normalTail } from './normal.js';

/** The area under the half density exp(−x²/2) cut into level strips of equal area, the lowest holding the tail. */
export interface NormalStrips {
  /**
   * How far each strip may reach: strip i lies under the curve for certain up to edges[i + 1], and possibly up to
   * edges[i].
   */
  readonly edges: Float64Array;
  /** Height of the curve where strip i begins and, at i + 1, ends; 1 at the top. */
  readonly heights: Float64Array;
}

/** Number of strips. */
export const strip_count = 128;

/**
 * Where the tail begins so that 128 strips end exactly at the top: Marsaglia and Tsang 2000 (from memory; a test cuts
 * the strips and looks).
 */
export const tail_from = 3.442619855899;

/** Cuts the strips from the tail upwards. Strip 0 is a box of the same area as its share of the curve with the tail. */
export function cutStrips(from: number): NormalStrips {
  const density = (x: number): number => Math.exp(-0.5 * x * x);
  const edges = new Float64Array(strip_count + 1);
  const heights = new Float64Array(strip_count + 1);
  const area = from * density(from) + Math.sqrt(2 * Math.PI) * normalTail(from);
  edges[0] = area / density(from);
  edges[1] = from;
  heights[1] = density(from);
  for (let i = 1; i < strip_count; i++) {
    const top = (heights[i] as number) + area / (edges[i] as number);
    heights[i + 1] = top;
    edges[i + 1] = top < 1 ? Math.sqrt(-2 * Math.log(top)) : 0;
  }
  return { edges, heights };
}
