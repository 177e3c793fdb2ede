import type { UnitSystem } from '../base/names.js';

/** The paper that a page in these units is printed on. */
export type Sheet = 'A4' | 'Letter';

/** The paper that is at hand where people measure so. */
export const sheetFor = (units: UnitSystem): Sheet => (units === 'inch' ? 'Letter' : 'A4');

/** A sheet by name, any sheet lying across for wide tables, or any sheet upright. */
export type Paper = Sheet | 'across' | 'any';

const sizes: Readonly<Record<Paper, string>> = {
  A4: 'size: A4; ',
  Letter: 'size: letter; ',
  across: 'size: landscape; ',
  any: '',
};

/**
 * The look on paper: black on white, no letter of a line under 9 pt; first the card of the bench on a sheet of its own,
 * in 10 pt.
 */
export const printStyle = (paper: Paper): string =>
  `
@page { ${sizes[paper]}margin: 7mm; }
@page across { size: landscape; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --soft: #222; --rule: #777; --panel: #fff; }
  body { font: 9.5pt/1.25 Arial, Helvetica, 'Liberation Sans', sans-serif; } header, main, footer { max-width: none; padding: 0; } header > *, section > *, details > *, footer > * { max-width: none; } nav, .screen { display: none; }
  h1 { font-size: 13pt; margin: 0 0 1mm; } h2 { font-size: 11.5pt; margin: 4mm 0 1mm; padding-top: 1mm; border-top-width: 1.2pt; break-after: avoid; } h3 { font-size: 10pt; margin: 2.5mm 0 0.5mm; break-after: avoid; }
  main > section:first-child blockquote { font-size: 11pt; }
  p, ul, ol, blockquote, .wide, figure { margin: 1mm 0; } li { margin: 0.3mm 0; } ul, ol { padding-left: 6mm; } blockquote { border-width: 1.2pt; padding: 0.5mm 2mm; }
  table { font-size: 9pt; } th, td { padding: 0.3mm 2mm 0.3mm 0; border-bottom-width: 0.5pt; } thead > tr > * { border-bottom-width: 1pt; } td.right { white-space: nowrap; } .right + :not(.right) { padding-left: 2mm; }
  td.blank { min-width: 34mm; border-bottom: 1pt solid #000; } tr:has(.blank) > * { padding: 1.6mm 2mm 0.6mm 0; vertical-align: bottom; } tr:has(.blank) > :last-child { white-space: nowrap; }
  pre { font-size: 9pt; padding: 1mm 2mm; white-space: pre-wrap; overflow-wrap: anywhere; }
  .wide { overflow: visible; } tr, figure, blockquote, li { break-inside: avoid; } p, li { orphans: 2; widows: 2; } thead { display: table-header-group; } main > section:last-child { break-inside: avoid; break-before: avoid; }
  li:nth-last-child(-n + 4), tbody > tr:nth-last-child(-n + 4) { break-before: avoid; } .wide:has(.blank) { break-inside: avoid; }
  section > figure { display: inline-block; vertical-align: top; margin-right: 4mm; }
  figure svg { border: 0; width: 102mm; max-width: 100%; max-height: none; }
  .beside { gap: 0 6mm; } .beside > figure { flex: 0 0 102mm; max-width: none; } .beside > .wide { flex: 1 1 80mm; } .beside td { overflow-wrap: anywhere; }
  .card { break-after: page; font-size: 10pt; line-height: 1.2; } .card h2 { margin: 0 0 1mm; border: 0; padding: 0; } .card table { font-size: 10pt; margin-top: 1mm; } .card th, .card td { padding-top: 0.2mm; padding-bottom: 0.2mm; } .card > p { margin: 0.5mm 0; }
  .drawn { display: flex; justify-content: space-between; align-items: stretch; } .drawn .column { flex: 0 0 77mm; } .drawn figure { margin: 0; } .drawn figure svg { width: 77mm; } .drawn:not(:has(ul)) { justify-content: flex-start; gap: 8mm; } .drawn:not(:has(ul)) figure svg { width: 85mm; } .drawn:not(:has(ul)) .column { flex-basis: 85mm; }
  .drawn ul { flex: 0 0 36mm; list-style: none; padding: 0; margin: 0; display: flex; flex-direction: column; } .drawn li { flex: 1; border-bottom: 1pt solid #000; margin: 0; }
  .table figure svg, .pack figure svg { width: 100%; max-width: 170mm; max-height: 180mm; } .pack main > section { break-before: page; } .pack nav { display: block; } .pack nav ul { display: block; columns: 2; } .pack nav a { padding: 1mm 0; text-decoration: none; } .pack section h2 { margin-top: 0; } .pack section:has(th:nth-child(8)) { page: across; }
}
`.trim();
