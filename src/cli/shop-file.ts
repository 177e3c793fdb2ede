import type { ToolsAtHand } from '../order-of-work/tools-at-hand.js';
import type { Result } from '../base/problem.js';
import { readShop } from '../shop/read-shop.js';
import type { Shop } from '../shop/shop.js';
import { toolsAtHand } from '../shop/tools-at-hand.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/** The workshop of a file, or null after complaining about why it cannot be read. */
export function loadShop(file: string): Shop | null {
  const read = readText(file);
  const result: Result<Shop> = 'problem' in read ? { ok: false, problems: [read.problem] } : readShop(read.text, file);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? result.value : null;
}

/** The tools of a workshop's file, or null after complaining. */
export function toolsOfFile(file: string): ToolsAtHand | null {
  const shop = loadShop(file);
  return shop === null ? null : toolsAtHand(shop);
}
