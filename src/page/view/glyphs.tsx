import type { ComponentChildren } from 'preact';

/** A small line drawing beside a choice; its words stand next to it, so it says nothing to a screen reader. */
const Glyph = ({ children }: { readonly children: ComponentChildren }) => (
  <svg class="glyph" viewBox="0 0 48 32" width="48" height="32" aria-hidden="true" focusable="false">
    {children}
  </svg>
);

/** A board in section: wide and low when it lies flat, narrow and high on edge. The dashed line is the cloth. */
const section = (boards: readonly (readonly [x: number, y: number, w: number, h: number])[]) => (
  <Glyph>
    <path class="cloth" d="M6 5H42" />
    {boards.map(([x, y, w, h]) => (
      <rect key={`${x} ${y}`} class="wood" x={x} y={y} width={w} height={h} />
    ))}
  </Glyph>
);

const sideBySide = (n: number) =>
  section(
    Array.from({ length: n }, (_, i): readonly [number, number, number, number] => [24 - n * 3.5 + i * 7, 8, 7, 18]),
  );

/** A corner seen from the front, with what is cut or put there. */
const corner = (more: ComponentChildren) => (
  <Glyph>
    <path class="wood" d="M8 4H40V12H16V29H8Z" />
    {more}
  </Glyph>
);

const hung = (more: ComponentChildren) => (
  <Glyph>
    <rect class="wood" x="10" y="10" width="28" height="20" />
    <rect class="paper" x="13" y="13" width="22" height="14" />
    {more}
  </Glyph>
);

/**
 * The drawing of a choice, by `path choice`; none where words say it as well. Each is made anew where it is shown: an
 * element made once and shown again keeps the page around its last place alive, and that the one before it.
 */
export const glyphs: Readonly<Record<string, () => ComponentChildren>> = {
  'bars.lay flat': () => section([[14, 9, 20, 9]]),
  'bars.lay edge': () => section([[20, 8, 9, 20]]),
  'bars.plies 1': () => sideBySide(1),
  'bars.plies 2': () => sideBySide(2),
  'bars.plies 3': () => sideBySide(3),
  'bars.plies 4': () => sideBySide(4),
  'bars.stack side-by-side': () =>
    section([
      [15, 8, 8, 18],
      [24, 8, 8, 18],
    ]),
  'bars.stack front-to-back': () =>
    section([
      [14, 8, 20, 8],
      [14, 17, 20, 8],
    ]),
  'corners.cut mitre': () => corner(<path class="line" d="M8 4L16 12" />),
  'corners.cut butt': () => corner(<path class="line" d="M8 12H16" />),
  'corners.cut half-lap': () => corner(<path class="line" d="M8 12H16M16 4V12" stroke-dasharray="2 2" />),
  'corners.cut keyed': () =>
    corner(
      <>
        <path class="line" d="M8 4L16 12" />
        <path class="dark" d="M14 14L24 12L16 20Z" />
      </>,
    ),
  'corners.brace.kind none': () => corner(null),
  'corners.brace.kind timber': () => corner(<path class="dark" d="M16 26L34 12H40L16 30Z" />),
  'corners.brace.kind ply-gusset': () => corner(<path class="dark" d="M12 8H34L12 27Z" opacity="0.7" />),
  'corners.brace.kind steel-angle': () => corner(<path class="line" stroke-width="3" d="M32 8H12V24" />),
  'hang.by wire': () => hung(<path class="line" d="M13 16L24 6L35 16" />),
  'hang.by two-hooks': () => hung(<path class="line" d="M17 6V10M31 6V10" stroke-width="3" />),
  'hang.by d-rings': () =>
    hung(
      <>
        <circle class="line" cx="16" cy="9" r="3" />
        <circle class="line" cx="32" cy="9" r="3" />
      </>,
    ),
  'hang.by cleat': () => hung(<path class="dark" d="M15 6H33L30 10H18Z" />),
  'hang.by none': () => hung(null),
};

/** The shape of a verdict, as reports and the terminal have it (● ▲ ◆ ✕): told apart without colour. */
export function VerdictShape({ verdict }: { readonly verdict: string }) {
  const shapes: Readonly<Record<string, ComponentChildren>> = {
    clear: <circle class="full" cx="16" cy="16" r="12" />,
    caution: <path class="full" d="M16 4L29 28H3Z" />,
    unknown: <path class="full" d="M16 3L29 16L16 29L3 16Z" />,
    stop: <path class="mark" d="M5 5L27 27M27 5L5 27" />,
  };
  return (
    <svg class={`shape ${verdict}`} viewBox="0 0 32 32" width="32" height="32" aria-hidden="true" focusable="false">
      {shapes[verdict] ?? <rect x="4" y="4" width="24" height="24" rx="3" stroke-dasharray="4 3" />}
    </svg>
  );
}
