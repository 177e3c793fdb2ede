import { sameDecimals } from '../../base/same-decimals.js';
import { formatFixed, formatQuantity } from '../../base/units-format.js';
import { chanceInWords } from '../../base/chance-words.js';
import type { Change } from '../audit-view.js';
import { userText } from '../clean-text.js';
import { bullets, paragraph, strong, table, type Block, type Cell, type Column } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { bestChange, firstSteps, planVerdict } from './best-change.js';
import { saidAlready } from './verdict.js';
import { aboutsInWords } from '../words/about.js';
import { moneyInWords } from '../words/cost.js';
import { badge } from '../words/verdict.js';
import { foldFindings, type FoldedFinding } from '../../findings/summary.js';

/**
 * Part 2: what each change would do, then what every check that is not clear asks for; null where the plan needs
 * nothing and what was measured does.
 */
export function changesSection(told: Telling): Section | null {
  const { audit } = told;
  const advice = foldFindings(audit.findings.filter((f) => f.verdict !== 'clear' && !f.rule.startsWith('measured/')));
  const blocks: Block[] = [...tried(told)];
  if (advice.length > 0)
    blocks.push(paragraph('What each check that is not clear asks for:'), bullets(adviceLines(audit, advice)));
  if (blocks.length === 0)
    return measuredTrouble(told)
      ? null
      : { title: 'What to change', blocks: [paragraph('Nothing has to change.')], pictures: [] };
  return { title: 'What to change', blocks, pictures: [] };
}

/**
 * What each change that was tried would do; nothing where none was. The one to make first is said with the verdict, and
 * its row says `where` that is.
 */
export function tried(told: Telling, where = 'under “Verdict”'): readonly Block[] {
  const { audit } = told;
  const best = bestChange(audit);
  const words = (change: Change): Cell =>
    change === best ? [strong('Change first'), `, as said ${where}`] : change.words;
  return audit.changes.length === 0
    ? []
    : [
        paragraph(
          `Each line is this plan with one thing changed and the whole check made again. The first line is the plan as it stands.${audit.measured === undefined ? '' : ' They are for the next frame: this one is cut.'}`,
        ),
        table(
          columns(audit.changes),
          sameDecimals([
            now(told),
            ...audit.changes.map((change) => row(told, { ...change, words: words(change) })),
          ]).map((row) => row.filter((_, i) => shown(audit.changes, i))),
        ),
      ];
}

/**
 * One line a rule: its sentence, unless it stands with the verdict, and those of its advice that no line before has
 * given.
 */
function adviceLines(audit: Telling['audit'], advice: readonly FoldedFinding[]): readonly Cell[] {
  const said = saidAlready(audit);
  const given = new Set<string>(firstSteps(audit));
  return advice.map(({ finding, abouts }): Cell => {
    const fresh = finding.do.filter((step) => !given.has(step));
    for (const step of fresh) given.add(step);
    const parts = [
      ...(said.has(`${finding.rule} ${finding.verdict}`) ? [] : [finding.say]),
      ...fresh,
      ...(fresh.length === 0 && finding.do.length > 0 ? ['What to do is said above.'] : []),
    ];
    return [
      strong(badge(finding.verdict)),
      `, ${userText(finding.title)}, ${aboutsInWords(abouts)}: ${parts.length === 0 ? 'see the verdict.' : parts.join(' ')}`,
    ];
  });
}

/** Whether a reading of the bench sheet calls for something. */
const measuredTrouble = ({ audit }: Telling): boolean =>
  (audit.measured?.findings ?? []).some(({ verdict }) => verdict !== 'clear');

const heads: readonly Column[] = [
  { head: 'Change' },
  { head: 'Verdict' },
  { head: 'Twist reserve', align: 'right' },
  { head: 'Chance of a lifted corner' },
  { head: 'Cost', align: 'right' },
  { head: 'Weight', align: 'right' },
];

/** Cost and weight are left away when no line knows them. */
const shown = (changes: readonly Change[], i: number): boolean =>
  i === 4 ? changes.some((c) => c.cost !== null) : i === 5 ? changes.some((c) => c.weight_kg !== null) : true;
const columns = (changes: readonly Change[]): readonly Column[] => heads.filter((_, i) => shown(changes, i));

function now(told: Telling): readonly Cell[] {
  return row(told, {
    words: 'As planned',
    verdict: planVerdict(told.audit),
    twist_reserve: told.number('frame.twist_reserve'),
    lift_chance: told.number('warp.corner_lift_chance'),
    cost: told.number('cutting.total_cost'),
    weight_kg: told.number('frame.weight_kg'),
  });
}

type Row = Omit<Change, 'drawn' | 'words'> & { readonly words: Cell };

function row({ units, audit }: Telling, c: Row): readonly Cell[] {
  return [
    c.words,
    badge(c.verdict),
    formatFixed(c.twist_reserve, 2),
    c.lift_chance === null ? 'unknown' : chanceInWords(c.lift_chance),
    moneyInWords(audit, c.cost),
    formatQuantity(c.weight_kg, 'kg', units),
  ];
}
