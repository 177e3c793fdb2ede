import { expect, test } from 'vitest';
import { texts } from './sources.js';

/** Codes of the messages that a file words, as its table lists them. */
const codesIn = (file: string): readonly string[] => [...(texts.get(file) as string).matchAll(/^ {2}'?([a-z][a-z-]*)'?: \(/gm)].map(([, code]) => code as string);

test.each([['base/file-messages.ts', 30], ['base/messages.ts', 30], ['rules/read/rule-problems.ts', 40], ['rules/check/check-problems.ts', 8], ['pile/pile-problems.ts', 6], ['bench-sheet/sheet-problems.ts', 4], ['shop/shop-problems.ts', 2]])('every message of %s is said by somebody: one that nothing says goes', (table, least) => {
  const codes = codesIn(table);
  expect(codes.length).toBeGreaterThanOrEqual(least);
  const others = [...texts].filter(([file]) => file !== table).map(([, text]) => text).join('\n');
  expect(codes.filter((code) => !others.includes(`'${code}'`))).toEqual([]);
});
