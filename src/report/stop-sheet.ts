import { userText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import type { FirstSheet } from './paper.js';
import { bestChangeBlocks } from './sections/best-change.js';
import { tried } from './sections/changes.js';
import { gravestSayings, reasonBlocks } from './sections/verdict.js';
import type { Telling } from './telling.js';
import { bullets, document, heading, paragraph, picture, setApart, strong } from './tree.js';
import { auditSentence, badge } from './words/verdict.js';

/** Most reasons told, so that all stays on one sheet; what is over stands under “What to change”. */
const mostReasons = 7;

/**
 * The first sheet of paper for a plan that must stop: every reason, the change to make first, drawn beside the plan,
 * what each change would do, and why there is no card for the bench.
 */
export function stopSheet(told: Telling, pictures: readonly Picture[]): FirstSheet {
  const { audit } = told;
  const reasons = gravestSayings(audit);
  const over = reasons.length - mostReasons;
  const first = bestChangeBlocks(told);
  return {
    tree: document([
      heading(
        2,
        `${audit.measured === undefined ? 'Not to be cut yet' : 'Not to go on with yet'}: ${userText(audit.plan.name, 60)}`,
      ),
      setApart(paragraph(strong(badge(audit.verdict, auditSentence(audit))))),
      bullets(
        over > 0 ? [...reasons.slice(0, mostReasons - 1), `${over + 1} more stand under “What to change”.`] : reasons,
      ),
      ...first,
      ...compared(pictures).map(picture),
      ...tried(told, 'above'),
      paragraph(
        'No bench card is printed: a card is what one saws by, and nothing may be sawn by this plan. Change the plan and audit it again; the card comes with a plan that may be cut.',
      ),
    ]),
    instead: [...reasonBlocks(audit), ...first, ...tried(told)],
  };
}

/** The plan and the change side by side; the plan alone where no change is drawn. */
function compared(pictures: readonly Picture[]): readonly Picture[] {
  const pair = ['front', 'section']
    .map((name) => pictures.filter((one) => one.name === `${name}.svg` || one.name === `${name}-changed.svg`))
    .find(({ length }) => length === 2);
  return pair ?? pictures.filter(({ name }) => name === 'front.svg');
}
