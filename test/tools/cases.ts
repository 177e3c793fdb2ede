import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { CaseRun } from './cases-frames.js';

/** Picks the runner by what the document holds: frames have nodes and members, stretched frames what is expected of them, cutting lists stock and items. */
async function runCases(document: unknown): Promise<CaseRun> {
  const cases = Array.isArray(document) ? document : (document as { cases?: unknown } | null)?.cases;
  const first: unknown = Array.isArray(cases) ? cases[0] : undefined;
  if (typeof first === 'object' && first !== null && 'members' in first) {
    return (await import('./cases-frames.js')).runFrameCases(document);
  }
  const expected = (first as { expect?: unknown } | undefined)?.expect;
  if (typeof expected === 'object' && expected !== null) {
    const { runPastCriticalCases, runStabilityCases } = await import('./cases-stability.js');
    if ('beta_per_mm2' in expected) return runPastCriticalCases(cases as Parameters<typeof runPastCriticalCases>[0]);
    if ('load_factor' in expected) return runStabilityCases(cases as Parameters<typeof runStabilityCases>[0]);
  }
  if (typeof document === 'object' && document !== null) {
    return (await import('./cases-cutting.js')).runCuttingCases(document);
  }
  throw new Error('neither cases of frames or stretched frames (a list, or one under "cases") nor cutting cases');
}

/** Runs the file named on the command line; resolves to the exit code: 0 when every case agrees. */
async function main(file: string | undefined): Promise<number> {
  if (file === undefined) {
    console.error('Usage: npm run cases -- FILE');
    return 1;
  }
  try {
    const run = await runCases(parse(readFileSync(file, 'utf8')) as unknown);
    for (const line of run.lines) console.log(line);
    console.log(`${run.within}/${run.total} within ${run.tolerance}`);
    return run.total > 0 && run.within === run.total ? 0 : 1;
  } catch (error) {
    console.error(`Cannot run the cases of ${file}: ${error instanceof Error ? error.message : String(error)}`);
    return 1;
  }
}

process.exitCode = await main(process.argv[2]);
