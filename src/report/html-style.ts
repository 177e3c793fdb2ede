/** The look of the page: plain, two schemes of colour with at least 7:1 contrast, one column on a phone, two on paper. */
export const pageStyle = `
:root { color-scheme: light dark; --ink: #1a1a1a; --paper: #ffffff; --soft: #4a4a4a; --rule: #8a8a8a; --panel: #f2f2f0; }
@media (prefers-color-scheme: dark) { :root { --ink: #ececec; --paper: #161616; --soft: #c4c4c4; --rule: #8a8a8a; --panel: #242424; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.45 system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif; overflow-wrap: break-word; }
header, main, footer { max-width: 46rem; margin: 0 auto; padding: 0 1rem; }
header { padding-top: 1rem; } footer { padding-bottom: 2rem; color: var(--soft); }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0.4rem 0; } h2 { font-size: 1.25rem; margin: 2rem 0 0.5rem; border-top: 2px solid var(--ink); padding-top: 0.4rem; } h3 { font-size: 1.05rem; margin: 1.2rem 0 0.3rem; }
p, ul, ol, blockquote { margin: 0.5rem 0; } ul, ol { padding-left: 1.4rem; } li { margin: 0.2rem 0; }
blockquote { border: 2px solid var(--ink); padding: 0.4rem 0.8rem; background: var(--panel); }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 0.3rem 1rem; } nav li { margin: 0; } nav a { display: inline-block; padding: 0.2rem 0; }
a { color: inherit; } a:focus-visible, .wide:focus-visible { outline: 3px solid currentColor; outline-offset: 2px; }
.wide { overflow-x: auto; margin: 0.6rem 0; }
table { border-collapse: collapse; width: 100%; font-size: 0.9rem; } th, td { border-bottom: 1px solid var(--rule); padding: 0.25rem 0.5rem 0.25rem 0; text-align: left; vertical-align: top; } thead > tr > * { border-bottom-width: 2px; } tbody th { font-weight: inherit; }
@media screen and (min-width: 36.01rem) { .many { min-width: 34rem; } } .blank { min-width: 5rem; }
@media screen and (max-width: 36rem) {
  .many thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); } .many, .many tbody { display: block; } .many tbody tr { display: flex; flex-wrap: wrap; gap: 0 1rem; border-bottom: 1px solid var(--rule); padding: 0.35rem 0; }
  .many tbody th, .many tbody td { border: 0; padding: 0; text-align: left; } .many tbody th { flex: 1 0 100%; font-weight: 600; } .many td:empty { display: none; } .many td[data-head]::before { content: attr(data-head) ': '; color: var(--soft); }
  td, tbody th { overflow-wrap: anywhere; }
}
.right { text-align: right; } td.right { white-space: nowrap; } .right + :not(.right) { padding-left: 0.5rem; }
figure { margin: 0.8rem 0; } figure svg { display: block; width: 100%; max-width: 32rem; height: auto; border: 1px solid var(--rule); background: #fff; }
@media screen { .paper { display: none; } }
@page { size: A4; margin: 7mm; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --soft: #222; --rule: #777; --panel: #fff; }
  body { font: 8pt/1.13 Arial, Helvetica, 'Liberation Sans', sans-serif; } header, main, footer { max-width: none; padding: 0; } nav, .screen { display: none; }
  main { columns: 2; column-gap: 5mm; }
  h1 { font-size: 12pt; margin: 0 0 1mm; } h2 { font-size: 9.5pt; margin: 1.7mm 0 0.4mm; padding-top: 0.5mm; border-top-width: 1.2pt; break-after: avoid; } section:first-child h2 { margin-top: 0; }
  h3 { font-size: 8.2pt; margin: 1mm 0 0.2mm; break-after: avoid; }
  p, ul, ol, blockquote, .wide, figure { margin: 0.5mm 0; } li { margin: 0; } ul { padding-left: 3mm; } ol { padding-left: 4.4mm; } blockquote { border-width: 1.2pt; padding: 0 1.5mm; }
  table { font-size: 8pt; } th, td { padding: 0.1mm 1mm 0.1mm 0; border-bottom-width: 0.5pt; } thead > tr > * { border-bottom-width: 1pt; } .right + :not(.right) { padding-left: 1.5mm; } td.blank { min-width: 18mm; } tr:has(.blank) > * { padding: 0.6mm 1mm 0.6mm 0; }
  .wide { overflow: visible; } tr, figure, blockquote, li { break-inside: avoid; } p, li { orphans: 2; widows: 2; }
  figure svg { border: 0; width: 80mm; max-width: 100%; margin: 0 auto -1mm; }
  .one main { columns: auto; } .one h2 { break-after: avoid; } .one figure svg { width: 100%; max-width: 170mm; } .pack main > section { break-before: page; } .pack section h2 { margin-top: 0; } thead { display: table-header-group; }
}
`.trim();

/** The same for pages that are printed on whatever paper there is. */
export const anyPaper = (style: string): string => style.replace('@page { size: A4; margin: 7mm; }', '@page { margin: 7mm; }');
