import { relaxes, type Applied } from '../../findings/applied.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, setApart, strong, type Block, type Cell } from '../tree.js';

/** A ruleset as every page names it: `“First year”, version 3 of 2026-09-01, fingerprint 3f9a12c7`. */
export function appliedInWords({ name, version, date, fingerprint }: Applied): string {
  const edition =
    version === null
      ? date === null
        ? ''
        : `, of ${userText(date, 20)}`
      : `, version ${userText(version, 40)}${date === null ? '' : ` of ${userText(date, 20)}`}`;
  return `“${userText(name)}”${edition}, fingerprint ${fingerprint}`;
}

/**
 * What stands on a first page where a ruleset asks less than the baseline: every rule switched off, every limit
 * loosened, every rule asked otherwise.
 */
export function relaxedBlocks(applied: Applied): readonly Block[] {
  if (!relaxes(applied)) return [];
  const { switched_off, loosened, replaced } = applied;
  const lines: readonly Cell[] = [
    ...switched_off.map(({ rule, reason }) => `Switched off: ${userText(rule, 60)}. ${userText(reason)}`),
    ...loosened.map(
      ({ limit, read: { was, is }, surely }) =>
        `${surely ? 'Loosened' : 'Set in another way'}: ${userText(limit, 60)} is ${userText(is)}, in the baseline ${userText(was)}.`,
    ),
    ...replaced.map(
      ({ rule, read: { was, is } }) =>
        `Asked otherwise: ${userText(rule, 60)}. Here: ${userText(is, 400)}. In the baseline: ${userText(was, 400)}.`,
    ),
  ];
  return [setApart(paragraph(strong('This ruleset asks less than the baseline.'))), bullets(lines)];
}
