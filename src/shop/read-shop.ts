import { formatProblem } from '../base/file-format.js';
import type { Problem, Result } from '../base/problem.js';
import { schemaProblems } from '../base/schema-problems.js';
import { inFileOrder, limitProblems, readYaml, type YamlSource } from '../base/yaml-document.js';
import { fillShop, sessionsOf } from './fill-shop.js';
import { shopInputSchema, type ShopInput } from './shop-schema.js';
import type { Shop } from './shop.js';
import { shopProblem } from './shop-problems.js';

/** Reads a workshop, or tells every problem with its place. Never throws on any text. */
export function readShop(text: string, file: string): Result<Shop> {
  const { source, problems } = readYaml(text, file);
  if (source === null) return failed(problems);
  const wrongFormat = formatProblem(source, 'shop');
  if (wrongFormat !== null) return failed([...problems, wrongFormat]);
  const checked = shopInputSchema.safeParse(source.data);
  if (!checked.success) return failed([...problems, ...schemaProblems(shopInputSchema, checked.error.issues, source)]);
  const all = [...problems, ...overlaps(checked.data, source), ...noSawBeside(checked.data, source)];
  return all.some(({ severity }) => severity === 'error')
    ? failed(all)
    : { ok: true, value: fillShop(checked.data), warnings: inFileOrder(all) };
}

const failed = (problems: readonly Problem[]): Result<Shop> => ({
  ok: false,
  problems: limitProblems(inFileOrder(problems)),
});

/** Sessions of a list that begin before another one ends. */
function overlaps({ sessions }: ShopInput, source: YamlSource): Problem[] {
  if (!Array.isArray(sessions)) return [];
  const read = sessions
    .map((one, index) => ({ index, session: sessionsOf([one])[0]! }))
    .sort((a, b) => a.session.start_min - b.session.start_min);
  return read.flatMap(({ index, session }, i) => {
    const before = read[i - 1];
    const over = before !== undefined && before.session.start_min + before.session.length_min > session.start_min;
    return over
      ? [
          shopProblem('session-twice', source.place(['sessions', index, 'date']), {
            value: source.written(['sessions', index, 'date']),
          }),
        ]
      : [];
  });
}

/** `none` beside a saw, and how much no saw cuts. */
function noSawBeside({ saws = [] }: ShopInput, source: YamlSource): Problem[] {
  return saws.flatMap(({ kind, count, most }, i) => {
    if (kind !== 'none') return [];
    const said = most !== undefined ? 'most' : count !== undefined ? 'count' : null;
    if (said !== null) return [shopProblem('no-saw-with', source.place(['saws', i, said], 'key'), { name: said })];
    return saws.length > 1
      ? [shopProblem('no-saw-with', source.place(['saws', i, 'kind']), { name: 'other saws' })]
      : [];
  });
}
