import { useMemo } from 'preact/hooks';
import { controlsOf } from '../controls/table.js';
import type { Ask } from '../engine/client.js';
import { answer, answeredEdit, settledEdit } from '../state/answers.js';
import { shapeFor } from '../state/bench.js';
import { edits } from '../state/plan.js';
import { view } from '../state/view.js';
import { Boards } from './boards.js';
import { Class } from './class.js';
import { Controls } from './controls.js';
import { FrameSheet } from './frame.js';
import { VerdictShape } from './glyphs.js';
import { Limits } from './limits.js';
import { Sheet } from './sheet.js';
import { Shelf } from './shelf.js';
import { TextPane } from './text-pane.js';
import { TopBar } from './top-bar.js';
import { VerdictSlate } from './verdict.js';

/** The whole page: the edge of the bench, what is worked on, and the slate with the verdict beside it. */
export function App({ ask }: { readonly ask: Ask }) {
  const controls = useMemo(() => controlsOf(shapeFor('plan')), []);
  const at = view.value;
  return (
    <div
      class={`bench at-${at.toLowerCase()}`}
      data-edit={edits.value}
      data-answered={answeredEdit.value}
      data-settled={settledEdit.value}
    >
      <div class="scroll">
        <TopBar />
        <main>
          <h1 class="title">{answer.value?.glance?.name ?? 'A frame'}</h1>
          {at === 'Frame' && <FrameSheet />}
          {at === 'Frame' && <Controls controls={controls} />}
          {at === 'Frame' && <TextPane />}
          {at === 'Boards' && <Boards />}
          {at === 'Shelf' && <Shelf />}
          {at === 'Limits' && <Limits />}
          {at === 'Class' && <Class ask={ask} />}
          {at === 'Sheet' && <Sheet ask={ask} />}
          <VerdictSlate ask={ask} />
        </main>
      </div>
      <button type="button" class="mini" onClick={() => document.getElementById('verdict-title')?.scrollIntoView()}>
        <VerdictShape verdict={answer.value?.glance?.verdict ?? 'none'} />
        <span>{answer.value === null ? 'One moment' : `${answer.value.glance?.word ?? 'No verdict'}: see why`}</span>
      </button>
    </div>
  );
}
