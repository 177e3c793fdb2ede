/** The kinds of file there are schemas for. */
export const schemaKinds = ['plan', 'shelf', 'ruleset', 'sheet', 'pile', 'shop'] as const;
export type SchemaKind = (typeof schemaKinds)[number];
