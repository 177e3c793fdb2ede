import { plural } from '../words/plural.js';
import { capital } from '../../base/capital.js';
import { countInWords } from '../../base/count-words.js';
import { formatNumber, formatQuantity } from '../../base/units-format.js';
import { timesInWords } from '../../base/times-words.js';
import type { FactPath } from '../../facts/fact.js';
import { among } from '../../mechanics/occupancy/occupant.js';
import type { HangingSheet } from '../../sheets/sheets.js';
import type { Hardware } from '../../shelf/shelf.js';
import { userText } from '../clean-text.js';
import { hanging } from '../drawings/hanging.js';
import { liesFlat } from '../drawings/hanging-words.js';
import { bullets, paragraph, picture, setApart, strong, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { forceInWords } from '../words/force.js';
import { obstacleInWords } from '../words/obstacle.js';
import { hangingPictureOf } from './picture-data.js';

/** Part 9: how it hangs, with forces and hardware. */
export function hangingSection(told: Telling): Section {
  const { audit, length } = told;
  const state = audit.sheets.hanging;
  if (state === null)
    return { title: 'Hanging', blocks: [paragraph('The plan says that this piece does not hang.')], pictures: [] };
  const { plan } = audit;
  const drawn = hanging(hangingPictureOf(audit, state));
  const blocks = [
    ...(state.by === 'wire' && state.wire === null
      ? [setApart(paragraph(strong('A wire without slack cannot carry anything: give it some.')))]
      : []),
    picture(drawn),
    bullets([
      state.cleat === null
        ? `Hanging points ${length(state.points.drop_mm)} below the top edge, ${plan.hang.from === 'inside' ? 'on the inner faces of the side bars' : 'in the middle of the backs of the side bars'}; finished weight ${told.said('frame.weight_kg')}.`
        : `${state.cleat.middles_mm.length === 1 ? 'One pair of bevelled strips' : 'Two pairs of bevelled strips'} under the top bar, flush with its back, ${state.cleat.middles_mm.length === 1 ? 'its middle' : 'their middles'} ${state.cleat.middles_mm.map(length).join(' and ')} from the left edge; finished weight ${told.said('frame.weight_kg')}. No wire: nothing draws the side bars inward.`,
      ...moved(told, state),
      ...wire(told, state),
      ...hooks(told, state),
      ...hardware(told, state),
      ...ringDrill(told, state),
      ...lean(told, state),
    ]),
  ];
  return { title: 'Hanging', blocks, pictures: [drawn] };
}

const holds = { wire: 'ring or wire', 'two-hooks': 'the rings', 'd-rings': 'the straps', cleat: 'the strips' } as const;

/** Where the hanging points were moved, and what is in the way still. */
function moved(
  { length }: Telling,
  { by, points: { planned_mm, moved_off, meets }, stands_out: out }: HangingSheet,
): readonly Cell[] {
  const told = meets.map((one) => {
    const what = obstacleInWords(one);
    return out !== null && among([one], out.what) ? `${what}, which ${behindTheBars(out, length)}` : what;
  });
  return [
    ...(moved_off === null
      ? []
      : [
          `The plan has them ${length(planned_mm)} below the top edge; there ${obstacleInWords(moved_off)} would be in the way of ${holds[by]}, so they are moved to the nearest clear place.`,
        ]),
    ...(meets.length === 0 ? [] : [[strong(`In the way of ${holds[by]}: ${told.join('; ')}.`)]]),
  ];
}

function wire(
  { units, length, small, number }: Telling,
  { wire: w, forces: f, hook_below_top_mm }: HangingSheet,
): readonly Cell[] {
  if (w === null || f === null) return [];
  const bow = number('hanging.inward_bow_mm');
  const above =
    hook_below_top_mm !== null && hook_below_top_mm < 0
      ? ' It shows above the frame: give the wire less slack or lower the hanging points.'
      : '';
  return [
    `Cut the wire so that ${length(w.wire_mm)} lie between the rings, plus what the knots take. Loaded, it stands at ${formatQuantity(w.angle_deg, 'deg', units)} to the level and the hook comes ${length(w.rise_mm)} above the rings.${above}`,
    `The wire carries ${forceInWords(f.tension_N, units)} and draws each side bar inward with ${formatQuantity(f.inward_N, 'N', units)}${bow === null ? '' : `; cloth and wire together bow the side bars in by ${small(bow)}`}. Two hooks without a wire would take that pull away.`,
  ];
}

/** Where the hooks go into the wall, seen from where the top edge is to come. */
function hooks(
  { length }: Telling,
  { by, wire: w, cleat, hook_below_top_mm, ring_span_mm }: HangingSheet,
): readonly Cell[] {
  if (cleat !== null || hook_below_top_mm === null || hook_below_top_mm < 0 || (by === 'wire' && w === null)) return [];
  const apart_mm = w === null ? ring_span_mm : w.hooks_apart_mm;
  const where = `${length(hook_below_top_mm)} below where the top edge is to come`;
  return [
    apart_mm === 0
      ? `The hook goes into the wall ${where}.`
      : `The hooks go into the wall ${length(apart_mm)} apart, level with each other, ${where}.`,
  ];
}

function hardware({ units, number }: Telling, state: HangingSheet): readonly Cell[] {
  const rated = (h: Hardware): string => `${userText(h.name, 50)} (rated ${formatQuantity(h.rating_N, 'N', units)})`;
  const times = (path: FactPath): string => {
    const factor = number(path);
    return factor === null ? '' : `, ${timesInWords(formatNumber(factor, 2), 'what it must carry')}`;
  };
  const { hook, wire: w, ring } = state.picked;
  const use = number('hanging.ring_use');
  return [
    ...(hook === null
      ? []
      : [
          `${capital(countInWords(state.hooks_count))} ${plural('hook', state.hooks_count)}: ${rated(hook)}${times('hanging.hook_factor')}.`,
        ]),
    ...(w === null ? [] : [`Wire: ${rated(w)}${times('hanging.wire_factor')}.`]),
    ...(state.cleat !== null && use !== null
      ? [
          `Its screws use ${formatQuantity(use, 'share', units)} of what they hold in the top bar. The strip on the wall goes into studs or plugs that carry as much.`,
        ]
      : []),
    ...(ring === null
      ? []
      : [
          `Two rings: ${rated(ring)}${use === null ? '' : `, using ${formatQuantity(use, 'share', units)} of what it holds in this wood`}.`,
        ]),
  ];
}

/** The hole each ring is screwed into. */
function ringDrill({ length }: Telling, { picked: { ring }, ring_hole }: HangingSheet): readonly Cell[] {
  if (ring === null || ring_hole === null) return [];
  const { drill, depth_mm } = ring_hole;
  return [
    drill === null
      ? 'No drill on the shelf is thin enough for these screws: prick the place with an awl.'
      : `Drill ${userText(drill.label, 20)} for each ${ring.kind === 'strap' ? 'screw of the straps' : 'ring'}, ${length(depth_mm)} deep, and turn it in by hand until ${ring.kind === 'strap' ? 'the strap lies tight' : 'its shoulder meets the wood'}.`,
  ];
}

/** How far something stands out behind the bars, as a verb with its object. */
const behindTheBars = ({ what, out_mm }: NonNullable<HangingSheet['stands_out']>, length: Telling['length']): string =>
  `${what.kind === 'whole-crossbar' ? 'stands' : 'stand'} out ${length(out_mm)} behind the bars`;

/** What stands out is told here unless it is told among what is in the way. */
function lean(
  { units, length }: Telling,
  { lean: l, stands_out: out, points: { meets } }: HangingSheet,
): readonly Cell[] {
  if (l === null) return [[strong('The hook would sit at or below the bottom edge: it cannot hang like this.')]];
  const told =
    out === null || among(meets, out.what) ? '' : `${capital(obstacleInWords(out.what))} ${behindTheBars(out, length)}`;
  if (liesFlat(l.angle_deg))
    return [
      out === null
        ? 'It lies flat on the wall.'
        : told === ''
          ? `The bars stay ${length(out.out_mm)} off the wall.`
          : `${told}: they stay that far off the wall.`,
    ];
  return [
    `The top leans ${length(l.top_standoff_mm)} from the wall (${formatQuantity(l.angle_deg, 'deg', units)}).${told === '' ? '' : ` ${told}.`}`,
  ];
}
