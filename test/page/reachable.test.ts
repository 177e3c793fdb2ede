/// <reference lib="dom" />
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { settled, setUpBench, writeText } from './workbench.js';

const { open } = setUpBench('reachable');

/** What axe finds on the page as it stands, by WCAG 2.2 at A and AA and good practice. */
async function found(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary ?? ''}`));
  });
}

const plans: Readonly<Record<string, string>> = {
  clear: 'plan: 1\nname: Small study\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n',
  stop: 'plan: 1\nname: Banner\nface: { width: 55 in, height: 41-1/2 in }\nbars: { stock: strip-19x38, lay: flat, plies: 2 }\ncrossbars: [ { runs: upright, at: 1/2 } ]\nboards: [ { for: top, twist: 0.4 deg/m } ]\n',
  broken: 'plan: 1\nname: Torn\nface: { width: 55, height: 41-1/2 in }\nbars: { stock: nothing, lay: up }\n',
  unreadable: 'plan: [',
};

test.each([['light', 1440], ['dark', 1440], ['light', 390], ['dark', 390], ['light', 2560]] as const)('nothing in the way of anybody: %s, %i px', { timeout: 120_000 }, async (scheme, width) => {
  const { page } = await open({ scheme, viewport: { width, height: 900 } });
  // axe is put in from outside, as a person's own tool is: the page's policy would let it in no other way.
  await page.evaluate(axe.source);
  for (const [name, text] of Object.entries(plans)) {
    await page.getByRole('button', { name: 'Frame', exact: true }).click();
    await writeText(page, text);
    await settled(page);
    await page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
    if (name === 'stop') await page.locator('.changes button', { hasText: 'See it drawn' }).first().click();
    expect({ name, found: await found(page) }).toEqual({ name, found: [] });
  }
  await writeText(page, plans['stop'] as string);
  await settled(page);
  for (const view of ['Boards', 'Shelf', 'Limits', 'Class', 'Sheet']) {
    await page.getByRole('button', { name: view, exact: true }).click();
    if (view === 'Boards') {
      await page.getByLabel('pile file').setInputFiles({ name: 'pile.yaml', mimeType: 'text/yaml', buffer: Buffer.from('pile: 1\nboards:\n  - { mark: A, stock: strip-19x38, length: 4 m, twist: { rise: 3 mm, width: 400 mm } }\n  - { stock: strip-19x38, length: 5 m, bow: soon }\n') });
      await page.locator('.board .problem').waitFor();
      expect({ view, found: await found(page) }).toEqual({ view, found: [] });
      await page.getByLabel(/^Bow.*board 2$/u).fill('3 mm');
      await page.getByLabel(/^Bow.*board 2$/u).blur();
      await page.locator('.marks li').first().waitFor();
    }
    if (view === 'Class') {
      await page.getByLabel('Plan files of the class').setInputFiles(Object.entries(plans).map(([name, text]) => ({ name: `${name}.yaml`, mimeType: 'text/yaml', buffer: Buffer.from(text) })));
      await page.locator('p[role=status]', { hasText: '4 plans' }).waitFor();
    }
    if (view === 'Sheet') await page.locator('iframe').waitFor();
    expect({ view, found: await found(page) }).toEqual({ view, found: [] });
  }
  await page.close();
});
