/**
 * Share used by a pull of `along_N` out of the wood and `across_N` sideways on one fastening: R/Zα with
 * Zα = W Z/(W cos²α + Z sin²α) and α the angle of the load to the wood's surface; `W` and `Z` the design withdrawal and
 * lateral loads.
 * Source: nds-2018-memory 12.4. A capacity of 0 asked for anything gives Infinity.
 */
export function combinedUse(along_N: number, across_N: number, W_N: number, Z_N: number): number {
  const pull = Math.abs(along_N);
  const shear = Math.abs(across_N);
  const load = Math.hypot(pull, shear);
  if (load === 0) return 0;
  const part = (force: number, capacity: number): number =>
    force === 0 ? 0 : capacity > 0 ? force ** 2 / capacity : Infinity;
  return (part(shear, Z_N) + part(pull, W_N)) / load;
}
