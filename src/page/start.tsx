import { effect } from '@preact/signals';
import { render } from 'preact';
import { startEngine } from './engine/client.js';
import type { PageData } from './engine/protocol.js';
import { bench, benchTexts, followPlan } from './state/answers.js';
import { chosenBench, ownRules, ownShelf, rulesEntry, written } from './state/bench.js';
import { judgeClass } from './state/class.js';
import { droppedFiles, leftOut, readFiles } from './state/files.js';
import { keepOn, readKept } from './state/keep.js';
import { followPile, pile } from './state/pile.js';
import { edits, openPlan, redo, savedText, setAside, told, undo } from './state/plan.js';
import { planIn } from './state/share.js';
import { lookedAt, view } from './state/view.js';
import { App } from './view/app.js';

/** Reads what the page was written with and what was kept, starts the engine and shows the bench. */
export function startPage(document: Document): void {
  const data = JSON.parse(document.getElementById('data')?.textContent ?? '') as PageData;
  const script = document.getElementById('script')?.textContent ?? '';
  const { ask } = startEngine(script);
  written.value = data;
  takeUp(data);
  effect(() => {
    benchTexts.value = chosenBench.value;
    edits.value = edits.peek() + 1;
  });
  effect(() => {
    if (edits.value > 0) lookedAt.value = null;
  });
  effect(() => {
    if (bench.value !== null) void judgeClass(ask);
  });
  followPile(
    () => startEngine(script),
    () => view.value === 'Boards',
  );
  keepOn(data.plan.text);
  followPlan(ask, () => startEngine(script));
  listen();
  render(<App ask={ask} />, document.getElementById('page') as HTMLElement);
  void followLink();
}

/** What was kept at the last visit to this very page, or what the page came with. */
function takeUp(data: PageData): void {
  const kept = readKept();
  const same = kept !== null && kept.written_with === data.plan.text;
  ownShelf.value = same ? kept.own_shelf : data.own_shelf;
  ownRules.value = same ? kept.own_rules : null;
  rulesEntry.value = same && data.rules.some(({ file }) => file === kept.entry) ? kept.entry : data.entry;
  const plan = same ? kept.plan : data.plan;
  openPlan(plan.text, plan.file);
  pile.value = same ? kept.pile : null;
  setAside.value = same ? kept.aside : null;
  savedText.value = data.plan.text;
  if (same && kept.plan.text !== data.plan.text) told.value = 'This is the plan you had open last time.';
}

/** Opens the plan that a link carries. A damaged one is refused, and nothing changes. */
async function followLink(): Promise<void> {
  const plan = await planIn(location.hash);
  if (plan === null) return;
  history.replaceState(null, '', '#');
  if (plan === 'damaged') {
    told.value = 'The plan in this link is damaged or cut short, so it was not opened. Ask for the link again.';
    return;
  }
  openPlan(plan.text, plan.file);
  view.value = 'Frame';
  told.value = `${plan.file} from the link is open.`;
}

/** Keys and files that are meant for the whole page. */
function listen(): void {
  addEventListener('hashchange', () => void followLink());
  addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const field =
      event.target instanceof HTMLInputElement &&
      event.target.type === 'text' &&
      event.target.closest('.controls') === null;
    if (field) return;
    if (key === 'z' || key === 'y') {
      event.preventDefault();
      (key === 'y' || event.shiftKey ? redo : undo)();
    }
    if (key === 'p') {
      event.preventDefault();
      view.value = 'Sheet';
      told.value = 'This is the sheet for paper; “Print the sheet” prints it.';
    }
  });
  addEventListener('dragover', (event) => event.preventDefault());
  addEventListener('drop', (event) => {
    event.preventDefault();
    if (event.dataTransfer === null) return;
    void droppedFiles(event.dataTransfer)
      .then((files) => readFiles(files ?? []))
      .then(([plan]) => {
        if (plan === undefined) {
          told.value = 'There is no plan in what was dropped: plans end in .yaml. A folder of plans goes to “Class”.';
          return;
        }
        if (leftOut(plan.text, 'opened')) return;
        openPlan(plan.text, plan.file);
        told.value = `${plan.file} is open.`;
      });
  });
}
