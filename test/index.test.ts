import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { packageFolder } from '../src/cli/files.js';
import * as library from '../src/index.js';

/** What others may lean on. A change here is a change for them: say so in the commit. */
const values = [
  'appliedOf', 'audit', 'auditData', 'auditText', 'beforeLearning', 'buildModel', 'buyingListCsv', 'catalogue', 'chanceInWords', 'chartPage', 'checkRuleset', 'classRow',
  'compareVerdicts', 'composeClassPack', 'composeLearnPage', 'composePlacePage', 'composeReport', 'composeTimetable', 'concludeClass', 'cutListCsv', 'cutPlan', 'cutPlanExactly',
  'endWords', 'evaluateRules', 'faceWords', 'fileShape', 'findFact', 'formatFixed', 'formatNumber', 'formatQuantity', 'frame3d', 'frontPicture', 'glanceOf', 'learn', 'learnedData',
  'limitInWords', 'loadRuleset', 'makeChart', 'mayBeCut', 'measurePush', 'measureSag', 'measureTap', 'measureTwist', 'partWords', 'placeData', 'placePlans',
  'plainYaml', 'planSheet', 'poolPlans', 'readPile', 'readPlan', 'readPlanWith', 'readSheet', 'readShelf', 'readShop', 'readSources', 'reportTitle', 'setInText', 'shelfChanges', 'showProblems',
  'solveModel', 'suggest', 'timetableData', 'timetableOf', 'toolsAtHand', 'usualLimits', 'verdictWord', 'whyNotRead', 'withChanges', 'withMeasured', 'worstVerdict', 'writeBoards', 'writeEdit',
  'writeHtml', 'writeJson', 'writeLearned', 'writeMarkdown',
];
const types = [
  'Aim', 'Assumed', 'Audit', 'AuditWithChanges', 'Bench', 'Change', 'Chart', 'ClassRow', 'CutPlan', 'EditedKind', 'Evaluation', 'Fact', 'FactPath', 'FactSpec', 'FactUnit',
  'FileShape', 'Finding', 'Glance', 'Goals', 'IntegerProgram', 'Learned', 'LoadOptions', 'LoadSolver', 'Measured', 'Model', 'NotRead', 'Picture', 'Pile', 'PileBoard', 'Place',
  'PlacedFrame', 'PlacedPile', 'Plan', 'PlanSheet', 'Pooled', 'Problem', 'Reading', 'Reason', 'Report', 'Result', 'Ruleset', 'RulesetCheck', 'RulesetTexts', 'SearchTime', 'Sheet',
  'Sheets', 'Shelf', 'Shop', 'Silence', 'Solution', 'Source', 'SourceStatus', 'Suggestion', 'Suggestions', 'Supplies', 'Timetable', 'ToolsAtHand', 'Tried', 'TriedChange',
  'UnitSystem', 'Verdict', 'VerdictChange', 'VerdictComparison', 'Wish', 'YamlValue',
];

const src = join(packageFolder, 'src');
const text = readFileSync(join(src, 'index.ts'), 'utf8');
const lines = [...text.matchAll(/^export (type )?\{ ([^}]+) \} from '\.\/(.+)\.js';$/gm)].flatMap(([, type, names, file]) =>
  (names as string).split(', ').map((name) => ({ name, isType: type !== undefined, file: `${file as string}.ts` })),
);

describe('the public list', () => {
  test('of values is frozen', () => expect(Object.keys(library).sort()).toEqual(values));
  test('of types is frozen', () => expect(lines.filter(({ isType }) => isType).map(({ name }) => name).sort()).toEqual(types));
  test('was read whole', () => expect(lines).toHaveLength(values.length - 1 + types.length));

  test.each(lines)('$name says what it means where it is made', ({ name, file }) => {
    expect(comment(name, join(src, file))).toMatch(/\w.*\./s);
  });
});

test('nothing it imports touches files, the clock or the terminal, or reaches the integer program', () => {
  const seen = new Set<string>();
  const visit = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const [, target] of readFileSync(file, 'utf8').matchAll(/(?:from|import\()\s*'([^']+)'/g)) {
      expect(target, file).not.toMatch(/^node:|^highs/);
      if ((target as string).startsWith('.')) visit(join(dirname(file), (target as string).replace(/\.js$/, '.ts')));
    }
  };
  visit(join(src, 'index.ts'));
  expect(seen.size).toBeGreaterThan(100);
  expect([...seen].filter((file) => file.startsWith(join(src, 'cli')))).toEqual([]);
});

/** The doc comment right above the declaration of a name, followed through re-exports. */
function comment(name: string, file: string): string {
  const source = readFileSync(file, 'utf8');
  const own = new RegExp(`/\\*\\*((?:(?!\\*/)[\\s\\S])*)\\*/\\n(?:export )(?:async )?(?:function|const|interface|type) ${name}\\b`).exec(source);
  if (own !== null) return own[1] as string;
  const passed = new RegExp(`export (?:type )?\\{[^}]*\\b${name}\\b[^}]*\\} from '(\\.[^']+)\\.js'`).exec(source);
  return passed === null ? '' : comment(name, join(dirname(file), `${passed[1] as string}.ts`));
}
