import { useEffect, useState } from 'preact/hooks';
import type { Ask } from '../engine/client.js';
import { answer, answeredEdit } from '../state/answers.js';
import { planFile, planText } from '../state/plan.js';
import { Paper } from './paper.js';

/** The printable sheet, the very page the command writes, in a frame of its own that runs nothing. */
export function Sheet({ ask }: { readonly ask: Ask }) {
  const [html, setHtml] = useState<string | null>(null);
  const edit = answeredEdit.value;
  useEffect(() => {
    let current = true;
    void ask('report', { text: planText.peek(), file: planFile.peek(), format: 'html' }).then((made) => {
      if (current) setHtml(made);
    });
    return () => {
      current = false;
    };
  }, [edit]);
  const readable = answer.value?.glance != null;
  return (
    <section class="view" aria-labelledby="sheet-title">
      <h2 id="sheet-title">The sheet for the bench</h2>
      {!readable && <p class="problem">There is no sheet while the plan cannot be read.</p>}
      {readable && html === null && <p role="status">One moment …</p>}
      {readable && html !== null && (
        <Paper
          html={html}
          title="The printable sheet"
          print="Print the sheet"
          about="Verdict, cut list, buying list, screws, cloth, order of work and cautions, for paper."
        />
      )}
    </section>
  );
}
