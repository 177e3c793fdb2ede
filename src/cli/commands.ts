import { addAudit } from './audit.js';
import { addChart } from './chart.js';
import { addCut } from './cut.js';
import { addLearn } from './learn.js';
import { addMeasure } from './measure.js';
import { addNew } from './new.js';
import { addPage } from './page.js';
import { addPlace } from './place.js';
import { addRules } from './rules.js';
import { addSchema } from './schema.js';
import { addSuggest } from './suggest.js';
import { addTimetable } from './timetable.js';
import type { Commands } from './run-command.js';

/** In the order of the work, as help lists them. */
export const commands: Commands = {
  new: addNew,
  audit: (program) => addAudit(program, async () => (await import('./audit-run.js')).runAudit),
  suggest: addSuggest,
  cut: addCut,
  place: addPlace,
  measure: addMeasure,
  learn: addLearn,
  timetable: addTimetable,
  rules: addRules,
  chart: addChart,
  page: addPage,
  schema: addSchema,
};
