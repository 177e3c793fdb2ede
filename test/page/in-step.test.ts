/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { expect, test } from 'vitest';
import { parse, parseDocument } from 'yaml';
import { quiet, settled, setUpBench, silence, textOf, writeText } from './workbench.js';

const { open } = setUpBench('in-step');

const start = `# Ferry hall, north side
plan: 1
name: Ferry hall    # as the sign says
face: { width: 900 mm, height: 700 mm }
# what was left over
bars:
  stock: strip-19x38
  # tried flat first
  lay: edge
  plies: 2
crossbars:
  - { runs: upright, at: 1/2 }   # the middle one
cloth: { use: linen-300, pull: { working: 180 N/m } }
corners: { cut: mitre, brace: { kind: timber, leg: 150 mm } }
# end
`;
const notes = ['# Ferry hall, north side', '# as the sign says', '# what was left over', '# tried flat first', '# the middle one', '# end'];

/** What a control shows: its place in the plan, and what stands or is chosen there. */
interface Shown {
  readonly path: string;
  readonly kind: 'typed' | 'menu' | 'choice';
  readonly value: string;
}

/** Works one of the page's controls as a hand would, chosen by three numbers 0..1, and tells what all of them show afterwards. */
async function work([which, how, more]: readonly [number, number, number]): Promise<{ readonly did: string; readonly shown: readonly Shown[] }> {
  const pick = <T>(list: readonly T[], by: number): T | undefined => list[Math.floor(by * list.length)];
  for (const details of document.querySelectorAll<HTMLDetailsElement>('.controls details')) details.open = true;
  const typed: Readonly<Record<string, readonly string[]>> = { at: ['1/3', '0.4', '450 mm', ''], working: ['150 N/m', '1.1 lbf/in', ''], peak: ['420 N/m', ''], name: ['A: b, {c} # d', 'Ferry hall'], moisture: ['9 %', ''], humidity: ['40..55 %', ''], temperature: ['18 C', ''], twist: ['0.3 deg/m', ''] };
  const fields = [...document.querySelectorAll<HTMLElement>('.controls .field[data-path], .controls .entries button')];
  const field = pick(fields, which) as HTMLElement;
  const path = field.dataset['path'] ?? '';
  const input = field.querySelector<HTMLInputElement>('input[type=text]');
  const menu = field.querySelector('select');
  const radios = [...field.querySelectorAll<HTMLInputElement>('input[type=radio]')];
  let did = `${path} ${field.textContent ?? ''}`.slice(0, 40);
  if (field instanceof HTMLButtonElement) field.click();
  else if (input !== null) {
    const amounts = typed[path.split('.').at(-1) ?? ''] ?? (field.classList.contains('short') ? ['1', '2', ''] : ['35-3/8 in', '90 cm', '2 ft 11 in', '240 mm', '']);
    const value = pick(amounts, how) as string;
    did += ` := ${value}`;
    input.focus();
    input.value = value;
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    if (more > 0.5) await new Promise((done) => setTimeout(done, 0));
    input.blur();
  } else if (menu !== null) {
    menu.value = pick([...menu.options], how)?.value ?? '';
    menu.dispatchEvent(new Event('change', { bubbles: true }));
  } else if (more < 0.25) field.querySelector('button')?.click();
  else pick(radios, how)?.click();
  await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
  const shown = [...document.querySelectorAll<HTMLElement>('.controls .field[data-path]')].map((one): Shown => {
    const own = { path: one.dataset['path'] ?? '' };
    const text = one.querySelector<HTMLInputElement>('input[type=text]');
    const select = one.querySelector('select');
    if (text !== null) return { ...own, kind: 'typed', value: text.value };
    if (select !== null) return { ...own, kind: 'menu', value: select.value };
    return { ...own, kind: 'choice', value: one.querySelector<HTMLInputElement>('input:checked')?.value ?? '' };
  });
  return { did, shown };
}

/** A repeatable row of numbers 0..1. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

/** What the text says for a control; undefined where it says nothing. */
function said(data: unknown, path: string): string | undefined {
  const steps = path.split('.');
  let at: unknown = data;
  for (const [i, step] of steps.entries()) {
    if (at === 'none') return path === `${steps.slice(0, i).join('.')}.kind` ? 'none' : undefined;
    if (typeof at === 'string' && path === 'cloth.pull.working') return at;
    at = typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[step] : undefined;
  }
  return typeof at === 'object' || at === undefined ? undefined : String(at);
}

test('text and controls stay in step through 500 edits, every comment and the order survive, and undo leads back to the first letter', { timeout: 120_000 }, async () => {
  const { page, noise } = await open();
  await writeText(page, start);
  await settled(page);
  const before = await page.getByRole('button', { name: 'Undo', exact: true }).isEnabled();
  expect(before).toBe(true);
  const next = numbers(20261127);
  let changed = 0;
  let last = start;
  for (let i = 0; i < 500; i++) {
    const { did, shown } = await page.evaluate(work, [next(), next(), next()] as const);
    const text = await textOf(page);
    const doc = parseDocument(text);
    expect(doc.errors, `${i}: ${did}`).toEqual([]);
    if (text !== last) changed++;
    last = text;
    for (const note of notes) expect(text, `${i}: ${did}`).toContain(note);
    const keys = Object.keys(doc.toJS() as object).filter((key) => /^(?:plan|name|face|bars|crossbars|cloth|corners)$/u.test(key));
    const order = ['plan', 'name', 'face', 'bars', 'crossbars', 'cloth', 'corners'].filter((key) => keys.includes(key));
    if (i < 40) expect(keys).toEqual(order);
    const data: unknown = parse(text);
    for (const { path, kind, value } of shown) {
      const wanted = said(data, path);
      if (path === 'corners.nails' || path === 'ply-screws') continue;
      if (wanted !== undefined) expect(`${path} ${value}`, `${i}: ${did}\n${text}`).toBe(`${path} ${wanted}`);
      else if (kind !== 'choice') expect(`${path} ${value}`, `${i}: ${did}\n${text}`).toBe(`${path} `);
    }
  }
  expect(changed).toBeGreaterThan(250);
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  let steps = 0;
  while (await undo.isEnabled()) {
    await undo.evaluate((button: HTMLButtonElement) => button.click());
    steps++;
  }
  expect(steps).toBeGreaterThanOrEqual(changed);
  expect(await textOf(page)).toContain('name: Small study');
  const redo = page.getByRole('button', { name: 'Redo', exact: true });
  while (await redo.isEnabled()) await redo.evaluate((button: HTMLButtonElement) => button.click());
  expect(await textOf(page)).toBe(last);
  expect(quiet(noise)).toEqual(silence);
  await page.close();
});

test('what is typed into the text shows in the controls, and a text that cannot be read stops them until it can', async () => {
  const { page } = await open();
  await writeText(page, start.replace('900 mm', '35-3/8 in'));
  await settled(page);
  expect(await page.getByLabel('Width, outside').inputValue()).toBe('35-3/8 in');
  await writeText(page, `${start}bars: [`);
  await settled(page);
  expect(await page.getByLabel('Width, outside').isDisabled()).toBe(true);
  expect(await page.locator('.slate .word').textContent()).toBe('No verdict');
  expect(await page.locator('.problems li').count()).toBeGreaterThan(0);
  await writeText(page, start.replace('plies: 2', 'plies: 9'));
  await settled(page);
  expect(await page.locator('.pce-line.wrong').textContent()).toContain('plies: 9');
  await page.locator('.problems button').first().click();
  expect(await page.evaluate(() => (document.activeElement as HTMLTextAreaElement).selectionStart)).toBe(start.indexOf('plies: 2') + 'plies: '.length);
  await page.close();
});
