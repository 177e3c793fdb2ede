import { expect, test } from 'vitest';
import { texts } from './sources.js';

/** Codes of the messages that a file words, as its table lists them. */
const codesIn = (file: string): readonly string[] => [...(texts.get(file) as string).matchAll(/^ {2}'?([a-z][a-z-]*)'?: \(/gm)].map(([, code]) => code as string);

test.each(['base/file-messages.ts', 'base/messages.ts', 'rules/read/rule-problems.ts'])('every message of %s is said by somebody: one that nothing says goes', (table) => {
  const codes = codesIn(table);
  expect(codes.length).toBeGreaterThan(30);
  const others = [...texts].filter(([file]) => file !== table).map(([, text]) => text).join('\n');
  expect(codes.filter((code) => !others.includes(`'${code}'`))).toEqual([]);
});
