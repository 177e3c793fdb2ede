import { formatNumber, formatQuantity } from '../../base/units-format.js';
import { chanceInWords } from '../../base/chance-words.js';
import type { Change } from '../audit-view.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, strong, table, type Block, type Cell, type Column } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { saidAlready } from './verdict.js';
import { aboutsInWords } from '../words/about.js';
import { verdictWord } from '../words/verdict.js';
import { foldFindings, worstVerdict } from '../../findings/summary.js';

/** Part 2: what to change, most useful first, each with what it would do; then what each rule advises. */
export function changesSection(told: Telling): Section {
  const { audit } = told;
  const advice = foldFindings(audit.findings.filter((f) => f.verdict !== 'clear' && f.do.length > 0 && !f.rule.startsWith('measured/')));
  const said = saidAlready(audit);
  const blocks: Block[] = [];
  if (audit.changes.length > 0) {
    blocks.push(
      paragraph('Each line is this plan with one thing changed and the whole check made again. The first line is the plan as it stands.'),
      table(columns(audit.changes), [now(told), ...audit.changes.map((change) => line(told, change))].map((row) => row.filter((_, i) => shown(audit.changes, i)))),
    );
  }
  if (advice.length > 0) {
    blocks.push(
      paragraph(audit.changes.length > 0 ? 'And what the rules themselves advise:' : 'What the rules advise:'),
      bullets(advice.map(({ finding, abouts }): Cell => {
        const known = said.has(`${finding.rule} ${finding.verdict}`);
        return [strong(verdictWord[finding.verdict]), `, ${known ? `${userText(finding.title)}, ` : ''}${aboutsInWords(abouts)}: ${known ? '' : `${finding.say} `}`, finding.do.join(' ')];
      })),
    );
  }
  if (blocks.length === 0) blocks.push(paragraph(measuredTrouble(told) ? 'Nothing has to change in the plan. But the frame as you measured it needs work before you go on: see “What you measured”.' : 'Nothing has to change.'));
  return { title: 'What to change', blocks, pictures: [] };
}

/** Whether a reading of the bench sheet calls for something. */
const measuredTrouble = ({ audit }: Telling): boolean => (audit.measured?.findings ?? []).some(({ verdict }) => verdict !== 'clear');

const heads: readonly Column[] = [
  { head: 'Change' }, { head: 'Verdict' }, { head: 'Twist reserve', align: 'right' }, { head: 'Chance of a lifted corner' }, { head: 'Cost', align: 'right' }, { head: 'Weight', align: 'right' },
];

/** Cost and weight are left away when no line knows them. */
const shown = (changes: readonly Change[], i: number): boolean => (i === 4 ? changes.some((c) => c.cost !== null) : i === 5 ? changes.some((c) => c.weight_kg !== null) : true);
const columns = (changes: readonly Change[]): readonly Column[] => heads.filter((_, i) => shown(changes, i));

function now(told: Telling): readonly Cell[] {
  return row(told, {
    words: 'As planned', verdict: worstVerdict(told.audit.findings.filter(({ rule }) => !rule.startsWith('measured/'))), twist_reserve: told.number('frame.twist_reserve'), lift_chance: told.number('warp.corner_lift_chance'),
    cost: told.number('cutting.total_cost'), weight_kg: told.number('frame.weight_kg'),
  });
}

const line = (told: Telling, change: Change): readonly Cell[] => row(told, change);

function row({ units, audit }: Telling, c: Change): readonly Cell[] {
  return [
    c.words,
    verdictWord[c.verdict],
    c.twist_reserve === null ? 'unknown' : formatNumber(c.twist_reserve, 2),
    c.lift_chance === null ? 'unknown' : chanceInWords(c.lift_chance),
    c.cost === null ? 'unknown' : `${formatQuantity(c.cost, 'cost', units)} ${userText(audit.shelf.currency, 8)}`,
    formatQuantity(c.weight_kg, 'kg', units),
  ];
}
