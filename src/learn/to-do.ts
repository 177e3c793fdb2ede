import { planDefaults } from '../plan/defaults.js';
import { userText } from '../report/clean-text.js';
import { counted } from '../report/words/verdict.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Learned } from './learn.js';
import { amount, nextWords } from './page-words.js';
import { nextSteps } from './settle-next.js';
import { shelfChanges } from './shelf-file.js';

/**
 * What to do now, in the order it is done: readings first, for all else hangs on them; then the shelf, the plans, the
 * hands, and what to measure next.
 */
export function toDo(found: Learned, shelf: Shelf, written: string | null): readonly string[] {
  const { outliers, gross, entries, folder } = found;
  const asked = outliers.length + gross.length;
  const moisture = entries.find(({ what }) => what === 'moisture');
  const pulls = entries.filter(
    ({ what, posterior, shelf: planned }) => what === 'pull' && (posterior.low > planned || posterior.high < planned),
  );
  const [next] = nextSteps(entries).filter(
    ({ times, enough, more, frames }) => times > enough && (more !== null || frames !== null),
  );
  return [
    ...(asked === 0
      ? []
      : [
          `Look again at ${counted(asked, 'reading')} (under “Readings to look at again”). Correct the sheet where it is wrong and run this again before anything else: what departs, and some of the numbers, hang on ${asked === 1 ? 'it' : 'them'}.`,
        ]),
    ...(folder.questions.length === 0
      ? []
      : [`Answer ${counted(folder.questions.length, 'question')} about the sheets (under “What the folder holds”).`]),
    ...(shelfChanges(entries, shelf).length === 0
      ? []
      : [
          written === null
            ? 'Let your shelf learn: the lines are under “For your shelf”; or run this again with --shelf, your own shelf file, and --write. Then audit the plans you mean to build next with it: a plan that was clear may be clear no longer.'
            : `${userText(written, 120)} has learned. Audit the plans you mean to build next with it: a plan that was clear may be clear no longer.`,
        ]),
    ...(moisture === undefined || (moisture.posterior.low <= 0 && moisture.posterior.high >= 0)
      ? []
      : [
          `Write the moisture your boards have into the plans, as lumber: { moisture: … }. They are ${Math.abs(moisture.posterior.mean).toFixed(1)} percentage points ${moisture.posterior.mean > 0 ? 'wetter' : 'drier'} than your plans say; a plan without such a line is taken at ${planDefaults.moisture_pct} %, so it would say ${(planDefaults.moisture_pct + moisture.posterior.mean).toFixed(0)} %.`,
        ]),
    ...pulls.map(
      (pull) =>
        `Pull of ${pull.key}: you reach ${(pull.posterior.mean / pull.shelf).toFixed(2)} times what is planned. Pull ${pull.posterior.mean > pull.shelf ? 'less: the harder the pull, the further a frame turns' : 'harder'}; or let the plans say what you reach, ${amount(pull.posterior.mean, pull)} where they say ${amount(pull.shelf, pull)} and in that proportion where they say another.`,
    ),
    ...(next === undefined ? [] : [`Measure next what is known least. ${nextWords(next)}`]),
  ];
}
