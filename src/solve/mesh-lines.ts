/** Places that a mesh line must pass through, as fractions of a span, and the lines drawn through them. */
export interface MeshLines {
  /** Fractions from 0 to 1, rising. */
  readonly at: readonly number[];
  /** Index of the line that stands for a wanted place. Throws a RangeError for a place that was not asked for. */
  readonly indexOf: (place: number) => number;
}

/**
 * Places nearer to each other than this share of the span are one line: finer steps would cost accuracy, not gain it.
 */
export const nearest = 2e-4;

/**
 * Lines through every wanted place and evenly between, no step longer than 1/`steps`.
 * Earlier places win over later ones that come nearer than `nearest`; places beyond the ends count as the ends.
 */
export function meshLines(wanted: readonly number[], steps: number): MeshLines {
  const kept = [0, 1];
  const standIn = new Map<number, number>();
  for (const place of wanted) {
    const inside = Math.min(1, Math.max(0, place));
    let line = kept.find((k) => Math.abs(k - inside) < nearest);
    if (line === undefined) kept.push((line = inside));
    standIn.set(place, line);
  }
  kept.sort((p, q) => p - q);
  const at = [0];
  for (let k = 1; k < kept.length; k++) {
    const [from, to] = [kept[k - 1]!, kept[k]!];
    const parts = Math.max(1, Math.ceil((to - from) * steps - 1e-9));
    for (let part = 1; part < parts; part++) at.push(from + ((to - from) * part) / parts);
    at.push(to);
  }
  const indexOf = (place: number): number => {
    const line = place === 0 || place === 1 ? place : standIn.get(place);
    const index = line === undefined ? -1 : at.indexOf(line);
    if (index < 0) throw new RangeError(`no mesh line was asked for at ${place}`);
    return index;
  };
  return { at, indexOf };
}
