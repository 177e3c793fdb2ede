import { readingError, type Sheet } from '../bench-sheet/sheet.js';

/**
 * The lift off the table, else over the sticks; its sign where the sheet says which corner, top right and bottom left
 * being positive.
 */
export function liftRead(sheet: Sheet): {
  readonly kind: 'corner-lift' | 'winding';
  readonly mm: number;
  readonly signed_mm: number;
  readonly signed: boolean;
  readonly error_mm: number;
} | null {
  const mm = sheet.corner_lift_mm ?? sheet.winding_mm;
  if (mm === null) return null;
  const down = sheet.lifted === 'top-left' || sheet.lifted === 'bottom-right';
  const [kind, error_mm] =
    sheet.corner_lift_mm !== null
      ? (['corner-lift', readingError.table_mm] as const)
      : (['winding', readingError.stick_mm] as const);
  return { kind, mm, signed_mm: down ? -mm : mm, signed: sheet.lifted !== null, error_mm };
}
