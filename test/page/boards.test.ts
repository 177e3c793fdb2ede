/// <reference lib="dom" />
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { packageFolder } from '../../src/cli/files.js';
import { fileShape } from '../../src/schemas.js';
import { askEngine, command, quiet, settled, setUpBench, silence, textOf, writeText } from './workbench.js';

const { out, open } = setUpBench('boards');
const plan = 'reports/spare-boards/plan.yaml';
const pile = 'reports/spare-boards/pile.yaml';
const read = (file: string): string => readFileSync(join(packageFolder, file), 'utf8');

describe('the boards in hand', () => {
  test('are placed as the command places them, byte for byte', async () => {
    const { page } = await open();
    const seen = await askEngine(page, 'place', { plan: { text: read(plan), file: plan }, pile: { text: read(pile), file: pile } });
    command('place', plan, '--pile', pile, '--format', 'html', '--out', out);
    expect(seen?.html).toBe(readFileSync(join(out, 'place.html'), 'utf8'));
    const { frames } = JSON.parse(command('place', plan, '--pile', pile, '--format', 'json').stdout) as { frames: { places: { board: string; tag: string }[] }[] };
    expect(seen?.pieces.map(({ board, tag }) => ({ board, tag }))).toEqual(frames[0]?.places.map(({ board, tag }) => ({ board, tag })));
    await page.close();
  });

  test.each([
    ['of another kind', 'strip-19x38', '2400 mm', 'None of these boards can become a piece of this frame: it is made of square-38x38', 'No piece is made of this kind.'],
    ['too short', 'square-38x38', '300 mm', 'None of these boards can become a piece of this frame', 'Too short: the shortest piece takes 650 mm.'],
  ])('that are %s are told at once, each with the reason', async (_, stock, length, outcome, why) => {
    const { page } = await open();
    await writeText(page, read(plan));
    await page.getByRole('button', { name: 'Boards', exact: true }).click();
    await page.getByLabel('pile file').setInputFiles({ name: 'p.yaml', mimeType: 'text/yaml', buffer: Buffer.from(`pile: 1\nboards:\n  - { mark: A, stock: ${stock}, length: ${length}, twist: 0.2 deg/m }\n  - { mark: B, stock: ${stock}, length: ${length} }\n`) });
    await page.locator('.placing p[role=status]', { hasText: outcome }).waitFor();
    expect(await page.locator('.placing').textContent()).toContain(`A, B: ${why}`);
    expect(await page.locator('.marks li').count()).toBe(0);
    await page.close();
  });

  test('keep no verdict waiting while very many are placed, and a new question takes the place of an old one', { timeout: 90_000 }, async () => {
    const { page } = await open();
    const alone = read(plan).replace(/boards:[\s\S]*/u, '');
    await writeText(page, alone);
    await writeText(page, alone.replace('plan: 1', 'plan: 1\ncount: 12'));
    await page.getByRole('button', { name: 'Boards', exact: true }).click();
    const boards = Array.from({ length: 60 }, (__, i) => `  - { mark: B${i}, stock: square-38x38, length: 2400 mm, twist: ${((i * 7919) % 31 - 15) / 10} deg/m, bow: ${(i * 31) % 9} mm }\n`).join('');
    await page.getByLabel('pile file').setInputFiles({ name: 'p.yaml', mimeType: 'text/yaml', buffer: Buffer.from(`pile: 1\nboards:\n${boards}`) });
    await page.locator('.placing p[role=status]', { hasText: 'seconds so far' }).waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await settled(page);
    await page.locator('.marks li').nth(3).waitFor();
    expect(await page.locator('.placing p[role=status]').textContent()).toContain('as placed');
    await page.close();
  });

  test('say everything that a pile can say by controls alone, several alike too', { timeout: 90_000 }, async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Boards', exact: true }).click();
    await page.getByRole('button', { name: 'The first board' }).click();
    const say = async (label: string, typed: string): Promise<void> => {
      await page.getByLabel(`${label}, board A`).fill(typed);
      await page.getByLabel(`${label}, board A`).blur();
    };
    const said = [['Bow: rise of the wide face', '6 mm'], ['Crook: rise of the edge', '2 mm'], ['Sticks disagree by', '3 mm'], ['Sticks stand apart', '2000 mm'], ['Bad places, from the marked end', '310..340 mm; 900..920 mm']] as const;
    for (const [label, typed] of said) await say(label, typed);
    await page.getByText('More of board A').click();
    await say('Read over', '2300 mm');
    for (const [label, key] of [['Hollow is', 'other-face'], ['Hollow edge is', 'other-edge'], ['Far stick, high on its', 'left'], ['Ends', 'square']] as const)
      await page.getByLabel(`${label}, board A`).selectOption(key);
    await page.getByRole('button', { name: 'Several alike, not read' }).click();
    await page.getByLabel('How many, board 2').fill('6');
    await page.getByLabel('How many, board 2').blur();
    expect(await page.getByLabel('Bow: rise of the wide face, board 2').count()).toBe(0);
    const kept = await page.evaluate(() => (JSON.parse(localStorage.getItem('sightdown') ?? '') as { pile: { text: string } }).pile.text);
    const { boards } = parse(kept) as { boards: readonly Readonly<Record<string, unknown>>[] };
    expect(boards).toEqual([
      {
        mark: 'A', stock: 'strip-19x38', length: '2400 mm', bow: '6 mm', crook: '2 mm', twist: { rise: '3 mm', width: '400 mm', over: '2000 mm', for: 'left' }, knots: ['310..340 mm', '900..920 mm'], over: '2300 mm',
        hollow: 'other-face', 'hollow-edge': 'other-edge', cut: 'square',
      },
      { stock: 'strip-19x38', length: '2400 mm', count: 6 },
    ]);
    const { properties = {} } = fileShape('pile', []).properties?.['boards']?.items ?? {};
    expect([...new Set(boards.flatMap((board) => Object.keys(board)))].sort()).toEqual(Object.keys(properties).sort());
    await say('Bad places, from the marked end', '');
    await page.getByLabel('How many, board 2').fill('');
    await page.getByLabel('How many, board 2').blur();
    expect(await page.getByLabel('Bow: rise of the wide face, board 2').count()).toBe(1);
    await page.close();
  });

  test('are read on a phone, placed, kept, and written into the plan', { timeout: 90_000 }, async () => {
    const { page, noise } = await open({ viewport: { width: 390, height: 844 } });
    await writeText(page, read(plan));
    await settled(page);
    await page.getByRole('button', { name: 'Boards', exact: true }).click();
    await page.getByRole('button', { name: 'The first board' }).click();
    expect(await page.getByLabel('Kind, board A').inputValue()).toBe('square-38x38');
    await page.getByLabel('Length, board A').fill('240 cm');
    await page.getByLabel('Sticks disagree by, board A').fill('3 mm');
    await page.getByLabel('Sticks disagree by, board A').blur();
    await page.getByLabel('Far stick, high on its, board A').selectOption('right');
    await page.getByRole('button', { name: 'One more board' }).click();
    await page.getByLabel('Bow: rise of the wide face, board B').fill('soon');
    await page.getByLabel('Bow: rise of the wide face, board B').blur();
    await page.locator('.board .problem').waitFor();
    await page.getByLabel('Bow: rise of the wide face, board B').fill('4 mm');
    await page.getByLabel('Bow: rise of the wide face, board B').blur();
    await page.locator('.marks li').nth(3).waitFor();
    expect(Number.parseFloat(await page.locator('.chalk').first().evaluate((one) => getComputedStyle(one).fontSize))).toBeGreaterThan(48);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    await page.reload();
    await settled(page);
    await page.getByRole('button', { name: 'Boards', exact: true }).click();
    expect(await page.getByLabel('Length, board A').inputValue()).toBe('240 cm');
    await page.getByRole('button', { name: 'Write these boards into the plan' }).click();
    await settled(page);
    expect(await textOf(page)).toContain('boards:');
    expect(await page.locator('.slate .word').textContent()).not.toBe('No verdict');
    expect(quiet(noise)).toEqual(silence);
    await page.close();
  });
});
