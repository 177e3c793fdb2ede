/**
 * A drawing of the engine's, every text in it escaped by its writer. `as` keeps the names inside apart where it is
 * shown twice.
 */
export function Drawing({ svg, as = 'now' }: { readonly svg: string; readonly as?: string }) {
  const own = svg.replaceAll(
    /(id="|aria-labelledby="|\s)([a-z-]+-(?:title|desc))\b/gu,
    (_, before: string, name: string) => `${before}${as}-${name}`,
  );
  return <div class="drawing" dangerouslySetInnerHTML={{ __html: own }} />;
}
