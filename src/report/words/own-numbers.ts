import { cornerJoint, jointKey } from '../../model/joint-give.js';
import type { LearnedFrom, Shelf } from '../../shelf/shelf.js';
import type { Audit } from '../audit-view.js';
import { counted } from './verdict.js';

type Seen = Pick<Audit, 'plan' | 'model' | 'shelf'>;

const counts = ({ frames, boards, joints, date }: LearnedFrom): string =>
  `your own, ${[counted(frames, 'frame'), ...(boards > 0 ? [counted(boards, 'board')] : []), ...(joints > 0 ? [counted(joints, 'test corner')] : [])].join(', ')}${date === null ? '' : ` (${date})`}`;

/** On whose numbers something stands: learned from frames, measured some other way, or what the shelf proposes. */
function whose(shelf: Shelf, learned: string, source: string): string {
  const from = Object.hasOwn(shelf.learned, learned) ? shelf.learned[learned] : undefined;
  if (from !== undefined) return counts(from);
  return shelf.sources[source] === 'measured' ? 'your own measurements' : 'the shelf’s proposal, which nobody measured';
}

/** How far the boards of this plan scatter, and who says so. */
export function boardsStandOn({ plan, model, shelf }: Seen): string {
  const { key } = model.bars.top.stock;
  const read = plan.boards.some(({ twist_rad_per_m }) => twist_rad_per_m !== null)
    ? '; boards you read one by one stand for themselves'
    : '';
  return `How far such boards twist: ${whose(shelf, `lumber.${key}.spread.${plan.lumber.chosen}.twist`, `lumber.${key}.spread`)}${read}.`;
}

/** How much the corners give, and who says so; true where somebody measured it. */
export function jointStandsOn({ plan, model, shelf }: Seen): { readonly words: string; readonly own: boolean } {
  if (plan.corners.give !== null) return { words: 'How much the corners give: the plan’s own number.', own: true };
  const key = jointKey(cornerJoint(plan, shelf, model.bars.top.section));
  const own = Object.hasOwn(shelf.learned, `joints.give.${key}`);
  return { words: `How much the corners give: ${whose(shelf, `joints.give.${key}`, 'joints.give')}.`, own };
}
