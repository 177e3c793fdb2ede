import type { NamedText } from '../engine/protocol.js';

/** Longest plan a link may carry, characters: people write a few thousand. */
const most = 200_000;
const start = '#plan=';

/**
 * A link to this page with a plan behind its `#`, which browsers never send anywhere. Packed with a checksum, so that a
 * damaged one is noticed.
 */
export async function linkTo(address: string, plan: NamedText): Promise<string> {
  const packed = await through(new TextEncoder().encode(JSON.stringify(plan)), new CompressionStream('gzip'), Infinity);
  const base64 = btoa(String.fromCharCode(...packed));
  return `${address.split('#')[0] ?? ''}${start}${base64.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')}`;
}

/** The plan in a link; null when it carries none, `damaged` when it cannot be unpacked whole. */
export async function planIn(hash: string): Promise<NamedText | 'damaged' | null> {
  if (!hash.startsWith(start)) return null;
  try {
    const bytes = Uint8Array.from(atob(hash.slice(start.length).replaceAll('-', '+').replaceAll('_', '/')), (sign) =>
      sign.charCodeAt(0),
    );
    const unpacked = await through(bytes, new DecompressionStream('gzip'), 4 * most);
    const { file, text } = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(unpacked)) as Partial<NamedText>;
    return typeof file === 'string' && typeof text === 'string' && text.length <= most
      ? { file: fileName(file), text }
      : 'damaged';
  } catch {
    return 'damaged';
  }
}

/** A name that is a name wherever it is saved: no folders, no signs that turn words round, not too long. */
export const fileName = (name: string): string =>
  name
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}/\\:*?"<>|]+/gu, ' ')
    .trim()
    .slice(0, 80) || 'plan.yaml';

/** Bytes through a stream that packs or unpacks; throws beyond `largest` bytes. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  largest: number,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    size += next.value.length;
    if (size > largest) throw new RangeError('too large');
    parts.push(next.value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
