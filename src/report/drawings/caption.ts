import { sheetWidth, textSize } from './drawing-standard.js';
import { textWidth } from './labels.js';
import { drawing, type Drawing } from './picture.js';

/** From one line of a caption to the next. */
export const lineStep = 15;
const left = 12;

/** Sentences as lines, broken at blanks where one is wider than the sheet. */
export const broken = (sentences: readonly string[]): readonly string[] =>
  sentences.flatMap((sentence) =>
    sentence.split(' ').reduce<readonly string[]>((lines, word) => {
      const longer = [...lines.slice(-1), word].join(' ');
      return textWidth(longer, textSize.small) > sheetWidth - left - 4
        ? [...lines, word]
        : [...lines.slice(0, -1), longer];
    }, []),
  );

/** Lines of words below a drawing, the first at height `y`. */
export const caption = (lines: readonly string[], y: number): Drawing =>
  drawing({
    labels: lines.map((text, i) => ({
      text,
      size: textSize.small,
      spots: [{ x: left, y: y + lineStep * i, anchor: 'start' as const }] as const,
    })),
  });
