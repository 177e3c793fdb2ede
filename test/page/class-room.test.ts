/// <reference lib="dom" />
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { command, quiet, settled, setUpBench, silence, textOf } from './workbench.js';

const { out, open } = setUpBench('class-room');

const plan = (name: string, width: string, more = ''): string => `plan: 1\nname: ${name}\nface: { width: ${width}, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }\n${more}`;
const files: Readonly<Record<string, string>> = { 'a-jug.yaml': plan('Jug', '450 mm', 'student: Ada\n'), 'b-torn.yaml': 'plan: 1\nname: [', 'c-wall.yaml': plan('Wall', '2000 mm'), 'd-pear.yaml': plan('Pear', '19-1/2 in', 'count: 2\n'), 'notes.txt': 'not a plan' };

/** The folder of a class. */
function folder(): string {
  const room = join(out, 'room-12');
  mkdirSync(room);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(room, name), text);
  return room;
}

/** Drops a folder from the disk as a hand would. */
async function drop(page: Page, path: string, onto: string): Promise<void> {
  const { x, y, width, height } = (await page.locator(onto).boundingBox()) as { x: number; y: number; width: number; height: number };
  const devtools = await page.context().newCDPSession(page);
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) await devtools.send('Input.dispatchDragEvent', { type, x: x + width / 2, y: y + height / 2, data: { items: [], files: [path], dragOperationsMask: 1 } });
}

/** A page without what its links lead to: in the browser there is no page beside it. */
const unlinked = (html: string): string => html.replace(/<a href="(?!#)[^"]*">(.*?)<\/a>/gu, '$1');

/** Rule, plan and verdict wherever the page marks one. */
const marksOnPage = (page: Page): Promise<readonly string[]> => page.locator('[aria-label="Rule by rule"] table').evaluate((table) => {
  const [heads, ...rows] = [...table.querySelectorAll('tr')].map((row) => [...row.children]);
  return rows.flatMap(([rule, ...cells]) => cells.flatMap((cell, i) => (cell.textContent === '' ? [] : [`${rule?.textContent} ${heads?.[i + 1]?.textContent} ${cell.textContent?.toLowerCase()}`]))).sort();
});

/** The same from what the command says of the folder: every rule that some plan does not meet, the gravest of its findings for each plan. */
function marksOf(room: string): readonly string[] {
  const { audits } = JSON.parse(command('audit', room, '--format', 'json').stdout) as { audits: readonly { plan: { name: string }; findings: readonly { rule: string; verdict: string }[] }[] };
  const order = ['clear', 'caution', 'unknown', 'stop'];
  const told = new Set(audits.flatMap(({ findings }) => findings.filter(({ verdict }) => verdict !== 'clear').map(({ rule }) => rule)));
  const gravest = ({ plan: { name }, findings }: (typeof audits)[number], rule: string): readonly string[] => {
    const worst = Math.max(...findings.filter((one) => one.rule === rule).map(({ verdict }) => order.indexOf(verdict)));
    return worst < 0 ? [] : [`${rule} ${name} ${order[worst]}`];
  };
  return audits.flatMap((one) => [...told].flatMap((rule) => gravest(one, rule))).sort();
}

describe('a class', () => {
  test('is a folder that is dropped; its pack is the command’s, and a click opens a plan', { timeout: 90_000 }, async () => {
    const { page, noise } = await open();
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    const room = folder();
    await drop(page, room, '.drop');
    await page.locator('p[role=status]', { hasText: '4 plans' }).waitFor();
    expect(await page.locator('[aria-label="Table of the class"] tbody tr').allTextContents()).toEqual([expect.stringContaining('Jug Clear'), expect.stringContaining('Cannot be read'), expect.stringContaining('Wall Stop'), expect.stringContaining('Pear')]);
    expect(await page.locator('.told').textContent()).toBe('1 file beside them is left out: plans end in .yaml.');
    await page.locator('iframe[title="The class pack"]').waitFor();
    expect(await page.locator('.view').textContent()).toMatch(/Bought together for the 2 plans that may be cut, everything together costs [\d.]+ EUR\. No choice of boards costs less: proven\./u);
    rmSync(join(room, 'notes.txt'));
    expect(await marksOnPage(page)).toEqual(marksOf(room));
    command('audit', room, '--format', 'html', '--out', join(out, 'reports'));
    const written = readFileSync(join(out, 'reports', 'class-pack.html'), 'utf8').replaceAll(`${room}/`, '');
    expect(await page.locator('iframe[title="The class pack"]').getAttribute('srcdoc')).toBe(unlinked(written));
    await page.frameLocator('iframe[title="The class pack"]').locator('h1').waitFor();
    await page.evaluate(() => {
      const frame = document.querySelector('iframe') as HTMLIFrameElement;
      (window as { prints?: number }).prints = 0;
      (frame.contentWindow as Window).print = () => { (window as unknown as { prints: number }).prints++; };
    });
    await page.getByRole('button', { name: 'Print the class pack' }).click();
    expect(await page.evaluate(() => (window as unknown as { prints: number }).prints)).toBe(1);
    await page.getByRole('button', { name: 'Pear', exact: true }).click();
    await settled(page);
    expect(await textOf(page)).toBe(files['d-pear.yaml']);
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });

  test('is a folder that is chosen, without what lies in folders inside it', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    const room = join(out, 'room-7');
    mkdirSync(join(room, 'last-year'), { recursive: true });
    for (const name of ['a-jug.yaml', 'd-pear.yaml', 'last-year/c-wall.yaml']) writeFileSync(join(room, name), files[name.split('/').at(-1) as string] as string);
    await page.getByLabel('Folder of the class').setInputFiles(room);
    await page.locator('p[role=status]', { hasText: '2 plans' }).waitFor();
    await page.close();
  });

  test('of which nothing may be cut says so', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Class', exact: true }).click();
    await page.getByLabel('Plan files of the class').setInputFiles([{ name: 'wall.yaml', mimeType: 'text/yaml', buffer: Buffer.from(plan('Wall', '2000 mm')) }]);
    await page.locator('p', { hasText: 'No plan may be cut yet, so there is nothing to buy.' }).waitFor();
    await page.close();
  });
});
