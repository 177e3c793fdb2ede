import { normalDeviates, type FillNormals } from './normal-deviates.js';

/**
 * Frames worked out together: small enough for the nearest memory, and each step's loop is warm after the first few
 * blocks.
 */
export const block_frames = 256;

/** Draws of one block of frames, one frame after the other, and the length of each frame's draws as a vector. */
export interface DrawnBlock {
  readonly draws: Float64Array;
  readonly lengths: Float64Array;
}

/** Numbers of one stream that are kept at most: 3 MB. Longer streams are drawn anew each time. */
const most_kept = 400_000;

/** The stream of the seed asked for last, as far as it was drawn, and the lengths of its frames by numbers a frame. */
interface Stream {
  readonly seed: number;
  readonly fill: FillNormals;
  values: Float64Array;
  drawn: number;
  readonly lengths: Map<number, Float64Array>;
}
let kept: Stream | null = null;

/**
 * Blocks of frames of `columns` standard normal draws each, in order, from a seed: every plan audited with the same
 * seed meets the same draws, so they are drawn once and kept. A block is only read, and only until the next is asked
 * for.
 */
export function drawnFrames(seed: number, columns: number, frames: number): (block: number) => DrawnBlock {
  const size = block_frames * columns;
  const blocks = Math.ceil(frames / block_frames);
  if (blocks * size > most_kept) {
    const [fill, draws, lengths] = [normalDeviates(seed), new Float64Array(size), new Float64Array(block_frames)];
    return () => {
      fill(draws);
      measure(draws, columns, lengths);
      return { draws, lengths };
    };
  }
  const { values, lengths } = streamOf(seed, blocks * block_frames, columns);
  return (block) => ({
    draws: values.subarray(block * size, (block + 1) * size),
    lengths: lengths.subarray(block * block_frames, (block + 1) * block_frames),
  });
}

/** The first numbers of a seed's stream, and the lengths of the frames they make. */
function streamOf(
  seed: number,
  frames: number,
  columns: number,
): { readonly values: Float64Array; readonly lengths: Float64Array } {
  if (kept?.seed !== seed)
    kept = { seed, fill: normalDeviates(seed), values: new Float64Array(0), drawn: 0, lengths: new Map() };
  const stream = kept;
  const count = frames * columns;
  if (stream.drawn < count) {
    const longer = new Float64Array(count);
    longer.set(stream.values.subarray(0, stream.drawn));
    stream.fill(longer.subarray(stream.drawn));
    [stream.values, stream.drawn] = [longer, count];
  }
  let lengths = stream.lengths.get(columns);
  if (lengths === undefined || lengths.length < frames) {
    lengths = new Float64Array(frames);
    measure(stream.values, columns, lengths);
    stream.lengths.set(columns, lengths);
  }
  return { values: stream.values, lengths };
}

/** The length of every frame's draws as a vector. */
function measure(draws: Float64Array, columns: number, lengths: Float64Array): void {
  for (let n = 0, at = 0; n < lengths.length; n++) {
    let square = 0;
    for (let j = 0; j < columns; j++, at++) square += (draws[at] as number) ** 2;
    lengths[n] = Math.sqrt(square);
  }
}
