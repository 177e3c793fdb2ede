import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { formatLength } from '../../base/units-format.js';
import { readQuantity } from '../../base/units.js';
import { readPlanWith } from '../../plan/read-plan.js';
import type { Shelf } from '../../shelf/shelf.js';
import { exitCode } from '../exit.js';
import { loadShelf } from '../load.js';
import type { NewOptions } from '../option-types.js';
import { complain, tell, warn } from '../terminal.js';
import { typed } from '../typed.js';
import { writeNewFile } from '../write-files.js';
import { planText, type NewPlan, type Wanted } from './plan-text.js';
import { fileNameOf } from './yaml-words.js';

const required = ['name', 'width', 'height', 'stock'] as const;

const ofPiles = ['mark', 'length', 'rise', 'high', 'sticks', 'over', 'bow', 'crook', 'unread'] as const;

/** Writes a new plan from flags, or from flags and answers; resolves to the exit code. */
export async function runNew(options: NewOptions): Promise<number> {
  const [foreign] = ofPiles.filter((flag) => options[flag] !== undefined);
  if (foreign !== undefined) {
    warn(`--${foreign} speaks of boards in hand: give --pile with it, or leave it out for a plan.`);
    return exitCode.error;
  }
  const shelf = loadShelf(options.shelf);
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok) return exitCode.error;
  const missing = required.filter((flag) => options[flag] === undefined);
  if (missing.length === 0) return write(fromFlags(options), shelf.value);
  if (process.stdin.isTTY !== true || process.stdout.isTTY !== true) {
    warn(
      `There is no terminal to ask on, and ${missing.map((flag) => `--${flag}`).join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing. Give them as flags; sightdown new --help has an example.`,
    );
    return exitCode.error;
  }
  const wanted = await (await import('./ask.js')).ask(options, shelf.value);
  return wanted === null ? exitCode.interrupted : write(wanted, shelf.value);
}

function fromFlags(options: NewOptions): Wanted {
  const { name = '', width = '', height = '', stock = '' } = options;
  return {
    plan: {
      name: name.trim(),
      width,
      height,
      stock,
      lay: options.lay ?? 'flat',
      plies: options.plies ?? 1,
      crossbar: options.crossbar ?? 'none',
      chosen: options.chosen ?? 'plain',
      moisture: options.moisture ?? '12 %',
      hang: options.hang ?? 'wire',
    },
    file: options.out ?? fileNameOf(name),
  };
}

/**
 * How far behind the cloth a crossbar of bars on edge can lie when it is laid flat, its back level with theirs; null
 * when there is no room for that. Down to a mark of the tape.
 */
function setbackOf({ crossbar, lay, stock, width }: NewPlan, shelf: Shelf): string | null {
  const lumber = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
  if (crossbar === 'none' || lay !== 'edge' || lumber === undefined) return null;
  const reading = readQuantity(width, 'length');
  const units = reading.ok && reading.system === 'inch' ? 'inch' : 'metric';
  const mark_mm = units === 'inch' ? 25.4 / 16 : 1;
  const setback_mm =
    Math.floor(
      (Math.max(lumber.thickness_mm, lumber.width_mm) - Math.min(lumber.thickness_mm, lumber.width_mm)) / mark_mm +
        1e-9,
    ) * mark_mm;
  return setback_mm > 0 ? formatLength(setback_mm, units) : null;
}

/** Checks the text as any plan is checked, then writes it where nothing stands yet. */
function write({ plan, file }: Wanted, shelf: Shelf): number {
  const schema = existsSync(join(dirname(file), 'plan.schema.json')) ? 'plan.schema.json' : null;
  const text = planText(plan, schema, setbackOf(plan, shelf));
  const checked = readPlanWith(text, file, shelf);
  complain(checked.ok ? checked.warnings : checked.problems);
  if (!checked.ok) {
    warn('Nothing was written.');
    return exitCode.error;
  }
  writeNewFile(file, text);
  tell(`${file} is written. Next: sightdown audit ${typed(file)}`);
  return exitCode.fine;
}
