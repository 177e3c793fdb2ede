import { render } from 'preact';
import { startEngine } from './engine/client.js';
import type { PageData } from './engine/protocol.js';
import { benchTexts, followPlan } from './state/answers.js';
import { openPlan } from './state/plan.js';
import { App } from './view/app.js';

/** Reads what the page was written with, starts the engine and shows the bench. */
export function startPage(document: Document): void {
  const data = JSON.parse(document.getElementById('data')?.textContent ?? '') as PageData;
  const ask = startEngine(document.getElementById('script')?.textContent ?? '');
  const { shelf, own_shelf, rules, entry, sources } = data;
  openPlan(data.plan.text, data.plan.file);
  benchTexts.value = { shelf, own_shelf, rules, entry, sources };
  followPlan(ask);
  render(<App ask={ask} data={data} />, document.getElementById('page') as HTMLElement);
}
