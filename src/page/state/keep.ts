import { effect, signal } from '@preact/signals';
import type { NamedText } from '../engine/protocol.js';
import { ownRules, ownShelf, rulesEntry } from './bench.js';
import { pile } from './pile.js';
import { planFile, planText, setAside } from './plan.js';

/** What is kept in the browser between visits. */
export interface Kept {
  readonly plan: NamedText;
  /** A plan set aside for another. */
  readonly aside: NamedText | null;
  /** The boards in hand. */
  readonly pile: NamedText | null;
  readonly own_shelf: NamedText | null;
  readonly own_rules: NamedText | null;
  readonly entry: string;
  /** The plan the page was written with, by which a page made anew is told. */
  readonly written_with: string;
}

/** How keeping goes: it works, was switched off, or the browser forbids it or has no room. */
export const keeping = signal<'on' | 'off' | 'forbidden' | 'full'>('on');

const place = 'sightdown';
const switchedOff = 'sightdown-off';

/** What was kept; null when there is nothing, or nothing that can be read. */
export function readKept(): Kept | null {
  try {
    if (localStorage.getItem(switchedOff) !== null) keeping.value = 'off';
    const {
      plan,
      aside,
      pile: boards,
      own_shelf,
      own_rules,
      entry,
      written_with,
    } = JSON.parse(localStorage.getItem(place) ?? 'null') as Kept;
    const texts = [plan, aside, boards ?? null, own_shelf, own_rules].every(
      (one) => one === null || (typeof one.text === 'string' && typeof one.file === 'string'),
    );
    return texts && plan !== null && typeof entry === 'string'
      ? { plan, aside, pile: boards ?? null, own_shelf, own_rules, entry, written_with }
      : null;
  } catch (error) {
    if (error instanceof DOMException) keeping.value = 'forbidden';
    return null;
  }
}

/** Keeps plan, own shelf and own limits after every change. */
export function keepOn(written_with: string): void {
  effect(() => {
    const kept: Kept = {
      plan: { text: planText.value, file: planFile.value },
      aside: setAside.value,
      pile: pile.value,
      own_shelf: ownShelf.value,
      own_rules: ownRules.value,
      entry: rulesEntry.value,
      written_with,
    };
    if (keeping.value === 'off') return;
    try {
      localStorage.setItem(place, JSON.stringify(kept));
      keeping.value = 'on';
    } catch (error) {
      keeping.value = error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'forbidden';
    }
  });
}

/** Forgets everything that was kept, and keeps nothing more until it is asked to. */
export function forget(): void {
  keeping.value = 'off';
  try {
    localStorage.removeItem(place);
    localStorage.setItem(switchedOff, 'yes');
  } catch {
    keeping.value = 'forbidden';
  }
}

/** Keeps again. */
export function keepAgain(): void {
  try {
    localStorage.removeItem(switchedOff);
    keeping.value = 'on';
  } catch {
    keeping.value = 'forbidden';
  }
}
