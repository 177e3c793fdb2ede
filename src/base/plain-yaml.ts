/**
 * How every YAML text is read: as YAML 1.2, whatever version it asks for, since in 1.1 `yes` and `no` are not words. A
 * text that asks for another is refused by `readYaml`. No tag means anything.
 */
export const plainYaml = { schema: 'core', resolveKnownTags: false } as const;
