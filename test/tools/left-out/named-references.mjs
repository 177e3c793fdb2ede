// Stands in for the list of named character references: only references between links would be looked up in it, and no report has any.
export function decodeNamedCharacterReference() {
  throw new Error('reports have no links by reference');
}
