import { caption, broken, lineStep } from './caption.js';
import { back } from './hanging-back.js';
import { panel, type HangingPicture } from './hanging-shape.js';
import { sideView } from './hanging-side.js';
import { describeHanging, forces } from './hanging-words.js';
import { finishPicture, together, type Picture } from './picture.js';

/** Where the forces are told in words. */
const told = panel.top + panel.height + 58;

/** Two views: the back to scale with the wire and its forces, and the side with the lean drawn larger than it is. */
export function hanging(h: HangingPicture): Picture {
  const lines = broken(forces(h));
  const content = together(back(h), sideView(h), caption(lines, told));
  return finishPicture(
    { name: 'hanging.svg', title: 'How the piece hangs', alt: describeHanging(h) },
    told + lineStep * Math.max(1, lines.length),
    content,
  );
}
