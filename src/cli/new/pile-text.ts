import { handOfSticks, type HighEnd } from '../../measure/hand-of-sticks.js';
import { yamlText, yamlValue } from './yaml-words.js';

/** Two winding sticks across a board, as one sees them: texts as the user wrote them. */
export interface Sticks {
  /** How far they disagree at their ends. */
  readonly rise: string;
  readonly width: string;
  /** From one stick to the other; the whole board when left out. */
  readonly over?: string | undefined;
  readonly high: HighEnd;
}

/** One board as it was read at the bench. */
export interface NewBoard {
  /** Null for boards that nobody reads; there may be several alike. */
  readonly mark: string | null;
  readonly stock: string;
  readonly length: string;
  readonly count?: number;
  readonly sticks?: Sticks;
  readonly bow?: string;
  readonly hollow?: 'marked-face' | 'other-face';
  readonly crook?: string;
  readonly hollowEdge?: 'marked-edge' | 'other-edge';
  readonly knots?: readonly string[];
}

/** What a new pile says. */
export interface NewPile {
  readonly name: string;
  readonly boards: readonly NewBoard[];
}

/**
 * The text of a pile; beside each twist stands what was seen, so that nobody has to trust the hand. `schema` is the
 * file an editor may check it by, seen from the pile.
 */
export function pileText({ name, boards }: NewPile, schema: string | null): string {
  const lines = [
    ...(schema === null ? [] : [`# yaml-language-server: $schema=${schema}`]),
    '# Boards in hand. Next: sightdown place on a plan, with --pile and this file.',
    '# twist: for: right is the hand of a wood screw; the far stick stands high on the left then. bow and crook: the hollow side is the marked one unless a line says otherwise.',
    'pile: 1',
    `name: ${yamlText(name)}`,
    'boards:',
    ...boards.map(boardLine),
  ];
  return `${lines.join('\n')}\n`;
}

function boardLine(board: NewBoard): string {
  const { mark, stock, length, count, sticks, bow, hollow, crook, hollowEdge, knots } = board;
  const parts = [
    ...(mark === null
      ? []
      : [`mark: ${/^(?!true$|false$|null$)[A-Z][\w-]*$/i.test(mark) ? mark : JSON.stringify(mark)}`]),
    `stock: ${yamlValue(stock)}`,
    `length: ${yamlValue(length)}`,
    ...(count === undefined || count === 1 ? [] : [`count: ${count}`]),
    ...(sticks === undefined ? [] : [`twist: ${twistText(sticks)}`]),
    ...(bow === undefined ? [] : [`bow: ${yamlValue(bow)}`]),
    ...(hollow === 'other-face' ? ['hollow: other-face'] : []),
    ...(crook === undefined ? [] : [`crook: ${yamlValue(crook)}`]),
    ...(hollowEdge === 'other-edge' ? ['hollow-edge: other-edge'] : []),
    ...(knots === undefined || knots.length === 0 ? [] : [`knots: [ ${knots.map(yamlValue).join(', ')} ]`]),
  ];
  return `  - { ${parts.join(', ')} }${remark(board)}`;
}

function twistText({ rise, width, over, high }: Sticks): string {
  const hand = handOfSticks(high);
  return `{ rise: ${yamlValue(rise)}, width: ${yamlValue(width)}${over === undefined ? '' : `, over: ${yamlValue(over)}`}${hand === null ? '' : `, for: ${hand}`} }`;
}

function remark({ mark, sticks }: NewBoard): string {
  if (mark === null) return ' # nobody read it';
  if (sticks === undefined) return '';
  return sticks.high === 'level' ? ' # the sticks agree' : ` # the far stick stands high on the ${sticks.high}`;
}
