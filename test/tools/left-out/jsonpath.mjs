// Stands in for the JSONPath library in the page: `src/rules/judge/engine.ts` refuses every path, and it would ask for what the page's security policy forbids.
export function JSONPath() {
  throw new Error('rules have no paths');
}
