import type { Screw } from '../../shelf/shelf.js';

/** What a planned fastening takes over from the screw on the shelf: key, name and sizes, mm. */
export const screwFields = ({ key, name, shank_mm, root_mm, length_mm, thread_mm, head_mm }: Screw) =>
  ({ kind: 'screw', key, label: name, shank_mm, root_mm, length_mm, thread_mm, head_mm }) as const;
