import { stripVTControlCharacters } from 'node:util';
import { keepTogether } from '../report/no-break.js';

/** What hangs in front of a line: the dash of a list, the shape of a badge. */
const mark = /^ *(?:(?:[-●▲◆✕]) )?/u;
/** A command to be typed, at the end of a line; what names it may be coloured. */
const commandIn = /^(?<lead>(?:[^`]*: )?(?:\u001b\[\d+m)* *)(?<command>sightdown [^`]*)$/u;
/**
 * What stays whole, each with the blanks before it: what stands in backticks or in a shell’s quotes, an arrow with what
 * it leads to, and words.
 */
const whole = /( *)(→ +[^ ]+|(?:`[^`]*`|"[^"]*"|[^ ])+)/gu;

const widthOf = (text: string): number => [...stripVTControlCharacters(text)].length;

/**
 * One line, coloured or not, broken between its words where it is wider than `width` columns. What goes on hangs below
 * the text of the line, numbers stay with their units, and a command goes on in a line of its own, with the sign by
 * which a shell reads on where even that is too long.
 */
export function wrapLine(line: string, width: number): readonly string[] {
  if (widthOf(line) <= width) return [line];
  const bare = stripVTControlCharacters(line);
  const hang = ' '.repeat((mark.exec(bare)?.[0] ?? '').length);
  const { lead, command } = commandIn.exec(line)?.groups ?? {};
  if (command === undefined) return wrapWords(line, width, hang);
  if (lead === undefined || lead.trim() === '') return readOn(wrapWords(line, width - 2, `${hang}  `));
  const first = wrapWords(lead.trimEnd(), width, hang);
  const last = first.at(-1) ?? '';
  return widthOf(last) + 1 + widthOf(command) <= width
    ? [...first.slice(0, -1), `${last} ${command}`]
    : [...first, ...wrapLine(`${hang}  ${command}`, width)];
}

const readOn = (lines: readonly string[]): readonly string[] =>
  lines.map((line, i) => (i < lines.length - 1 ? `${line} \\` : line));

function wrapWords(line: string, width: number, hang: string): readonly string[] {
  const lines: string[] = [];
  let now: string | null = null;
  for (const [, blanks, word] of keepTogether(line).replaceAll('\u2060', '').matchAll(whole)) {
    const next: string = `${now ?? ''}${blanks}${word}`;
    if (now !== null && widthOf(next) > width) {
      lines.push(now);
      now = `${hang}${word}`;
    } else now = next;
  }
  return [...lines, now ?? ''].map((one) => one.replaceAll('\u00A0', ' '));
}
