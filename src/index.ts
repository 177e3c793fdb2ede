/**
 * The library behind the `sightdown` command: a plan and a shelf go in as text, an audit and its report come out. Data
 * in, data out: no files, no
 * clock, no terminal, so that it runs in a browser as well. Quantities carry their unit in their name (`span_mm`,
 * `pull_N_per_m`). What a person wrote
 * wrong comes back as a list of problems with their places; only bugs throw.
 *
 * In order of use: `readShelf`, `loadRuleset` → `auditText` → `withChanges` → `composeReport` → `writeMarkdown`,
 * `writeHtml` or `writeJson`.
 */

// The pipeline
export { audit, auditText, withChanges } from './audit.js';
export type { AuditWithChanges } from './audit.js';
export type { Bench } from './bench.js';
export type { Audit, Change } from './report/audit-view.js';

// Reading what people write
export { readPlan, readPlanWith } from './plan/read-plan.js';
export type { UnitSystem } from './base/names.js';
export type { Assumed, Plan } from './plan/plan.js';
export { readShelf } from './shelf/read-shelf.js';
export type { Shelf } from './shelf/shelf.js';
export { readSources } from './base/sources.js';
export type { Source, SourceStatus } from './base/sources.js';
export { fileShape } from './schemas.js';
export type { EditedKind, FileShape } from './schemas.js';
export { showProblems } from './base/show-problem.js';
export { plainYaml } from './base/plain-yaml.js';
export { usualLimits } from './base/yaml-limits.js';
export { setInText } from './base/yaml-edit.js';
export type { YamlValue } from './base/yaml-edit.js';
export { chanceInWords, formatFixed, formatNumber, formatQuantity } from './base/units-format.js';
export type { Problem, Result } from './base/problem.js';

// What to change
export { suggest } from './suggest-plans.js';
export type { TriedChange } from './suggest/first-aid.js';
export { writeEdit } from './suggest/write-plan.js';
export type { Aim, Goals, Suggestion, Suggestions, Tried, Wish } from './suggest/suggest.js';

// Rules
export { loadRuleset } from './rules/read/load-ruleset.js';
export type { LoadOptions, RulesetTexts } from './rules/read/load-ruleset.js';
export type { Ruleset } from './rules/ruleset.js';
export { limitInWords } from './rules/say/in-words.js';
export { checkRuleset } from './rules/check/check.js';
export type { RulesetCheck } from './rules/check/check.js';
export { evaluateRules } from './rules/evaluate.js';
export type { Evaluation, Silence } from './rules/evaluate.js';
export { compareVerdicts } from './rules/say/compare.js';
export type { VerdictChange, VerdictComparison } from './rules/say/compare.js';
export { worstVerdict } from './findings/summary.js';
export type { Finding, Verdict } from './findings/finding.js';
export { catalogue } from './facts/catalogue.js';
export { findFact } from './facts/find-fact.js';
export type { Fact, FactPath, FactSpec, FactUnit } from './facts/fact.js';

// The report, and what its pages tell beyond facts and findings: `audit.sheets`
export type { Sheets } from './sheets/sheets.js';
export { composeReport, reportTitle } from './report/compose.js';
export type { Report } from './report/compose.js';
export { writeMarkdown } from './report/markdown.js';
export { writeHtml } from './report/html.js';
export { auditData, writeJson } from './report/json.js';
export type { Picture } from './report/drawings/picture.js';

// What a screen shows first
export { frontPicture, glanceOf } from './report/glance.js';
export type { Glance, Reason } from './report/glance.js';
export { verdictWord } from './report/words/verdict.js';

// The finished frame
export { readSheet } from './bench-sheet/read-sheet.js';
export type { Sheet } from './bench-sheet/sheet.js';
export { withMeasured } from './bench-sheet/judge-sheet.js';
export { learn, learnedData } from './learn/learn.js';
export type { Learned } from './learn/learn.js';
export { beforeLearning, shelfChanges, writeLearned } from './learn/shelf-file.js';
export { composeLearnPage } from './learn/page.js';
export type { Measured } from './bench-sheet/measured.js';

// The boards in hand
export { readPile } from './pile/read-pile.js';
export type { Pile, PileBoard } from './pile/pile.js';
export { placePlans } from './place/place-plans.js';
export type { Place, PlacedFrame, PlacedPile } from './place/result.js';
export { placeData } from './place/place-data.js';
export { writeBoards } from './place/write-boards.js';
export { composePlacePage } from './place-page/page.js';
export { endWords, faceWords, partWords } from './place-page/lie-words.js';

// The workshop: who does what when, and what it costs
export { readShop } from './shop/read-shop.js';
export type { Shop } from './shop/shop.js';
export { toolsAtHand } from './shop/tools-at-hand.js';
export type { ToolsAtHand } from './order-of-work/tools-at-hand.js';
export { timetableOf } from './timetable/timetable.js';
export type { Timetable } from './timetable/timetable.js';
export { timetableData } from './timetable/timetable-data.js';
export { composeTimetable } from './timetable/page.js';

// A class
export { classRow } from './class/class-row.js';
export type { ClassRow, NotRead } from './class/class-row.js';
export { planSheet } from './class/plan-sheet.js';
export type { PlanSheet } from './class/plan-sheet.js';
export { concludeClass, whyNotRead } from './class/conclude.js';
export { composeClassPack } from './class/class-pack.js';
export { mayBeCut } from './class/class-page.js';
export { appliedOf } from './rules/say/applied.js';

// Cutting and buying
export { cutPlan, cutPlanExactly } from './cutting/cut-plan.js';
export type { CutPlan, SearchTime } from './cutting/cut-plan.js';
export type { IntegerProgram, LoadSolver } from './cutting/boards/pack-fallback.js';
export { cutListCsv } from './cutting/csv.js';
export { buyingListCsv } from './report/buying-list.js';

export { poolPlans } from './class/pooled.js';
export type { Pooled } from './class/pooled.js';
export type { Supplies } from './cost/supplies.js';

// The wall chart
export { makeChart } from './chart/chart.js';
export type { Chart } from './chart/chart.js';
export { chartPage } from './chart/chart-page.js';

// Readings from the bench
export { measurePush } from './measure/measure-push.js';
export { measureSag } from './measure/measure-sag.js';
export { measureTap } from './measure/measure-tap.js';
export { measureTwist } from './measure/measure-twist.js';
export type { Reading } from './measure/reading.js';

// The frame itself
export { buildModel } from './model/build-model.js';
export type { Model, Solution } from './model/model.js';
export { solveModel } from './solve/solve-model.js';
/**
 * The solver of space frames, which knows no wood: statics (`solveFrame`) and second order, in any consistent units.
 */
export * as frame3d from './frame3d/index.js';
