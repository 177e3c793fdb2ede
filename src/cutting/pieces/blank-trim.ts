import type { Shelf } from '../../shelf/shelf.js';

/** Where the shelf says nothing of it, mm (proposal). */
const usual_mm = 10;

/** Left on each end of a blank and cut off after gluing, mm. */
export const blankTrim_mm = ({ proposals }: Shelf): number => proposals['blank-trim']?.value ?? usual_mm;
