/**
 * The studio's own numbers in a sentence, from a shelf's `measured` list: `lumber.strip-19x38.E` and
 * `lumber.strip-19x38.spread` become
 * `strip-19x38 (E, spread)`, `joints.give` becomes `joints (give)`. Empty when nothing was measured.
 */
export function measuredInWords(measured: readonly string[]): string {
  const byEntry = new Map<string, string[]>();
  for (const where of measured) {
    const [section = '', ...rest] = where.split('.');
    const last = rest.at(-1) ?? '';
    const [entry, field] =
      rest.length > 1 ? [rest.slice(0, -1).join('.'), last] : section === 'proposals' ? [last, ''] : [section, last];
    byEntry.set(entry, [...(byEntry.get(entry) ?? []), ...(field === '' ? [] : [field])]);
  }
  return [...byEntry]
    .map(([entry, fields]) => (fields.length === 0 ? entry : `${entry} (${fields.join(', ')})`))
    .join('; ');
}
