import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileNameOf } from '../../src/cli/new/yaml-words.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { folder, looksLikeABug, type Folder } from './command.js';
import { converse, lendsTerminal } from './conversation.js';

const shelf = shippedShelf();
const flags = ['--name', 'Reading nook, left', '--width', '35-3/8 in', '--height', '26 in', '--stock', 'strip-19x38'] as const;

function planIn(here: Folder, file: string) {
  const result = readPlanWith(readFileSync(join(here.path, file), 'utf8'), file, shelf);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('new, from flags', () => {
  it('writes a commented plan that reads as asked', () => {
    const here = folder();
    const { code, out } = here.run('new', ...flags, '--lay', 'edge', '--plies', '2', '--crossbar', 'upright', '--chosen', 'picked', '--moisture', '9 %', '--hang', 'two-hooks', '--out', 'plans/nook.yaml');
    expect(code).toBe(0);
    expect(out).toContain('sightdown audit plans/nook.yaml');
    const plan = planIn(here, 'plans/nook.yaml');
    expect(plan).toMatchObject({ name: 'Reading nook, left', units: 'inch', bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, lumber: { chosen: 'picked', moisture_pct: 9 }, hang: { by: 'two-hooks' } });
    expect(plan.face.width_mm).toBeCloseTo(898.525, 9);
    expect(plan.crossbars).toEqual([expect.objectContaining({ runs: 'upright', at: 0.5 })]);
    expect(readFileSync(join(here.path, 'plans/nook.yaml'), 'utf8').match(/#/g)?.length).toBeGreaterThan(5);
  });

  it('sets a crossbar back behind bars on edge, so that the new plan has no warning and the brush does not touch it', () => {
    const here = folder();
    const backs = (['900 mm', '35-3/8 in'] as const).map((width, i) => {
      const { code, err } = here.run('new', '--name', 'Set back', '--width', width, '--height', '650 mm', '--stock', 'strip-19x38', '--lay', 'edge', '--plies', '2', '--crossbar', 'upright', '--out', `${i}.yaml`);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const [crossbar] = planIn(here, `${i}.yaml`).crossbars;
      expect(crossbar).toMatchObject({ lay: 'flat' });
      return crossbar!.setback_mm;
    });
    expect(backs[0]).toBe(19);
    expect(backs[1]).toBeCloseTo((11 * 25.4) / 16, 9);
  });

  it('leaves a crossbar of flat bars where there is no room behind the cloth', () => {
    const here = folder();
    expect(here.run('new', ...flags, '--lay', 'flat', '--crossbar', 'level', '--out', 'flat.yaml').code).toBe(0);
    expect(readFileSync(join(here.path, 'flat.yaml'), 'utf8')).not.toContain('setback');
  });

  it('names the file after the plan, and never overwrites one', () => {
    const here = folder();
    expect(here.run('new', ...flags).code).toBe(0);
    const before = readFileSync(join(here.path, 'reading-nook-left.yaml'), 'utf8');
    const again = here.run('new', ...flags, '--plies', '2');
    expect(again.code).toBe(1);
    expect(again.err).toContain('reading-nook-left.yaml is there already and stays as it is');
    expect(readFileSync(join(here.path, 'reading-nook-left.yaml'), 'utf8')).toBe(before);
  });

  it('a name is only ever a name, whatever it holds', () => {
    const here = folder();
    for (const [i, name] of ['Nook: "left" # or right', 'yes', '- [a]', "it's {b}", 'x\\n', '*a &b !c %d'].entries()) {
      expect(here.run('new', '--name', name, ...flags.slice(2), '--out', `${i}.yaml`).code, name).toBe(0);
      expect(planIn(here, `${i}.yaml`).name).toBe(name);
    }
  });

  it('what no plan can say is refused with its reason, and nothing is written', () => {
    const here = folder();
    const { code, err } = here.run('new', '--name', 'Nook', '--width', '900', '--height', '650 mm', '--stock', 'strip-19x83');
    expect(code).toBe(1);
    expect(err).toContain('face.width: found `900` without a unit');
    expect(err).toContain('Did you mean `strip-19x38`?');
    expect(err).not.toMatch(looksLikeABug);
    expect(here.files()).toEqual([]);
  });

  it('without a terminal it says which flags are missing', () => {
    const here = folder();
    const { code, err } = here.run('new', '--name', 'Nook', '--height', '650 mm');
    expect(code).toBe(1);
    expect(err).toContain('--width, --stock are missing');
    expect(here.files()).toEqual([]);
  });

  it('points an editor to a schema that lies beside the plan', () => {
    const here = folder();
    here.run('schema', 'plan', '--out', '.');
    here.run('new', ...flags, '--out', 'nook.yaml');
    expect(readFileSync(join(here.path, 'nook.yaml'), 'utf8')).toMatch(/^# yaml-language-server: \$schema=plan\.schema\.json\n/);
  });

  it.each([['Reading nook, left', 'reading-nook-left.yaml'], ['Étude nº 3', 'etude-no-3.yaml'], ['../../etc/x', 'etc-x.yaml'], ['絵', 'plan.yaml']])('%s → %s', (name, file) => {
    expect(fileNameOf(name)).toBe(file);
  });
});

describe.skipIf(!lendsTerminal)('new, as a conversation on a terminal', () => {
  it('asks for what no flag gave, asks again for a length without a unit, and writes the plan', () => {
    const here = folder();
    const screen = converse(here, [
      ['What is the frame called', 'Hall panel\\r'], ['How wide is it', '900\\r'], ['Write the unit after', ' mm\\r'], ['How high', '650 mm\\r'], ['Which file', '\\r'],
    ], 'new', '--stock', 'strip-19x38', '--lay', 'edge', '--plies', '2', '--crossbar', 'none', '--chosen', 'plain', '--moisture', '12 %', '--hang', 'wire');
    expect(screen).toContain('hall-panel.yaml is written');
    expect(planIn(here, 'hall-panel.yaml')).toMatchObject({ name: 'Hall panel', face: { width_mm: 900, height_mm: 650 }, bars: { lay: 'edge', plies: 2 } });
  });

  it('Ctrl+C leaves without writing anything', () => {
    const here = folder();
    const screen = converse(here, [['What is the frame called', 'Hall panel\\r'], ['How wide is it', '\\003']], 'new');
    expect(screen).toContain('Nothing was written.');
    expect(existsSync(join(here.path, 'hall-panel.yaml'))).toBe(false);
  });

  it.each([['before anything is typed', ''], ['in the middle of an answer', 'Hall']])('Ctrl+D leaves like Ctrl+C, %s: with a word, the cursor shown, and 130', (_, typed) => {
    const here = folder();
    const screen = converse(here, [['What is the frame called', `${typed}\\004`]], 'new');
    expect(screen).toContain('Nothing was written.');
    expect(screen.lastIndexOf('\u001b[?25h')).toBeGreaterThan(screen.lastIndexOf('\u001b[?25l'));
    expect(screen).toMatch(/exit 130\s*$/u);
    expect(here.files()).toEqual(['screen']);
  });
});
