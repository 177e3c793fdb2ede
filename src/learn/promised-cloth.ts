import { pullOfPush, pullOfTap } from '../bench-sheet/pull-read.js';
import { lnError, type SolvedFrame } from './answers.js';
import type { FiledSheet } from './folder.js';
import { givenFirst, normally } from './predicted.js';
import type { PromiseLedger } from './promise-ledger.js';
import { promiseSpread } from './promise-spreads.js';

/** Note and sag of the cloth, held against the planned pull and the spread of hands; the sag after the note. */
export function holdCloth(ledger: PromiseLedger, { answer: { model } }: SolvedFrame, filed: FiledSheet): void {
  const { sheet } = filed;
  const tap = pullOfTap(model, sheet);
  const push = pullOfPush(model, sheet);
  const spread = promiseSpread.ln_pull ** 2;
  if (tap !== null && sheet.tap_Hz !== null) {
    const Hz = sheet.tap_Hz;
    const perRoot = Hz / Math.sqrt(tap.value);
    ledger.hold(filed, {
      kind: 'tap',
      of: '',
      measured: Hz,
      unit: 'Hz',
      predicted: normally(0, spread + lnError(tap) ** 2, false),
      to: (note) => 2 * Math.log(note / perRoot),
      from: (ln) => perRoot * Math.exp(ln / 2),
    });
  }
  if (push !== null && sheet.push !== null) {
    const at = (sag_mm: number): number =>
      Math.log(pullOfPush(model, { ...sheet, push: { ...sheet.push!, sag_mm } })!.value);
    const noise = lnError(push) ** 2;
    const known =
      tap === null
        ? normally(0, spread + noise, false)
        : givenFirst(
            { mean: [0, 0], variance: [spread + lnError(tap) ** 2, spread + noise], both: spread },
            Math.log(tap.value),
            true,
            false,
          );
    const { sag_mm } = sheet.push;
    ledger.hold(filed, {
      kind: 'push',
      of: '',
      measured: sag_mm,
      unit: 'mm',
      predicted: known,
      to: at,
      from: (ln) => sagAt(at, ln, sag_mm),
    });
  }
}

/**
 * The sag that means a pull of e^ln of the planned one, mm: found between a hundredth and a hundred times the one that
 * was read.
 */
function sagAt(lnPull: (sag_mm: number) => number, ln: number, near_mm: number): number {
  let [low, high] = [near_mm / 100, near_mm * 100];
  for (let step = 0; step < 60; step++) {
    const middle = Math.sqrt(low * high);
    if (lnPull(middle) > ln) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
