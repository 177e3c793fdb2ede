import type { Ask } from '../engine/client.js';
import type { PageData } from '../engine/protocol.js';
import { edits } from '../state/plan.js';
import { answer, answeredEdit, settledEdit } from '../state/answers.js';

/** The whole page. */
export function App(_: { readonly ask: Ask; readonly data: PageData }) {
  const glance = answer.value?.glance;
  return (
    <main data-edit={edits.value} data-answered={answeredEdit.value} data-settled={settledEdit.value}>
      <h1>{glance?.name ?? 'No plan'}</h1>
      <p>{glance?.sentence}</p>
    </main>
  );
}
