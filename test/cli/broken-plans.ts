import { fileText } from '../plan/shelf-for-tests.js';

/** One plan that cannot be read. */
export interface BrokenPlan {
  readonly what: string;
  readonly text: string | Buffer;
  /** Place that must be named, `line:column`; null where the whole file is at fault. */
  readonly place: string | null;
  /** True where the shape itself is wrong, so that a schema without knowledge of the shelf refuses it as well. */
  readonly shape: boolean;
}

const smallest = fileText('test/plans/smallest.yaml');
const face = (text: string): string => smallest.replace('{ width: 500 mm, height: 400 mm }', text);

/** Plans of every kind of fault. The place is that of the fault as an editor counts it. */
export const brokenPlans: readonly BrokenPlan[] = [
  { what: 'an empty file', text: '', place: '1:1', shape: false },
  { what: 'a binary file', text: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 0xff, 0xfe]), place: null, shape: false },
  { what: 'a tab for indentation', text: smallest.replace('bars: {', 'bars:\n\t{'), place: '5:1', shape: false },
  { what: 'a negative width', text: face('{ width: -500 mm, height: 400 mm }'), place: '3:16', shape: false },
  { what: 'a height of zero', text: face('{ width: 500 mm, height: 0 mm }'), place: '3:32', shape: false },
  { what: 'a width of 1e308 mm', text: face('{ width: 1e308 mm, height: 400 mm }'), place: '3:16', shape: false },
  { what: 'a width of 1e308', text: face('{ width: 1e308, height: 400 mm }'), place: '3:16', shape: true },
  { what: 'a count that is not a number', text: `${smallest}count: .nan\n`, place: '5:8', shape: true },
  { what: 'a width that is not a number', text: face('{ width: NaN mm, height: 400 mm }'), place: '3:16', shape: true },
  { what: 'an unknown stock', text: smallest.replace('strip-19x38', 'strip-19x83'), place: '4:16', shape: false },
  { what: 'an unknown key', text: `${smallest}colour: red\n`, place: '5:1', shape: true },
  { what: 'a missing face', text: smallest.replace(/^face.*\n/m, ''), place: '1:1', shape: true },
  { what: 'another word for how the bars lie', text: smallest.replace('flat', 'upright'), place: '4:34', shape: true },
  { what: 'a key given twice', text: `${smallest}name: Another\n`, place: '5:1', shape: false },
  { what: 'brackets nested 20,000 deep', text: `${smallest}ground: ${'['.repeat(20_000)}${']'.repeat(20_000)}\n`, place: '5:33', shape: false },
  { what: 'bars wider than the face', text: face('{ width: 500 mm, height: 70 mm }'), place: '4:1', shape: false },
  { what: '5,000 crossbars', text: `${smallest}crossbars:\n${'  - { runs: upright, at: 1/2 }\n'.repeat(5000)}`, place: '6:3', shape: true },
  { what: 'a later format', text: smallest.replace('plan: 1', 'plan: 2'), place: '1:7', shape: true },
  { what: 'a list instead of a plan', text: '- plan: 1\n', place: '1:1', shape: true },
  { what: 'unclosed quotes', text: smallest.replace('Small study', '"Small study'), place: '5:1', shape: false },
  { what: 'a file of 30 MB', text: Buffer.alloc(30_000_000, 'x'), place: null, shape: false },
];
