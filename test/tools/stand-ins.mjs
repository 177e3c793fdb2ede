/** Where what stands in for a part of a library is found. */
export const leftOut = (name) => `./test/tools/left-out/${name}.mjs`;

/** Parts of libraries that neither the command nor the page has any use for, each with what stands in for it and says why. */
export const usedByNeither = {
  eventemitter2: leftOut('eventemitter2'),
  'jsonpath-plus': leftOut('jsonpath'),
  'hash-it': leftOut('hash-it'),
  clone: leftOut('clone'),
  'decode-named-character-reference': leftOut('named-references'),
};
