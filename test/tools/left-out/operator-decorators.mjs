// Stands in for the rule engine's ways to compare lists, in the page: `src/rules/judge/engine.ts` compares single values only.
export default [];
