import { Judge } from './judge.js';
import type { Answered, Asked } from './protocol.js';

/** What a worker's own scope offers here. */
interface WorkerScope {
  onmessage: ((event: MessageEvent<Asked>) => void) | null;
  postMessage(message: Answered): void;
}

/** Answers one question after the other. A search for changes gives up as soon as another question about a plan waits. */
export function startWorker(scope: WorkerScope): void {
  const judge = new Judge();
  const waiting: Asked[] = [];
  let busy = false;
  const overtaken = async (): Promise<boolean> => {
    await new Promise((done) => setTimeout(done, 0));
    return waiting.some(({ kind }) => kind === 'audit' || kind === 'bench');
  };
  const answer = async (asked: Asked): Promise<unknown> => {
    switch (asked.kind) {
      case 'bench': return judge.set(asked.ask);
      case 'audit': return judge.audit(asked.ask);
      case 'changes': return judge.changes(asked.ask, overtaken);
      case 'front': return judge.front(asked.ask);
      case 'report': return judge.report(asked.ask, asked.ask.format);
      case 'place': return judge.place(asked.ask.plan, asked.ask.pile);
      case 'row': return judge.row(asked.ask);
    }
  };
  const work = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const { id } = next;
      try {
        scope.postMessage({ id, answer: await answer(next) });
      } catch (error) {
        scope.postMessage({ id, failed: error instanceof Error ? error.message : String(error) });
      }
    }
    busy = false;
  };
  scope.onmessage = ({ data }) => {
    waiting.push(data);
    void work();
  };
}
