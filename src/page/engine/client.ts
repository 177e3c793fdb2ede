import type { Answered, Asks, Kind } from './protocol.js';

/** Asks the engine; every question is answered once. */
export type Ask = <K extends Kind>(kind: K, ask: Asks[K]['ask']) => Promise<Asks[K]['answer']>;

/** An engine at work. */
export interface Engine {
  readonly ask: Ask;
  /** Stops it where it is; what it was asked is never answered. */
  readonly end: () => void;
}

/** Starts an engine in a worker made from the very script that runs here, so that nothing is fetched. */
export function startEngine(script: string): Engine {
  const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  const worker = new Worker(address);
  const open = new Map<number, { readonly done: (answer: never) => void; readonly failed: (error: Error) => void }>();
  let last = 0;
  worker.onmessage = ({ data }: MessageEvent<Answered>) => {
    const asked = open.get(data.id);
    open.delete(data.id);
    if ('failed' in data) asked?.failed(new Error(data.failed));
    else asked?.done(data.answer as never);
  };
  worker.onerror = ({ message }) => {
    for (const { failed } of open.values()) failed(new Error(message));
    open.clear();
  };
  const ask: Ask = (kind, about) =>
    new Promise((done, failed) => {
      const id = ++last;
      open.set(id, { done, failed });
      worker.postMessage({ id, kind, ask: about });
    });
  return {
    ask,
    end: () => {
      worker.terminate();
      URL.revokeObjectURL(address);
      open.clear();
    },
  };
}
