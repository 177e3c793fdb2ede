import { inTheDark } from './drawings/drawing-standard.js';
import { printStyle, type Paper } from './html-print.js';

export type { Sheet } from './html-print.js';

/** Pictures are drawn in ink on white; on a dark screen each of their colours gives way to its counterpart. */
const darkPictures = Object.entries(inTheDark)
  .map(
    ([light, dark]) =>
      `figure svg [fill="${light}"] { fill: ${dark}; } figure svg [stroke="${light}"] { stroke: ${dark}; }`,
  )
  .join(' ');

/**
 * The look on a screen: plain, two schemes of colour with at least 7:1 contrast, one column on a phone, pictures beside
 * tables where there is room.
 */
export const screenStyle = `
:root { color-scheme: light dark; --ink: #1a1a1a; --paper: #ffffff; --soft: #4a4a4a; --rule: #8a8a8a; --panel: #f2f2f0; }
@media (prefers-color-scheme: dark) { :root { --ink: #ececec; --paper: #161616; --soft: #c4c4c4; --rule: #8a8a8a; --panel: #242424; } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.45 system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif; overflow-wrap: break-word; }
header, main, footer { max-width: 72rem; margin: 0 auto; padding: 0 1rem; } section > *, details > *, footer > * { max-width: 46rem; } section > .beside, .table section > .wide, .pack section > .wide { max-width: none; } header > * { max-width: 46rem; }
header { padding-top: 0.6rem; } footer { padding-bottom: 2rem; color: var(--soft); }
h1 { font-size: 1.4rem; line-height: 1.2; margin: 0.3rem 0; } h2 { font-size: 1.25rem; margin: 2rem 0 0.5rem; border-top: 2px solid var(--ink); padding-top: 0.4rem; } h3 { font-size: 1.05rem; margin: 1.2rem 0 0.3rem; }
main > section:first-child h2 { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); margin: 0; }
main > section:first-child blockquote { font-size: 1.15rem; line-height: 1.35; }
p, ul, ol, blockquote { margin: 0.5rem 0; } ul, ol { padding-left: 1.4rem; } li { margin: 0.2rem 0; }
blockquote { border: 2px solid var(--ink); padding: 0.4rem 0.8rem; background: var(--panel); } blockquote p { margin: 0.2rem 0; }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 0.3rem 1rem; } nav li { margin: 0; } nav a { display: inline-block; padding: 0.2rem 0; }
a { color: inherit; } a:focus-visible, .wide:focus-visible, summary:focus-visible { outline: 3px solid currentColor; outline-offset: 2px; }
details { border-top: 2px solid var(--ink); margin-top: 1rem; } summary { cursor: pointer; padding: 0.5rem 0; } summary h2 { display: inline; border: 0; margin: 0; padding: 0; }
.beside { display: flex; flex-wrap: wrap; gap: 0 1rem; align-items: flex-start; } .beside > * { flex: 1 1 19rem; min-width: 0; } .beside > figure { max-width: 26rem; }
.wide { overflow-x: auto; margin: 0.6rem 0; }
table { border-collapse: collapse; width: 100%; font-size: 0.9rem; } th, td { border-bottom: 1px solid var(--rule); padding: 0.25rem 0.5rem 0.25rem 0; text-align: left; vertical-align: top; } thead > tr > * { border-bottom-width: 2px; } tbody th { font-weight: inherit; } thead th:only-of-type { white-space: nowrap; }
figure { margin: 0.8rem 0; } figure svg { display: block; width: 100%; max-width: 32rem; height: auto; border: 1px solid var(--rule); background: #fff; }
@media screen and (min-width: 36.01rem) { .many { min-width: 34rem; } td.right { white-space: nowrap; } .right + :not(.right) { padding-left: 0.5rem; } } .blank { min-width: 5rem; }
@media screen and (max-width: 36rem) {
  .many thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); } .many, .many tbody { display: block; } .many tbody tr { display: flex; flex-wrap: wrap; gap: 0 1rem; border-bottom: 1px solid var(--rule); padding: 0.35rem 0; }
  .many tbody th, .many tbody td { border: 0; padding: 0; text-align: left; } .many tbody th { flex: 1 0 100%; font-weight: 600; } .many td:empty { display: none; } .many td[data-head]::before { content: attr(data-head) ': '; color: var(--soft); }
  td, tbody th { overflow-wrap: anywhere; }
  figure { margin-left: -1rem; margin-right: -1rem; } figure svg { border-width: 1px 0; }
}
.right { text-align: right; }
pre { overflow-x: auto; border: 1px solid var(--rule); padding: 0.4rem 0.8rem; font-size: 0.85rem; line-height: 1.35; }
@media screen { .paper, .card { display: none; } }
@media screen and (prefers-color-scheme: dark) { figure svg { background: none; } ${darkPictures} }
`.trim();

/** The whole style of a page that is printed on such paper. */
export const pageStyle = (paper: Paper): string => `${screenStyle}\n${printStyle(paper)}`;
