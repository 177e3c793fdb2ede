import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';

/** Debian's Chromium unless `CHROMIUM` names another. */
const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';

/** Nothing of the browser's own goes out, so that whatever is requested was asked for by the page. */
const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** A phone held upright, in CSS pixels. */
export const phone = { width: 360, height: 740 } as const;
/** A tablet held upright. */
export const tablet = { width: 768, height: 1024 } as const;
/** A4 between margins of 7 mm, at the 96 pixels an inch that CSS has. */
export const paper = { width: Math.floor((196 / 25.4) * 96), height: Math.floor((283 / 25.4) * 96) } as const;

/** Everything a page did that it should not do. */
export interface Noise {
  readonly requests: string[];
  readonly console: string[];
  readonly errors: string[];
}

/** A page opened from a file, and what it did besides showing itself. */
export interface Opened {
  readonly page: Page;
  readonly noise: Noise;
}

/** How the page is looked at. */
export interface Look {
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly scheme?: 'light' | 'dark';
  readonly media?: 'screen' | 'print';
}

/** A browser with a fresh profile of its own. */
export interface TestBrowser {
  readonly open: (file: string, look?: Look) => Promise<Opened>;
  readonly close: () => Promise<void>;
}

/** Starts the browser; `close` ends it and removes its profile. */
export async function startBrowser(): Promise<TestBrowser> {
  const profile = mkdtempSync(join(tmpdir(), 'page-profile-'));
  const context: BrowserContext = await chromium.launchPersistentContext(profile, { executablePath, headless: true, args: flags });
  return {
    open: async (file, look = {}) => openFile(context, file, look),
    close: async () => {
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

async function openFile(context: BrowserContext, file: string, { viewport = phone, scheme = 'light', media = 'screen' }: Look): Promise<Opened> {
  const page = await context.newPage();
  const noise: Noise = { requests: [], console: [], errors: [] };
  const address = pathToFileURL(file).href;
  page.on('request', (request) => {
    if (request.url() !== address) noise.requests.push(request.url());
  });
  page.on('console', (message) => noise.console.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => noise.errors.push(error.message));
  page.on('dialog', (dialog) => {
    noise.errors.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.setViewportSize(viewport);
  await page.emulateMedia({ media, colorScheme: scheme });
  await page.goto(address, { waitUntil: 'load' });
  return { page, noise };
}
