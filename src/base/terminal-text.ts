/**
 * Signs that steer a terminal or turn the order of its text: C0 and C1 controls but for tab and line ends,
 * bidirectional controls, line separators.
 */
const steering =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff]|\r(?!\n)/gu;

const longestLine = 2000;

/** The same text, each steering sign a `?`, however long its lines: for tables that another program reads. */
export const withoutSteering = (text: string): string => text.replace(steering, '?');

/**
 * Text that is safe to show on a terminal, whatever a file, a key or a file name holds: each steering sign becomes `?`,
 * and no line is longer than 2,000 characters.
 */
export function terminalText(text: string): string {
  const lines = withoutSteering(text).split('\n');
  return lines.map((line) => (line.length > longestLine ? `${line.slice(0, longestLine - 1)}…` : line)).join('\n');
}

/** JSON that holds no steering sign raw: each is written as its escape, which means the same. */
export function terminalJson(json: string): string {
  return json.replace(
    /[\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
