/**
 * So many times a thing, as one says it: `1.4 times what it can`, but `what it can` for 1 and `just over what it can`
 * for `just over 1`; without a thing `1.4 times` and `as much`.
 * `number` is a number in words, `of` begins with a small word such as what, the or its.
 */
export function timesInWords(number: string, of = ''): string {
  const once = /^(just (?:over|under) )?1$/u.exec(number);
  if (once === null) return `${number} times${of === '' ? '' : ` ${of}`}`;
  return `${once[1] ?? ''}${of === '' ? 'as much' : of}`;
}
