/** What reads as a slip of the pen, whatever the text is about; each with how to find it. What stands in backticks is meant to be typed and is left out, and so are blanks of dots. */
const faults: readonly (readonly [name: string, find: RegExp])[] = [
  ['a doubled word', /\b([A-Za-z]+)[ \n]\1\b/iu],
  ['a doubled stop', /(?<![.…])\.\.(?!\.)|,,|;;|::|[.!?;:,] [.;:,]|\.[:;,]|[:;,]\./u],
  ['a space before a stop', / [.,;:](?:\s|$)/u],
  ['a unit without a number', /(?:^|[^\d\s/.²³a-z-]|(?<!\d)\s)(?:mm|N\/m|lbf\/in|lbf|N·m|kg|MPa|psi|Hz|ml|fl oz)(?=[\s.,;:)]|$)/u],
  ['an apostrophe that is not ’', /\w'\w/u],
  ['an apostrophe of many that is not ’', /[a-z]s' (?=[a-z])/u],
  ['an x for ×', /\d"? x \d/u],
  ['a square written m2', /\bm[23]\b/u],
  ['one of several', /(?<![\d.,/-]|[Cc]rossbar )\b1 (?!is\b|times\b|as\b|its\b|this\b|passes\b|asks\b|less\b|plus\b|across\b)[a-z]+[^s\W]s\b/u],
  ['a placeholder', /\{[\w.-]+\}|undefined|NaN|\[object|null\b/u],
  ['a number before a noun by key', /\b(?:one|two|three|four|\d+) (?:×|x)? ?(?:strip|board|stud|square|brad|screw|pine|planed)-\d/u],
  ['a word that one has to read twice', /comes down to|means they touch|did not speak|the rest being true|would tell most|most of the class got|coats two|plies one|: in order\b|of room is left \(/u],
  ['a unit in brackets that is none', /\((?:cutting|hanging|cloth|frame)\)/u],
];

const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

/** Every fault of one text, each with the words around it. */
export function faultsOf(text: string): readonly string[] {
  const spoken = text.replace(/```[\s\S]*?```/gu, ' … ').replace(/`[^`\n]*`/gu, '…').replace(/(?:\. ){3,}\.?/gu, '… ');
  const found = faults.flatMap(([name, find]) => {
    const match = find.exec(spoken);
    return match === null ? [] : [`${name}: ${around(spoken, match.index)}`];
  });
  const unreduced = [...spoken.matchAll(/(?<![\d/.-])(?:\d+-)?(\d+)\/(\d+)(?= in\b)/gu)].filter(([, top, bottom]) => common(Number(top), Number(bottom)) > 1);
  return [...found, ...unreduced.map((match) => `an unreduced fraction: ${around(spoken, match.index)}`)];
}

const around = (text: string, at: number): string => text.slice(Math.max(0, at - 40), at + 50).replace(/\s+/gu, ' ');
