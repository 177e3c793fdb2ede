import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageFolder } from '../../src/cli/files.js';

/** A fenced block of a page: its language, its text and the line it starts on. */
export interface Block {
  readonly language: string;
  readonly text: string;
  readonly line: number;
}

/** A page at the top of the project. */
export const page = (name: string): string => readFileSync(join(packageFolder, name), 'utf8');

/** Every fenced block of a page, in order, unindented. */
export function blocksOf(text: string): readonly Block[] {
  return [...text.matchAll(/^( *)```(\w*)\n([\s\S]*?)^ *```$/gm)].map(([, indent, language, body], i, all) => ({
    language: language as string,
    text: (body as string).split('\n').map((row) => row.slice((indent as string).length)).join('\n'),
    line: text.slice(0, all[i]!.index).split('\n').length,
  }));
}

/** Name of the file that a YAML block is, from its first line `# my-plan.yaml`; null for a fragment. */
export const fileNameOf = (text: string): string | null => /^# ([\w-]+\.yaml)\n/.exec(text)?.[1] ?? null;

/** One command of a `sh` block and the exit code its comment states, 0 when it states none; slow when its comment says that it takes a minute or more. */
export interface Command {
  readonly line: number;
  readonly command: string;
  readonly exit: number;
  readonly slow: boolean;
}

/** Every command of the `sh` blocks, in order. */
export function commandsOf(text: string): readonly Command[] {
  return blocksOf(text).filter(({ language }) => language === 'sh').flatMap((block) =>
    block.text.split('\n').map((row, i) => ({ row, line: block.line + 1 + i })).filter(({ row }) => row.trim() !== '' && !row.startsWith('#')).map(({ row, line }) => ({
      line,
      command: row.replace(/\s+# .*$/, ''),
      exit: Number(/# exit (\d)/.exec(row)?.[1] ?? 0),
      slow: /# takes a minute/.test(row),
    })),
  );
}

/** Targets of links and pictures that are files of this project. */
export function linksOf(text: string): readonly string[] {
  const prose = text.replace(/^ *```[\s\S]*?^ *```$/gm, '');
  return [...prose.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target as string).filter((target) => !/^[a-z]+:/.test(target)).map((target) => target.replace(/#.*$/, '')).filter((target) => target !== '');
}
