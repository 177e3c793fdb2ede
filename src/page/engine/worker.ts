import { Judge } from './judge.js';
import type { Answered, Asked } from './protocol.js';

/** What a worker's own scope offers here. */
interface WorkerScope {
  onmessage: ((event: MessageEvent<Asked>) => void) | null;
  postMessage(message: Answered): void;
}

/** Questions that leave the plan at hand alone. */
const isShort = ({ kind }: Asked): boolean => kind === 'front' || kind === 'row' || kind === 'pack';

/**
 * Answers one question after the other. A search for changes gives up as soon as a question waits that is not short.
 */
export function startWorker(scope: WorkerScope): void {
  const judge = new Judge();
  const waiting: Asked[] = [];
  let busy = false;
  const answer = async (asked: Asked): Promise<unknown> => {
    switch (asked.kind) {
      case 'bench':
        return judge.set(asked.ask);
      case 'audit':
        return judge.audit(asked.ask);
      case 'changes':
        return judge.changes(asked.ask, overtaken);
      case 'rest':
        return null;
      case 'front':
        return judge.front(asked.ask);
      case 'report':
        return judge.report(asked.ask, asked.ask.format);
      case 'place':
        return judge.place(asked.ask.plan, asked.ask.pile);
      case 'row':
        return judge.row(asked.ask, asked.ask.no);
      case 'pack':
        return judge.pack();
    }
  };
  const reply = async (asked: Asked): Promise<void> => {
    const { id } = asked;
    try {
      scope.postMessage({ id, answer: await answer(asked) });
    } catch (error) {
      scope.postMessage({ id, failed: error instanceof Error ? error.message : String(error) });
    }
  };
  const work = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) await reply(next);
    busy = false;
  };
  /** Lets questions come in; short ones are answered between the steps of the long search. */
  async function overtaken(): Promise<boolean> {
    await new Promise((done) => setTimeout(done, 0));
    for (let at = waiting.findIndex(isShort); at >= 0; at = waiting.findIndex(isShort))
      await reply(waiting.splice(at, 1)[0] as Asked);
    return waiting.length > 0;
  }
  scope.onmessage = ({ data }) => {
    waiting.push(data);
    void work();
  };
}
