/** Units as the reports write them behind a number; the longer ones first. */
const units = String.raw`N\/m|N\/mm|lbf\/in|lbf|lb|mm|cm|ml|kg|kHz|Hz|ft|fl|oz|tsp|tbsp|in|Nm|MPa|psi|mrad|°C|°F|°|%|deg|m²|m2|m|g|N|V|h|days?|hours?|minutes?|points?`;
const beforeUnit = new RegExp(String.raw`(?<=[\d½¼¾]) (?=(?:${units})(?![\p{L}\d]))`, 'gu');
/** The second half of `1 in 6` and of `19 × 38 mm`. */
const betweenNumbers = /(?<=\d) ([×x]|of|to) (?=\d)|(?<=\d\u00A0in) (?=\d)/gu;

/** Keeps a number on one line with its unit, and a size or a chance in one piece, by no-break spaces. */
export const keepTogether = (text: string): string => text.replace(beforeUnit, '\u00A0').replace(betweenNumbers, (_, sign?: string) => (sign === undefined ? '\u00A0' : `\u00A0${sign}\u00A0`));
