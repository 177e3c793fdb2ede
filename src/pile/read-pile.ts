import { formatProblem } from '../base/file-format.js';
import type { Problem, Result } from '../base/problem.js';
import { schemaProblems } from '../base/schema-problems.js';
import { inFileOrder, limitProblems, readYaml } from '../base/yaml-document.js';
import type { Shelf } from '../shelf/shelf.js';
import { checkPile, checkStocks } from './check-pile.js';
import { fillPile } from './fill-pile.js';
import { pileInputSchema } from './pile-schema.js';
import type { Pile } from './pile.js';

/** Reads a pile against a shelf, or tells every problem with its place. Never throws on any text. */
export function readPile(text: string, file: string, shelf: Shelf): Result<Pile> {
  const { source, problems } = readYaml(text, file);
  if (source === null) return failed(problems);
  const wrongFormat = formatProblem(source, 'pile');
  if (wrongFormat !== null) return failed([...problems, wrongFormat]);
  const stocks = checkStocks(source, shelf);
  const checked = pileInputSchema.safeParse(source.data);
  if (!checked.success)
    return failed([...problems, ...stocks, ...schemaProblems(pileInputSchema, checked.error.issues, source)]);
  const all = [...problems, ...stocks, ...checkPile(checked.data, source)];
  return all.some(({ severity }) => severity === 'error')
    ? failed(all)
    : { ok: true, value: fillPile(checked.data), warnings: inFileOrder(all) };
}

const failed = (problems: readonly Problem[]): Result<Pile> => ({
  ok: false,
  problems: limitProblems(inFileOrder(problems)),
});
