import type { Bench } from '../audit.js';
import { loadBench } from './bench.js';
import type { AuditOptions } from './option-types.js';

/** What the named plans are judged with, boards in hand and workshop too; null after complaining about a file of it. */
export async function benchOf(named: readonly string[], options: AuditOptions): Promise<Bench | null> {
  const loaded = loadBench(options);
  if (loaded === null) return null;
  const shelf =
    options.pile === undefined
      ? loaded.shelf
      : (await import('./pile-file.js')).shelfWithPileFile(options.pile, loaded.shelf, named);
  if (shelf === null) return null;
  if (options.shop === undefined) return { ...loaded, shelf };
  const tools = (await import('./shop-file.js')).toolsOfFile(options.shop);
  return tools === null ? null : { ...loaded, shelf, tools };
}
