import { example, keyHint, kindHint, orNearest, yamlFault, type Details, type Wording } from './wording.js';

/** What can be wrong with any file, whatever it is about: its text, its shape, its quantities; by code. */
export const fileWordings = {
  // The file as a text
  'empty-file': () => ({
    found: 'an empty file',
    allowed: 'a YAML text',
    hint: 'Check that it was saved, and that this is the right file: its first line says what it is, such as `plan: 1`.',
  }),
  'not-text': () => ({
    found: 'bytes that are no text',
    allowed: 'a YAML text in UTF-8',
    hint: 'Open the file in a text editor and save it as plain text, UTF-8.',
  }),
  'too-large': (d) => ({
    found: `a file of ${d.value}`,
    allowed: `at most ${d.allowed}`,
    hint: 'Check that this is the right file.',
  }),
  'too-deep': (d) => ({
    found: `${d.value} levels inside each other`,
    allowed: `at most ${d.allowed} levels`,
    hint: 'Nothing here needs such nesting: look for a bracket or dash that was never closed.',
  }),
  'too-many-aliases': () => ({
    found: 'aliases (`*name`) that blow the file up',
    allowed: 'a handful of aliases',
    hint: 'Write the repeated parts out.',
  }),
  'too-many-parts': (d) => ({
    found: `more than ${d.value} values`,
    allowed: 'a file one person could have written',
    hint: 'Check that this is the right file.',
  }),
  'too-many-words': (d) => ({
    found: `more than ${d.value} words and marks`,
    allowed: 'a file one person could have written',
    hint: 'Check that this is the right file.',
  }),
  'alias-loop': (d) => ({
    found: `\`${d.value}\`, which contains itself`,
    allowed: 'an alias of something finished before it',
    hint: 'Write the part out instead of pointing at it.',
  }),
  'unknown-alias': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'an alias (`*name`) of an anchor (`&name`) further up',
    hint: 'Put quotes around a text that starts with `*`.',
  }),
  'forbidden-key': (d) => ({
    found: `the key \`${d.value}\``,
    allowed: 'keys without a special meaning',
    hint: 'Write another name for it, such as `entry-1`.',
  }),
  'duplicate-key': (d) => ({
    found: `\`${d.value}\` a second time`,
    allowed: 'each key once',
    hint: /^\d/u.test(d.value ?? '') ? keyHint(d) : 'Keep one of the two.',
  }),
  'key-not-text': () => ({
    found: 'a key that is not a single word',
    allowed: 'plain keys',
    hint: 'Write `key: value`.',
  }),
  'tab-indent': () => ({
    found: 'a tab at the start of a line',
    allowed: 'spaces',
    hint: 'Replace tabs by two spaces each.',
  }),
  'several-documents': () => ({
    found: 'a second document after `---`',
    allowed: 'one document in a file',
    hint: 'Move the second one into a file of its own.',
  }),
  'yaml-version': (d) => ({
    found: `\`${d.value}\` above the text`,
    allowed: 'YAML 1.2, in which `yes`, `no` and `on` are plain words',
    hint: 'Take this line away: everything else may stay as it is.',
  }),
  tag: (d) => ({
    found: `the tag \`${d.value}\``,
    allowed: 'plain values',
    hint: 'Remove the tag; put quotes around a text that starts with `!`.',
  }),
  'bad-yaml': (d) => yamlFault(d.value ?? 'a line YAML cannot read'),
  'more-problems': (d) => ({
    found: `${d.value} more problems`,
    allowed: 'none',
    hint: 'Put the ones above right first.',
  }),
  // The shape of the document
  'not-a-map': (d) => ({
    found: d.value ?? 'something else',
    allowed: 'lines of `key: value`',
    hint: `Begin with the line \`${d.name}: 1\` and give each thing a line of its own.`,
  }),
  'later-format': (d) => ({
    found: `\`${d.name}: ${d.value}\``,
    allowed: `\`${d.name}: 1\``,
    hint: 'This file was written for a later version of the tool: update the tool.',
  }),
  'not-this-format': (d) => ({
    found: d.value ?? 'another kind of file',
    allowed: `a file that begins with \`${d.name}: 1\``,
    hint: `Check that this is the right file; the first line of every ${d.name} is \`${d.name}: 1\`.`,
  }),
  'unknown-key': (d) => ({ found: `\`${d.value}\``, allowed: d.allowed ?? 'known keys', hint: keyHint(d) }),
  missing: (d) => ({ found: `no \`${d.name}\``, allowed: d.allowed ?? 'a value', hint: `Add \`${d.name}:\` here.` }),
  'left-empty': (d) => ({
    found: `nothing after \`${d.name}:\``,
    allowed: d.allowed ?? 'a value',
    hint: 'Fill it in, or remove the line to take the default.',
  }),
  'wrong-kind': (d) => ({
    found: d.value ?? 'something else',
    allowed: d.allowed ?? 'another kind of value',
    hint: kindHint(d),
  }),
  'not-one-of': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? '',
    hint: orNearest(
      d.nearest,
      (d.allowed ?? '').endsWith('a block of keys') ? kindHint(d) : example(d.allowed ?? '', d.name),
    ),
  }),
  'not-finite': (d) => ({
    found: d.value ?? 'no number',
    allowed: 'a plain finite number',
    hint: 'Write the number out.',
  }),
  'not-decimal': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'a number in tens',
    hint: 'Write the number as people count.',
  }),
  'out-of-range': (d) => ({
    found: d.value ?? '',
    allowed: d.allowed ?? '',
    hint: /[a-z%]/iu.test(d.value ?? '')
      ? `Write ${d.allowed ?? 'a smaller amount'}; look whether the unit is the one you meant.`
      : `Write ${d.allowed ?? 'a smaller number'}.`,
  }),
  'too-many': (d) => ({
    found: d.value ?? 'too many',
    allowed: d.allowed ?? '',
    hint: /^0 /u.test(d.value ?? '')
      ? 'Add at least one, or leave the key out.'
      : `Keep to ${d.allowed ?? 'fewer'}: delete the rest.`,
  }),
  'bad-text': (d) => ({
    found: d.value ?? '',
    allowed: d.allowed ?? '',
    hint: 'Shorten it, and keep to letters, figures and ordinary signs.',
  }),
  'bad-key-name': (d) => ({
    found: `\`${d.value}\``,
    allowed: 'letters, figures, dots and dashes, at most 60',
    hint: 'Give the entry a plain name.',
  }),
  // Quantities
  'no-unit': (d) => ({
    found: `\`${d.value}\` without a unit`,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write the unit after the number.',
  }),
  'other-unit': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: example(d.allowed ?? '', undefined),
  }),
  'decimal-comma': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write a point for the decimals: 1.2, not 1,2.',
  }),
  'not-a-quantity': (d) => ({
    found: `\`${d.value}\``,
    allowed: d.allowed ?? 'a number with its unit',
    hint: 'Write the number, a space and the unit.',
  }),
} satisfies Record<string, (details: Details) => Wording>;
