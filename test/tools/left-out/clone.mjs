// Stands in for the copier of the rule engine: conditions are trees of plain values and of the engine's own objects.
export default function clone(value) {
  if (value === null || typeof value !== 'object') return value;
  const copy = Array.isArray(value) ? [] : Object.create(Object.getPrototypeOf(value));
  for (const [key, inside] of Object.entries(value)) copy[key] = clone(inside);
  return copy;
}
