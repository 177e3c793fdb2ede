import { parentPort, workerData } from 'node:worker_threads';
import { piecesOf, type Said, type Sharing } from './share-work.js';
import { CannotWrite } from './cannot-write.js';

/** Does the pieces of shared work that it is told to, one after the other, until it is ended. */
export async function workAsTold(): Promise<void> {
  const say = (said: Said): void => parentPort?.postMessage(said);
  const ready = piecesOf(workerData as Sharing);
  parentPort?.on('message', async (piece: number) => {
    try {
      const doPiece = await ready;
      say({ piece, answer: await doPiece(piece, () => say({ step: true })) });
    } catch (error) {
      const failed = error instanceof Error ? error.message : String(error);
      say({ piece, failed, cannotWrite: error instanceof CannotWrite });
    }
  });
}
