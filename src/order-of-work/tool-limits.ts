import { formatLength } from '../base/units-format.js';
import type { Model } from '../model/model.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { sawReach } from './saw-reach.js';
import { CORNER_CLAMPS, type ToolsAtHand } from './tools-at-hand.js';

/** What cannot be done well with what is there, and the way round. */
export interface ToolLimit {
  readonly id: string;
  /** Path of the fact it bears on. */
  readonly fact: 'bar.bond' | 'bar.d_mm' | 'frame.corner_glue' | 'frame.shorter_side_mm' | 'lumber.moisture_gap_pct';
  readonly found: string;
  readonly way: string;
}

/**
 * What the tools at hand make hard in this plan; empty where they suffice or nobody said what there is. Source:
 * practice.
 */
export function toolLimits(model: Model, tools: ToolsAtHand): readonly ToolLimit[] {
  return [...saws(model, tools), ...clamps(model, tools), ...rest(tools)];
}

function saws(model: Model, tools: ToolsAtHand): readonly ToolLimit[] {
  const { plan } = model;
  const fact = 'bar.d_mm' as const;
  if (tools.saw === 'none')
    return [
      {
        id: 'no-saw',
        fact,
        found: 'There is no saw: the pieces are cut in the shop.',
        way: `Take the cut list along, have opposite bars cut together against one stop, and ask for two scraps ${plan.corners.cut === 'mitre' ? 'mitred' : 'cut'} first: hold them together against a square before any bar is cut.`,
      },
    ];
  const angled = plan.corners.cut === 'mitre' || plan.corners.cut === 'keyed';
  const byHand =
    tools.saw === 'hand' && angled
      ? [
          {
            id: 'mitre-by-hand',
            fact,
            found: 'A hand saw without a mitre box seldom cuts a mitre that closes.',
            way: 'Screw two upright boards and a bottom into a box and saw a 45° slot through them to guide the blade, leave the line standing and plane the ends true against a stop; or plan half-lapped corners, which need only square cuts.',
          },
        ]
      : [];
  const reach = sawReach(model, tools);
  const said = (mm: number): string => formatLength(mm, plan.units);
  const low =
    tools.saw_height_mm !== undefined && !reach.reaches
      ? [
          {
            id: 'saw-too-low',
            fact,
            found: `A piece stands ${said(reach.highest_mm)} high and the saw cuts ${said(reach.saw_mm)}.`,
            way: 'Mark it all round with a square and saw from both edges, cut it lying flat, or have the shop cut it.',
          },
        ]
      : [];
  return [...byHand, ...low];
}

function clamps(model: Model, { corner_clamps = CORNER_CLAMPS, bar_clamps }: ToolsAtHand): readonly ToolLimit[] {
  const sheet = glueSheet(model);
  if (sheet === null) return [];
  const corners =
    model.plan.corners.glue !== null && model.plan.corners.cut !== 'keyed' && corner_clamps < CORNER_CLAMPS
      ? [
          {
            id: 'few-corner-clamps',
            fact: 'frame.corner_glue' as const,
            found:
              corner_clamps === 0
                ? 'There are no corner clamps: corners that are not pressed together hold badly.'
                : `Of the four corners only ${corner_clamps === 1 ? 'one' : corner_clamps === 2 ? 'two' : 'three'} can be clamped at once: a corner may set out of square.`,
            way:
              corner_clamps === 0
                ? 'Bind the frame with a cord over notched scraps and tighten it with a stick; measure the diagonals before the glue grabs.'
                : 'Glue them in turn, the others laid out dry, and measure the diagonals each time.',
          },
        ]
      : [];
  const bars =
    sheet.clamps_on === 'plies' && bar_clamps !== undefined && bar_clamps < sheet.clamps_count
      ? [
          {
            id: 'few-bar-clamps',
            fact: 'bar.bond' as const,
            found: `A bar asks for ${sheet.clamps_count} clamps and there ${bar_clamps === 1 ? 'is one' : `are ${bar_clamps}`}: the glue line may stay open between them.`,
            way: 'Press with stiff battens and weights between the clamps, or glue and screw the plies.',
          },
        ]
      : [];
  return [...corners, ...bars];
}

function rest({ flat_place, moisture_meter }: ToolsAtHand): readonly ToolLimit[] {
  return [
    ...(flat_place === false
      ? [
          {
            id: 'no-flat-place',
            fact: 'frame.shorter_side_mm' as const,
            found: 'No table is flat: a frame glued on a twisted one comes out twisted.',
            way: 'Lay two straight battens parallel, sight over one to the other and pack them until they line up; glue and judge the frame on them.',
          },
        ]
      : []),
    ...(moisture_meter === false
      ? [
          {
            id: 'no-moisture-meter',
            fact: 'lumber.moisture_gap_pct' as const,
            found: 'Nothing reads the moisture of the boards: how damp they are is a guess.',
            way: 'Weigh a board every second day and cut when it stops losing.',
          },
        ]
      : []),
  ];
}
