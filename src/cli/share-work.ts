import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { ChartSharing } from './chart-work.js';
import type { ClassSharing } from './class-work.js';
import type { DoPiece } from './do-piece.js';
import { packageFolder } from './files.js';
import { CannotWrite } from './cannot-write.js';

/** Work that several can share, and what each needs to know to do any piece of it. */
export type Sharing = ChartSharing | ClassSharing;

/** How shared work is followed. */
export interface Following<Answer> {
  /** Given each answer, in the order of the pieces, whoever did them and whenever they were done. */
  readonly take: (answer: Answer) => void;
  /** Called after each step of a piece. */
  readonly step: () => Promise<void>;
}

/** What a worker says: a step is done; a piece is done, with its answer; it failed, and why. */
export type Said =
  | { readonly step: true }
  | { readonly piece: number; readonly answer: unknown }
  | { readonly piece: number; readonly failed: string; readonly cannotWrite: boolean };

/**
 * How many share the work where nobody says: a core each and one left over, none with less to do than its start is
 * worth. On two cores one is quicker than two, which both compile everything anew.
 */
export const usualJobs = (pieces: number, worthStarting: number): number =>
  Math.max(1, Math.min(availableParallelism() - 1, Math.floor(pieces / worthStarting)));

/** How the pieces of shared work are done. */
export async function piecesOf(sharing: Sharing): Promise<DoPiece<unknown>> {
  return sharing.work === 'chart'
    ? (await import('./chart-work.js')).chartPieces(sharing)
    : (await import('./class-work.js')).classPieces(sharing);
}

/**
 * Does the pieces 0 … `pieces` − 1, in this thread or shared out among `jobs` others, each taking the next one when it
 * is done with its last. Where some fail, the first of them is thrown after all before it were taken, as if they had
 * been done one after the other. Each of the others runs the script `start`, and one that ends too soon is an error.
 */
export async function shareOut<Answer>(
  sharing: Sharing,
  pieces: number,
  jobs: number,
  following: Following<Answer>,
  start: string | URL = command,
): Promise<void> {
  const [many, { take, step }] = [Math.min(jobs, pieces), following];
  if (many > 1) return shareAmong(sharing, pieces, many, following as Following<unknown>, start);
  const doPiece = (await piecesOf(sharing)) as DoPiece<Answer>;
  for (let piece = 0; piece < pieces; piece++) take(await doPiece(piece, step));
}

/** The command itself, which begins as a worker where it is started as one. */
const command = join(packageFolder, 'dist', 'sightdown.js');
/** What is soon thrown away takes no more room than this in each worker: it is thrown away sooner then. */
const resourceLimits = { maxYoungGenerationSizeMb: 8 };

/** What is done runs at most so many pieces for each worker ahead of the one that is waited for. */
const mostAhead = 8;

async function shareAmong(
  sharing: Sharing,
  pieces: number,
  jobs: number,
  { take, step }: Following<unknown>,
  start: string | URL,
): Promise<void> {
  const done = new Map<number, Exclude<Said, { step: true }>>();
  const [workers, idle]: [Worker[], Worker[]] = [[], []];
  let [given, taken] = [0, 0];
  /** Steps are told one after the other, whoever did them: the terminal has one bar. */
  let told = Promise.resolve();
  const giveNext = (worker: Worker): void => {
    if (given < Math.min(pieces, taken + mostAhead * jobs)) worker.postMessage(given++);
    else idle.push(worker);
  };
  try {
    await new Promise<void>((resolve, reject) => {
      const heard = (worker: Worker, said: Said): void => {
        if ('step' in said) return void (told = told.then(step).catch(reject));
        done.set(said.piece, said);
        for (let next = done.get(taken); next !== undefined; next = done.get(taken)) {
          if ('failed' in next) return reject(next.cannotWrite ? new CannotWrite(next.failed) : new Error(next.failed));
          done.delete(taken++);
          take(next.answer);
        }
        if (taken === pieces) return resolve();
        for (const free of [...idle.splice(0), worker]) giveNext(free);
      };
      for (let i = 0; i < jobs; i++) {
        const worker = new Worker(start, { workerData: sharing, stderr: true, resourceLimits });
        worker.on('message', (said: Said) => heard(worker, said));
        worker.on('error', reject);
        // Told to end when all is done; before that nobody else would hear of it, and the work would be waited for.
        worker.on('exit', (code) =>
          reject(new Error(`one that shared the work ended too soon (${code}): try again with --jobs 1`)),
        );
        workers.push(worker);
        giveNext(worker);
      }
    });
    await told;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
