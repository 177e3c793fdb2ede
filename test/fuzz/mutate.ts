import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { stringify } from 'yaml';

/** A seeded source of choices, so that a run can be repeated. */
export class Dice {
  #state;

  constructor(seed: number) {
    this.#state = xoroshiro128plus(seed);
  }

  /** A whole number from 0 to `below` − 1. */
  roll(below: number): number {
    return ((this.#state.next() >>> 0) % Math.max(1, below));
  }

  pick<T>(list: readonly T[]): T {
    return list[this.roll(list.length)] as T;
  }
}

const names = ['top', 'left', 'strip-19x38', 'stud-38x89', 'edge', 'flat', 'none', 'mitre', 'half-lap', 'butt', 'keyed', 'glue', 'wire', 'upright', 'picked', 'unsorted', 'timber', 'steel-angle'];
const quantities = ['0 mm', '-1 mm', '1e9 m', '0.0001 mm', '35-3/8 in', '1/0 in', '2 ft 11', '90cm', '200 N/m', '1 N/m', '5000 N/m', '60..35 %', '35..60 %', '4 deg/m', '-0.4 deg/m', '1e400 mm', '12 %', '20 C', '1/2', '999/1000'];
const oddities = ['', ' ', '\u202e', '\u001b[2J', '<script>alert(1)</script>', ']]>', '|a|b|', '=1+1', '../../x', '__proto__', 'constructor', '${7*7}', '\u0000', '[x](javascript:alert(1))', '🪵'.repeat(40), 'x'.repeat(300)];

/** A value that may come where another was: of the right kind, of the wrong kind, or hostile. */
function oddValue(dice: Dice): unknown {
  switch (dice.roll(8)) {
    case 0: return dice.pick([0, 1, -1, 2, 3, 4, 12, 500, 501, 1e308, -0, 0.5, 1e-9]);
    case 1: return null;
    case 2: return dice.pick([true, false]);
    case 3: return [];
    case 4: return {};
    case 5: return dice.pick(oddities);
    case 6: return dice.pick(names);
    default: return dice.pick(quantities);
  }
}

/** All places in a tree, as the node above and the key there. */
function places(node: unknown, found: { readonly above: Record<string | number, unknown>; readonly key: string }[] = []): typeof found {
  if (typeof node !== 'object' || node === null) return found;
  for (const key of Object.keys(node)) {
    found.push({ above: node as Record<string, unknown>, key });
    places((node as Record<string, unknown>)[key], found);
  }
  return found;
}

/** A tree with one to four things changed: a value, a key gone, doubled or renamed, a part taken from another place. */
export function mutateTree(tree: unknown, dice: Dice): unknown {
  const copy = structuredClone(tree);
  for (let n = 1 + dice.roll(4); n > 0; n--) {
    const all = places(copy);
    if (all.length === 0) return oddValue(dice);
    const { above, key } = dice.pick(all);
    switch (dice.roll(6)) {
      case 0: delete above[key]; break;
      case 1: above[`${key}s`] = above[key]; break;
      case 2: {
        const other = dice.pick(all);
        above[key] = structuredClone(other.above[other.key]);
        break;
      }
      case 3: {
        const value = above[key];
        if (Array.isArray(value)) value.push(...structuredClone(value));
        else above[key] = [value];
        break;
      }
      default: above[key] = oddValue(dice);
    }
  }
  return copy;
}

/** A text with signs turned, cut, doubled or put in, as a slip of the hand or an attacker would. */
export function mutateText(text: string, dice: Dice): string {
  const at = dice.roll(text.length);
  const long = 1 + dice.roll(30);
  switch (dice.roll(5)) {
    case 0: return text.slice(0, at);
    case 1: return text.slice(0, at) + text.slice(at + long);
    case 2: return text.slice(0, at) + text.slice(at, at + long).repeat(1 + dice.roll(40)) + text.slice(at);
    case 3: return text.slice(0, at) + dice.pick([...oddities, '{', '}', '[', ']', ':', ',', '- ', '&a ', '*a', '!!js ', '\t', '\n', '"', "'", '#', '|', '>']) + text.slice(at);
    default: return text.slice(0, at) + String.fromCharCode(32 + dice.roll(400)) + text.slice(at + 1);
  }
}

/** A text in which some numbers are others: most such files can still be read, and are judged. */
export function otherNumbers(text: string, dice: Dice): string {
  const factors = [0.01, 0.5, 0.9, 1.1, 2, 3, 10];
  return text.replace(/(?<![\w.-])\d+(?:\.\d+)?(?![\w.]|\s*[x:])/g, (number, at: number) => {
    const kept = dice.roll(4) > 0 || text.lastIndexOf('\n', at) < 0;
    return kept ? number : String(Number((Number(number) * dice.pick(factors)).toPrecision(3)));
  });
}

/** A changed file: of the tree, of its text, or of both; every other one only in its numbers. */
export function mutant(tree: unknown, dice: Dice): string {
  if (dice.roll(2) === 0) return otherNumbers(stringify(tree), dice);
  const way = dice.roll(4);
  const text = stringify(way === 0 ? tree : mutateTree(tree, dice), { aliasDuplicateObjects: dice.roll(3) === 0 });
  return way < 2 ? mutateText(text, dice) : text;
}
