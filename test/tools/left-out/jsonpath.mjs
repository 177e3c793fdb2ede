// Stands in for the JSONPath library: `src/rules/judge/engine.ts` refuses every path, and in the page it would ask for what the security policy forbids.
export function JSONPath() {
  throw new Error('rules have no paths');
}
