/** Units as the reports write them behind a number; the longer ones first. */
const units = String.raw`N\/m|N\/mm|lbf\/in|lbf|lb|mm|cm|ml|kg|kHz|Hz|ft|fl|oz|tsp|tbsp|in|Nm|MPa|psi|mrad|°C|°F|°|%|deg|m²|m2|m|g|N|V|h|days?|hours?|minutes?|points?`;
const beforeUnit = new RegExp(String.raw`(?<=\d) (?=(?:${units})(?![\p{L}\d]))`, 'gu');
/** The shape of a badge and its word. */
const afterShape = /(?<=[●▲◆✕]) (?=\p{Lu}\p{Ll})/gu;
/** The hyphen of `20-3/16 in`, after which a line would break. */
const mixed = /(?<=\d-)(?=\d+\/\d)/gu;
/** The second half of `1 in 6` and of `19 × 38 mm`. */
const betweenNumbers = /(?<=\d) ([×x]|of|to) (?=\d)|(?<=\d\u00A0in) (?=\d)/gu;

/** The dash of a range, `10–20`. */
const range = /(?<=\d)–(?=\d)/gu;

/** The hyphen of a piece, `4-R2` or `4-lip B`. */
const piece = /(?<=\d-)(?=\p{Lu}|lip )/gu;

/**
 * Keeps a number on one line with its unit, and a size, a chance, a badge or the name of a piece whole, by no-break
 * spaces.
 */
export const keepTogether = (text: string): string =>
  text
    .replace(mixed, '\u2060')
    .replace(piece, '\u2060')
    .replace(range, '\u2060–\u2060')
    .replace(afterShape, '\u00A0')
    .replace(beforeUnit, '\u00A0')
    .replace(betweenNumbers, (_, sign?: string) => (sign === undefined ? '\u00A0' : `\u00A0${sign}\u00A0`));
