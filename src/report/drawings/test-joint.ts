import type { JointWay } from '../../measure/measure-joint.js';
import { darkerFill, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, type Picture } from './picture.js';
import { arrow, line, outline, rectangle } from './strokes.js';

/**
 * How a glued corner is loaded at the bench: one leg clamped to the table right up to the joint, a bag of sand on the
 * other, a ruler beside it. Not to scale.
 */
export function testJointPicture(way: JointWay): Picture {
  const [top, thick] = [166, way === 'plane' ? 26 : 14];
  const [edge, weightAt] = [190, 345];
  const marks = [
    // The table, and the free leg standing out over its edge.
    outline(rectangle(20, top, edge - 20, 12), { width: weight.edge, fill: darkerFill }),
    line(
      [
        { x: 40, y: top + 12 },
        { x: 40, y: top + 110 },
      ],
      { width: weight.bold },
    ),
    outline(rectangle(edge, top - thick, 175, thick), { width: weight.edge, fill: woodFill }),
    // The clamped leg: seen from its end when the corner stands in its plane on the table's edge, along the edge when
    // it lies.
    ...(way === 'plane'
      ? [
          outline(rectangle(edge - 26, top - 90, 26, 90), { width: weight.edge, fill: woodFill }),
          outline(rectangle(edge - 70, top - 90, 44, 90), { width: weight.edge, fill: darkerFill }),
        ]
      : [outline(rectangle(edge - 34, top - thick, 34, thick), { width: weight.edge, fill: woodFill })]),
    // The clamp.
    ...(way === 'plane'
      ? [
          line(
            [
              { x: edge + 10, y: top - 70 },
              { x: edge + 10, y: top - 102 },
              { x: edge - 86, y: top - 102 },
              { x: edge - 86, y: top - 70 },
              { x: edge - 72, y: top - 70 },
            ],
            { width: weight.bold },
          ),
          line(
            [
              { x: edge + 10, y: top - 70 },
              { x: edge + 1, y: top - 70 },
            ],
            { width: weight.bold },
          ),
        ]
      : [
          line(
            [
              { x: edge - 17, y: top - thick - 2 },
              { x: edge - 17, y: top - thick - 16 },
              { x: edge - 62, y: top - thick - 16 },
              { x: edge - 62, y: top + 34 },
              { x: edge - 17, y: top + 34 },
              { x: edge - 17, y: top + 14 },
            ],
            { width: weight.bold },
          ),
        ]),
    // The bag, its string, the way it moves.
    line(
      [
        { x: weightAt, y: top },
        { x: weightAt, y: top + 34 },
      ],
      { width: weight.thin },
    ),
    outline(
      [
        { x: weightAt - 4, y: top + 34 },
        { x: weightAt + 4, y: top + 34 },
        { x: weightAt + 18, y: top + 72 },
        { x: weightAt - 18, y: top + 72 },
      ],
      { width: weight.edge, fill: darkerFill },
    ),
    ...arrow({ x: weightAt + 28, y: top - thick - 2 }, { x: weightAt + 28, y: top + 24 }),
    // The arm.
    line(
      [
        { x: edge, y: top + 104 },
        { x: weightAt, y: top + 104 },
      ],
      { width: weight.dimension, colour: softInk },
    ),
    ...[edge, weightAt].map((x) =>
      line(
        [
          { x, y: top + 98 },
          { x, y: top + 110 },
        ],
        { width: weight.dimension, colour: softInk },
      ),
    ),
  ];
  const held = way === 'plane' ? 'One leg stands upright against a block' : 'One leg lies along the edge of the table';
  const content = drawing({
    marks,
    labels: [
      {
        text:
          way === 'plane'
            ? 'In the plane: the weight opens the corner'
            : 'At right angles: the weight bends it out of flat',
        heavy: true,
        spots: [{ x: sheetWidth / 2, y: 18, anchor: 'middle' }],
      },
      { text: `${held},`, size: textSize.small, spots: [{ x: 20, y: 36, anchor: 'start' }] },
      { text: 'clamped right up to the joint', size: textSize.small, spots: [{ x: 20, y: 50, anchor: 'start' }] },
      { text: 'bag of sand', size: textSize.small, spots: [{ x: weightAt, y: top + 88, anchor: 'middle' }] },
      {
        text: 'arm: inside of the clamped leg to the string',
        size: textSize.small,
        spots: [{ x: sheetWidth - 6, y: top + 124, anchor: 'end' }],
      },
      { text: 'how far it', size: textSize.small, spots: [{ x: sheetWidth - 4, y: top - thick - 24, anchor: 'end' }] },
      { text: 'moves here', size: textSize.small, spots: [{ x: sheetWidth - 4, y: top - thick - 10, anchor: 'end' }] },
    ],
  });
  return finishPicture(
    {
      name: 'test-joint.svg',
      title: 'Loading a test corner',
      alt: `A corner glued like the frame’s, seen from the side. ${held} right up to the joint; the other leg stands out over the table’s edge with a bag of sand hung from it. The arm is measured from the inside of the clamped leg to the string, the movement at the string with a ruler, once without the bag and once with it.`,
    },
    top + 136,
    content,
  );
}
