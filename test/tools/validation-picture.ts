import type { Recorded } from '../validation/recorded.js';

/** The comparisons of one test file. */
export interface PictureRow {
  readonly name: string;
  readonly records: readonly Recorded[];
}

const [left, width, step, top] = [190, 460, 20, 40];

/** Every deviation as a share of its tolerance, −1 … 1, a row for each file and a dot for each number. Verdicts have none. */
export function deviationsPicture(files: readonly PictureRow[]): string {
  const rows = files.map(({ name, records }) => ({ name, shares: records.filter(({ tolerance }) => tolerance > 0).map(({ deviation, tolerance }) => deviation / tolerance) })).filter(({ shares }) => shares.length > 0);
  const x = (share: number): string => (left + (width * (Math.max(-1, Math.min(1, share)) + 1)) / 2).toFixed(1);
  const bottom = top + step * rows.length;
  const text = (px: string | number, y: number, words: string, anchor: string): string => `<text x="${px}" y="${y}" text-anchor="${anchor}">${words}</text>`;
  const marks = [-1, -0.5, 0, 0.5, 1].map((at) => `<line x1="${x(at)}" y1="${top - 6}" x2="${x(at)}" y2="${bottom}" stroke="#${Math.abs(at) === 1 ? '111' : 'bbb'}"/>${text(x(at), top - 12, `${100 * at} %`, 'middle')}`);
  const drawn = rows.map(({ name, shares }, i) => {
    const y = top + step * (i + 0.5);
    return `${text(left - 8, y + 4, `${name} (${shares.length})`, 'end')}${shares.map((share) => `<circle cx="${x(share)}" cy="${y}" r="2.6" fill="#111" fill-opacity="0.35"/>`).join('')}`;
  });
  const over = rows.flatMap(({ shares }) => shares).filter((share) => Math.abs(share) > 1).length;
  const alt = `Every deviation as a share of its tolerance, a row for each test file, a dot for each number; ${over === 0 ? 'all lie' : `all but ${over} lie`} between minus and plus 100 %.`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${left + width + 30} ${bottom + 24}" role="img" font-family="sans-serif" font-size="11"><title>${alt}</title><rect width="100%" height="100%" fill="#fff"/>${marks.join('')}${drawn.join('')}${text(x(0), bottom + 16, 'deviation over tolerance', 'middle')}</svg>\n`;
}
