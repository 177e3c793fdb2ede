import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MessageChannel, receiveMessageOnPort, Worker, type MessagePort } from 'node:worker_threads';
import type { Answered, Asked } from '../tools/warm-command.js';

/** The longest that a run may take, ms: a named pipe that is read waits for ever. */
const patience_ms = 50_000;

interface Warm {
  readonly worker: Worker;
  readonly port: MessagePort;
  readonly flag: Int32Array;
}

let warm: Warm | null = null;

/** Runs the command in the process that stays, as if it were started here, and waits for it. Throws when it takes too long or ends its process. */
export function runWarm(asked: Asked, env: Readonly<Record<string, string>>): Answered {
  warm ??= makeWarm(env);
  const { worker, port, flag } = warm;
  port.postMessage(asked);
  const ready = Atomics.wait(flag, 0, 0, patience_ms);
  Atomics.store(flag, 0, 0);
  const said = receiveMessageOnPort(port)?.message as Answered | { readonly ended: number | null } | undefined;
  if (ready !== 'timed-out' && said !== undefined && 'out' in said) return said;
  warm = null;
  void worker.terminate();
  throw new Error(`${asked.words.join(' ')}: ${said === undefined ? 'it does not end' : 'it ended its process'}`);
}

function makeWarm(env: Readonly<Record<string, string>>): Warm {
  const file = fileURLToPath(new URL('../../dist/tools/warm-command.js', import.meta.url));
  const { port1, port2 } = new MessageChannel();
  const flag = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(join(fileURLToPath(new URL('.', import.meta.url)), 'warm-relay.mjs'), { workerData: { port: port2, flag, file, env }, transferList: [port2] });
  worker.unref();
  port1.unref();
  return { worker, port: port1, flag };
}
