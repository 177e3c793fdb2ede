import type { Sheet } from '../bench-sheet/sheet.js';

/** A sheet and the file it stands in. */
export interface FiledSheet {
  readonly file: string;
  readonly sheet: Sheet;
}
