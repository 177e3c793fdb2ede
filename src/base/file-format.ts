import type { Problem } from './problem.js';
import type { YamlSource } from './yaml-document.js';

/**
 * What is wrong with the line by which a file says what it is, such as `plan: 1`: no such file, or one of a later tool;
 * null when it is right.
 */
export function formatProblem(source: YamlSource, name: string): Problem | null {
  const { data } = source;
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return source.problem('not-a-map', [], { name, value: `\`${source.written([])}\`` });
  const format = Object.hasOwn(data, name) ? (data as Readonly<Record<string, unknown>>)[name] : undefined;
  if (format === 1) return null;
  if (typeof format === 'number' && Number.isInteger(format) && format > 1)
    return source.problem('later-format', [name], { name, value: source.written([name]) });
  return source.problem('not-this-format', format === undefined ? [] : [name], {
    name,
    value: format === undefined ? `no \`${name}: 1\`` : `\`${name}: ${source.written([name])}\``,
  });
}
