import { capital } from '../../base/capital.js';
import { spokenName, type CornerName } from '../../base/names.js';
import type { GluedCure } from '../../bench-sheet/rescue-cures.js';
import type { Rescue } from '../../bench-sheet/rescue.js';
import { formatNumber } from '../../base/units-format.js';
import { bullets, heading, paragraph, steps, strong, table, type Block, type Cell } from '../tree.js';
import type { Telling } from '../telling.js';

const across: Readonly<Record<CornerName, CornerName>> = {
  'top-left': 'bottom-right',
  'top-right': 'bottom-left',
  'bottom-left': 'top-right',
  'bottom-right': 'top-left',
};
const beside: Readonly<Record<CornerName, readonly [CornerName, CornerName]>> = {
  'top-left': ['top-right', 'bottom-left'],
  'top-right': ['top-left', 'bottom-right'],
  'bottom-left': ['bottom-right', 'top-left'],
  'bottom-right': ['bottom-left', 'top-right'],
};

const cureWords: Readonly<Record<GluedCure, string>> = {
  brace: 'a timber brace glued across each corner',
  gusset: 'a plywood triangle glued and screwed over the back of each corner',
  crossbar: 'a crossbar glued in across the middle',
  'second-ply': 'a second board glued to the back of each bar',
};

/**
 * What brings the frame flat again: what to try first and what it gives, how it lies while the glue sets, which staples
 * come out, when to make it anew.
 */
export function rescueBlocks(told: Telling, rescue: Rescue): readonly Block[] {
  const { length, small } = told;
  const { raised, limit_mm, easing, cures, reopened, cloth_on, lift_mm, to_dry_pct } = rescue;
  const enough = (mm: number, reserve: number | null): boolean =>
    Math.abs(mm) <= limit_mm && (reserve === null || reserve >= 1);
  const rows = [
    ...(easing === null
      ? []
      : [
          {
            words: `ease the cloth along the diagonal from ${spokenName(raised)} to ${spokenName(across[raised])} by ${Math.round(100 * easing.share)} % of its pull`,
            mm: easing.lift_mm,
            reserve: told.number('frame.twist_reserve'),
            rank: 0,
          },
        ]),
    ...cures.map(({ cure, lift_mm: mm, reserve }, i) => ({ words: cureWords[cure], mm, reserve, rank: 1 + i })),
    ...(reopened === null
      ? []
      : [
          {
            words: `open the ${spokenName(reopened.corner)} corner and glue it again with the opposite twist`,
            mm: 0,
            reserve: told.number('frame.twist_reserve'),
            rank: 9,
          },
        ]),
  ].sort(
    (x, y) =>
      Number(enough(y.mm, y.reserve)) - Number(enough(x.mm, x.reserve)) ||
      (enough(x.mm, x.reserve) ? x.rank - y.rank : Math.abs(x.mm) - Math.abs(y.mm)),
  );
  return [
    heading(3, 'What brings it flat again, first things first'),
    paragraph(
      `The ${spokenName(raised)} corner stands up ${length(Math.abs(lift_mm))}. Each cure is worked out by solving the changed frame with that twist in it; what is glued on sets while the frame is held flat. Lifts are those under the cloth.`,
    ),
    ...(to_dry_pct > 0.5
      ? [
          paragraph(
            `First let it rest: the boards are still ${formatNumber(to_dry_pct, 2)} points wetter than the room settles them to. Leave it clamped flat in dry air until they have settled, or it will move again after any cure.`,
          ),
        ]
      : []),
    table(
      [
        { head: 'Cure' },
        { head: 'Lift afterwards', align: 'right' },
        { head: 'Reserve against twisting', align: 'right' },
        { head: 'Enough?' },
      ],
      rows.map(({ words, mm, reserve }): readonly Cell[] => [
        capital(words),
        small(Math.abs(mm)),
        reserve === null ? 'nothing turns it' : formatNumber(reserve, 2),
        enough(mm, reserve) ? 'yes' : Math.abs(mm) > limit_mm ? 'no: still lifts' : 'no: too little reserve',
      ]),
    ),
    heading(3, 'How it lies while the glue sets'),
    steps(
      [
        ...staples(rescue, told),
        [
          `Lay it on its back on a flat table. Press down the ${spokenName(raised)} and the ${spokenName(across[raised])} corner, which stand up; the ${spokenName(beside[raised][0])} and ${spokenName(beside[raised][1])} corners lie on the table by themselves. Clamp all four.`,
        ],
        ['Glue what you add, full and with no gap, and leave it clamped overnight before you let go.'],
        ...(reopened === null
          ? []
          : [
              [
                strong('Only if you open a corner:'),
                ` saw the ${spokenName(reopened.corner)} joint open along its glue line and clean both faces. Put a packing of ${small(Math.abs(reopened.past_flat_mm))} under the ${spokenName(beside[raised][0])} corner, so that the frame is bent past flat by so much, clamp the other three down, glue and nail the joint, and let it set. It then springs back to flat; of whatever you are off, ${Math.round(100 * reopened.left_per_mm)} % stays.`,
              ],
            ]),
        ...(cloth_on
          ? [
              [
                'Fix the cloth again from the middle of each side outwards, opposite sides in turn, at the note the plan gives.',
              ],
            ]
          : []),
      ].map((step): Cell => step),
    ),
    ...(rescue.anew
      ? [
          paragraph(
            strong('Make it anew:'),
            ' nothing here brings it under the limit with a reserve. Keep the straight boards, and take stiffer bars or a crossbar for the next one.',
          ),
        ]
      : [
          bullets([
            'Make it anew when two of these together still leave it over the limit, when a joint has opened that glue does not reach, or when a bar is cracked.',
          ]),
        ]),
  ];
}

/** Which staples come out, in which order. */
function staples({ cloth_on, easing, raised }: Rescue, told: Telling): readonly (readonly string[])[] {
  if (!cloth_on) return [];
  const leg =
    told.audit.plan.corners.brace?.leg_mm ??
    Math.min(told.audit.plan.face.width_mm, told.audit.plan.face.height_mm) / 4;
  const eased =
    easing === null
      ? ''
      : ` To ease the cloth, take them out from the ${spokenName(raised)} corner to the middle of both its sides, then the same at the ${spokenName(across[raised])} corner, let the cloth slip ${told.small(easing.slip_mm)} along that diagonal, and fix it again from the middles towards the corners.`;
  return [
    [
      `Take out staples only where you work: at each corner within ${told.length(leg)} of it, one side after the other, the corner last; for a crossbar, a hand’s width about the middle of both bars; for boards behind the bars, all but a few in the middle of each side, so that the cloth does not run.${eased}`,
    ],
  ];
}
