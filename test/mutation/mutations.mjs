import { parseAst } from 'vitest/node';

const opposite = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
};
const kindOf = {
  '+': 'sign',
  '-': 'sign',
  '*': 'scale',
  '/': 'scale',
  '<': 'boundary',
  '<=': 'boundary',
  '>': 'boundary',
  '>=': 'boundary',
  '===': 'branch',
  '!==': 'branch',
  '&&': 'logic',
  '||': 'logic',
};
const extremes = { min: 'max', max: 'min' };

/** A number so small that it only allows for rounding. */
const isTolerance = (value) => value !== 0 && Math.abs(value) < 1e-5;

/**
 * True for a comparison with some allowance for rounding, `a < b - 1e-9`: nothing lies exactly on its boundary, so
 * that with or without it is the same.
 */
const allowsForRounding = (node) =>
  (node.type === 'Literal' && typeof node.value === 'number' && isTolerance(node.value)) ||
  (node.type === 'BinaryExpression' &&
    '+-'.includes(node.operator) &&
    (allowsForRounding(node.left) || allowsForRounding(node.right)));

/** True for an expression that is surely words, so that a sum with it joins texts. */
const isText = (node) =>
  node.type === 'TemplateLiteral' ||
  (node.type === 'Literal' && typeof node.value === 'string') ||
  (node.type === 'BinaryExpression' && (isText(node.left) || isText(node.right)));

/**
 * Every small fault that can be put into a source text, `{ start, end, text, kind }`, in the order of the text.
 * Types, words and what only allows for rounding are left alone.
 * Kinds: sign (+ ↔ −, a minus dropped), scale (* ↔ /), constant (a number a tenth or one off), boundary (< ↔ ≤,
 * > ↔ ≥), branch (two answers swapped, a question turned round), logic (&& ↔ ||), extreme (Math.min ↔ Math.max), term
 * (the second of a sum dropped).
 */
export function mutationsOf(source) {
  const found = [];
  const cut = ({ start, end }) => source.slice(start, end);
  const put = ({ start, end }, text, kind) => found.push({ start, end, text, kind });

  const infix = (node) => {
    const { left, operator } = node;
    if (opposite[operator] === undefined || isText(node)) return;
    if (kindOf[operator] === 'boundary' && (allowsForRounding(left) || allowsForRounding(node.right))) return;
    const at = source.indexOf(operator, left.end);
    put(
      node,
      source.slice(node.start, at) + opposite[operator] + source.slice(at + operator.length, node.end),
      kindOf[operator],
    );
    if (operator === '+' || operator === '-') put(node, source.slice(node.start, at).trimEnd(), 'term');
  };
  const rules = {
    BinaryExpression: infix,
    LogicalExpression: infix,
    UnaryExpression: (node) => {
      if (node.operator === '-') put(node, `(${cut(node.argument)})`, 'sign');
      if (node.operator === '!') put(node, `(${cut(node.argument)})`, 'branch');
    },
    Literal: (node) => {
      if (typeof node.value === 'number' && !isTolerance(node.value))
        put(node, String(Number.isInteger(node.value) ? node.value + 1 : node.value * 1.1), 'constant');
    },
    ConditionalExpression: (node) =>
      put(node, `!(${cut(node.test)}) ${source.slice(source.indexOf('?', node.test.end), node.end)}`, 'branch'),
    IfStatement: ({ test }) => put(test, `!(${cut(test)})`, 'branch'),
    CallExpression: ({ callee }) => {
      if (
        callee.type === 'MemberExpression' &&
        cut(callee.object) === 'Math' &&
        extremes[callee.property.name] !== undefined
      )
        put(callee.property, extremes[callee.property.name], 'extreme');
    },
  };
  const visit = (node) => {
    if (Array.isArray(node)) return node.forEach(visit);
    if (typeof node?.type !== 'string' || /^(TS(?!As|NonNull|Satisfies)|Import|ExportAll)/.test(node.type)) return;
    rules[node.type]?.(node);
    for (const child of Object.values(node)) if (child !== null && typeof child === 'object') visit(child);
  };
  visit(parseAst(source, { lang: 'ts' }).body);
  return found.sort((p, q) => p.start - q.start || p.end - q.end || (p.text < q.text ? -1 : 1));
}
