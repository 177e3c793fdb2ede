import type { SawAtHand } from '../base/saw.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import { document, heading, paragraph, type Block } from '../report/tree.js';
import type { Pooled } from './pooled.js';
import { buyingBlocks, cutListBlocks, numberBlocks, sawBlocks, troubleBlocks } from './pooled-blocks.js';
import { boardBlocks, rollBlocks } from './pooled-pictures.js';

/** The page for shop and saw: what to buy for the plans, how to cut it, where the cloths lie on the roll. */
export function composeCutPage(pooled: Pooled, shelfName: string, saw?: SawAtHand): Report {
  const boards = boardBlocks(pooled, '');
  const rolls = rollBlocks(pooled, '');
  const part = (title: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, title), ...blocks];
  return {
    tree: document([
      heading(1, 'What to buy and how to cut it'),
      ...numberBlocks(pooled),
      ...troubleBlocks(pooled),
      ...part('Buying list', buyingBlocks(pooled)),
      ...part('Cut list', [...cutListBlocks(pooled), ...boards.blocks, ...sawBlocks(pooled, saw)]),
      ...part('The cloth on the roll', rolls.blocks),
      ...part('Before you cut', [
        paragraph(
          `Prices and lengths are those of the shelf “${userText(shelfName)}”. This page does not say whether a frame will stay flat: audit each plan first.`,
        ),
      ]),
    ]),
    pictures: [...boards.pictures, ...rolls.pictures],
  };
}
