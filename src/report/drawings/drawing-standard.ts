/**
 * The drawing standard: one sheet width, three line weights, two text sizes, black ink on a white panel, so it prints
 * in black and white.
 */

/** Width of every sheet in its own units; the smallest phone shows it 360 px wide, edge to edge. */
export const sheetWidth = 400;

/** Black. */
export const ink = '#111';
/** For lines that matter less; 7:1 against white. */
export const softInk = '#555';
/** Face of wood. */
export const woodFill = '#efefef';
/** Wood that is added behind: braces, crossbars. */
export const darkerFill = '#d9d9d9';

/** Paper behind everything, the edge around letters, and what is thrown away or left over. */
export const paperFill = '#fff';

/**
 * What each colour of a picture becomes on a page that is dark; every pair keeps at least the contrast it has on white
 * to 4.5:1.
 */
export const inTheDark: Readonly<Record<string, string>> = {
  [ink]: '#ececec',
  [softInk]: '#cacaca',
  [woodFill]: '#343434',
  [darkerFill]: '#4c4c4c',
  [paperFill]: '#161616',
};

/** Line weights: edges one sees; edges behind and hatching; dimension lines. */
export const weight = { edge: 1.6, bold: 2.8, thin: 0.8, dimension: 0.7 } as const;

/** Dashes: hidden edges, fold lines, centre lines. */
export const dash = { hidden: '5 3', fold: '8 4', centre: '12 3 2 3' } as const;

/** Text sizes in sheet units: at the 352 px that a sheet is wide on the smallest phone, or wider, 11 px or more. */
export const textSize = { plain: 13.5, small: 12.5 } as const;

/** Fonts that phones, desktops and printers have; nothing is fetched. */
export const typeface = "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif";

/** Distance from the outline to the first dimension line, and between dimension lines. */
export const dimensionGap = { first: 20, next: 20 } as const;
