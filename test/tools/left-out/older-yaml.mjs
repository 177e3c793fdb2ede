// Stands in for what YAML 1.1 and JSON have besides in the page: `src/base/plain-yaml.ts` has every text read as 1.2, no tag is known, and `<<` is a key.
export const schema = [];
export const [binary, omap, pairs, set, timestamp, intTime, floatTime, merge] = [];
export const isMergeKey = () => false;
export const addMergeToJSMap = isMergeKey;
