import { basename, dirname, join } from 'node:path';
import { fileProblem } from '../base/problem.js';
import { chanceInWords } from '../base/chance-words.js';
import { steadyJson } from '../class/class-data.js';
import { composePlacePage } from '../place-page/page.js';
import { placeData } from '../place/place-data.js';
import { placePlans } from '../place/place-plans.js';
import type { PlacedFrame, PlacedPile } from '../place/result.js';
import { writeBoards } from '../place/write-boards.js';
import { readPlanWith } from '../plan/read-plan.js';
import { userText } from '../report/clean-text.js';
import { writeMarkdown } from '../report/markdown.js';
import type { Shelf } from '../shelf/shelf.js';
import { loadBench } from './bench.js';
import { exitCode } from './exit.js';
import { openPlans, type OpenPlan } from './open-plans.js';
import { writeFolder } from './write-files.js';
import { loadPile } from './pile-file.js';
import type { PlaceOptions } from './option-types.js';
import { planName } from './plans.js';
import { complain, printJson, tell } from './terminal.js';

/** The lift alone is exact; nothing is sampled. */
const no_samples = 100;

/** Places the boards and writes or prints what was asked for; resolves to the exit code. */
export async function runPlace(named: readonly string[], options: PlaceOptions): Promise<number> {
  const bench = loadBench({ ...options, samples: no_samples });
  if (bench === null) return exitCode.error;
  const open = openPlans(named, bench.shelf);
  const pile = loadPile(options.pile, bench.shelf);
  if (open === null || pile === null) return exitCode.error;
  const placed = placePlans(
    open.map(({ plan }) => plan),
    pile,
    bench,
  );
  if (options.format === 'json') printJson(`${steadyJson(placeData(placed))}\n`);
  else
    tell(
      `${summary(placed)}  →  ${await writePage(placed, options.out ?? join('reports', open.length > 1 ? 'place' : planName(open[0]?.file ?? '')), options)}`,
    );
  if (options.write && !writeAll(open, placed, bench.shelf, options.format === 'json')) return exitCode.error;
  return placed.frames.some(({ lift }) => lift === null) || (placed.buy?.uncut.length ?? 0) > 0
    ? exitCode.unknown
    : exitCode.fine;
}

function summary({ frames, proven }: PlacedPile): string {
  const [first] = frames;
  if (frames.length > 1 || first === undefined)
    return `${frames.length} frames placed${proven ? ', no better way, proven' : ''}`;
  if (first.lift === null || first.luck === null) return `${userText(first.plan.name)}: the lift cannot be worked out`;
  return `${userText(first.plan.name)}: lifted corner ${chanceInWords(first.lift.chance)} as placed, ${chanceInWords(first.luck.mean_chance)} by luck${proven ? '; no better way, proven' : ''}`;
}

async function writePage(
  placed: PlacedPile,
  out: string,
  { format, overwrite }: Pick<PlaceOptions, 'format' | 'overwrite'>,
): Promise<string> {
  const { tree, pictures } = composePlacePage(placed);
  if (format === 'html') {
    const { writeHtml } = await import('../report/html.js');
    writeFolder(
      out,
      [{ name: 'place.html', text: writeHtml(tree, pictures, { title: 'Which board goes where', lang: 'en' }) }],
      { overwrite },
    );
    return join(out, 'place.html');
  }
  writeFolder(
    out,
    [{ name: 'place.md', text: writeMarkdown(tree) }, ...pictures.map(({ name, svg }) => ({ name, text: svg }))],
    { overwrite },
  );
  return join(out, 'place.md');
}

/**
 * Writes the boards into every plan file; false when one of them cannot take them. All are checked before any is
 * written.
 */
function writeAll(open: readonly OpenPlan[], { frames }: PlacedPile, shelf: Shelf, quiet: boolean): boolean {
  const changed = open.map((one) =>
    changedText(
      one,
      frames.filter(({ plan }) => plan === one.plan),
      shelf,
    ),
  );
  if (changed.some((text) => text === null)) return false;
  open.forEach(({ file }, i) => {
    writeFolder(dirname(file), [{ name: basename(file), text: changed[i] as string }], { overwrite: true });
    if (!quiet) tell(`Boards written into ${file}`);
  });
  return true;
}

/** The file's text with the boards in it, only if it reads back with all of them; null after complaining. */
function changedText({ file, text, plan }: OpenPlan, frames: readonly PlacedFrame[], shelf: Shelf): string | null {
  const [first] = frames;
  const refuse = (found: string, allowed: string, hint: string): null => {
    complain([fileProblem(file, 'cannot-write-boards', found, allowed, hint, 'boards')]);
    return null;
  };
  if (first === undefined || frames.length > 1)
    return refuse(
      `a plan of ${frames.length} frames`,
      '`count: 1`, for `boards:` are those of one frame',
      'Give each frame a plan of its own, or leave out --write.',
    );
  const changed = writeBoards(text, plan, first.boards);
  const again = changed === null ? null : readPlanWith(changed, file, shelf);
  if (changed !== null && again?.ok === true && again.value.boards.length === first.boards.length) return changed;
  return refuse(
    'a plan file that is put together in an unusual way',
    'a plain plan file',
    'Write the `boards:` lines by hand.',
  );
}
