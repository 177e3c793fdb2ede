/**
 * A heading as the end of an address: what a viewer of Markdown makes of it, in small letters, white space as hyphens,
 * everything but letters, figures and hyphens gone.
 */
const slug = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\w\s-]/gu, (sign) => (sign > '\x7f' && /[\p{L}\p{N}]/u.test(sign) ? sign : ''))
    .trim()
    .replace(/\s/gu, '-') || 'part';

/** The address of each heading of a page in turn; a heading that comes again gets a number, as viewers number it. */
export function anchors(titles: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return titles.map((title) => {
    const plain = slug(title);
    const before = seen.get(plain) ?? 0;
    seen.set(plain, before + 1);
    return before === 0 ? plain : `${plain}-${before}`;
  });
}
