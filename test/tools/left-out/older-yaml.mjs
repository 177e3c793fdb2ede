// Stands in for what YAML 1.1 has besides in the page: `src/base/plain-yaml.ts` has every text read as 1.2, and no tag is known.
export const schema = [];
export const [binary, omap, pairs, set, timestamp, intTime, floatTime] = [];
