import type { Result } from '../base/problem.js';
import { readShop } from '../shop/read-shop.js';
import type { Shop } from '../shop/shop.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/** The workshop of a file, or null after complaining about why it cannot be read. */
export function loadShop(file: string): Shop | null {
  const read = readText(file);
  const result: Result<Shop> = 'problem' in read ? { ok: false, problems: [read.problem] } : readShop(read.text, file);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? result.value : null;
}
