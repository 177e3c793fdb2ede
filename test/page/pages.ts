import { afterAll, beforeAll, inject } from 'vitest';
import { startBrowser, type TestBrowser } from './browser.js';

/** One page as the built command writes it. */
export interface MadePage {
  readonly name: string;
  readonly file: string;
  /** What the command printed. */
  readonly said: string;
}

/** The pages under test: both examples, every field of a plan at once, and a plan whose words try to break out. */
export interface Pages {
  readonly nook: MadePage;
  readonly stairwell: MadePage;
  readonly everything: MadePage;
  readonly hostile: MadePage;
  readonly all: readonly MadePage[];
  /** The page about a class of 24; its pack stands beside it. */
  readonly room: MadePage;
  /** A page of every other kind: pack, a plan that was not read, timetable, cutting in both systems, placing, learning, a frame that was measured. */
  readonly others: readonly MadePage[];
  /** A page that does everything it should not, to try the listeners on. */
  readonly noisy: string;
}

declare module 'vitest' {
  interface ProvidedContext {
    /** The pages, made once for all files of tests. */
    readonly pages: Pages;
  }
}

/** The pages, and a browser that is started before the tests of a file and ended after them. */
export function setUpPages(): { readonly pages: () => Pages; readonly browser: () => TestBrowser } {
  let browser: TestBrowser | null = null;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
  });
  return {
    pages: () => inject('pages'),
    browser: () => {
      if (browser === null) throw new Error('only inside a test');
      return browser;
    },
  };
}
