// Bundles the page into one HTML file that waits for its data: script and style inside, a policy that lets nothing else run and nothing be fetched.
import { build } from 'esbuild';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { minifySync } from 'oxc-minify';
import { leftOut, usedByNeither } from './stand-ins.mjs';
import { madeBy } from '../../dist/lib/report/made-by.js';
import { pageStyle } from '../../dist/lib/report/html-style.js';

const common = { bundle: true, minify: true, write: false, logLevel: 'warning', legalComments: 'none', charset: 'utf8', target: ['chrome111', 'firefox115', 'safari16.4'] };
/** Our own parts that the page has no use for: which file, imported by which, and what stands in for it. */
const notHere = [
  ['/measured.js', '/compose.ts', 'measured-section'],
  ['/tool-findings.js', '/audit.ts', 'tool-findings'],
  ['/plain-markdown.js', '/markdown.ts', 'plain-markdown'],
];
/** Our own files are pure: one of which nothing is used is left out whole, whatever it works out for itself on the way. */
const onlyWhatIsUsed = {
  name: 'only what is used',
  setup: ({ onResolve }) => onResolve({ filter: /^\.{1,2}\/.*\.js$/ }, ({ importer, path }) => {
    if (!importer.startsWith(resolve('src'))) return undefined;
    const instead = notHere.find(([file, by]) => path.endsWith(file) && importer.endsWith(by))?.[2];
    if (instead !== undefined) return { path: resolve(leftOut(instead)) };
    const file = ['.ts', '.tsx'].map((ending) => resolve(dirname(importer), path.replace(/\.js$/, ending))).find(existsSync);
    return file === undefined ? undefined : { path: file, sideEffects: false };
  }),
};
/** Parts of libraries that nothing here reaches: which files, of what, and what stands in for them. */
const unreached = [
  [/\/yaml-1\.1\/|\/json\/schema\.js$/, /\/yaml\//, 'older-yaml'],
  [/\/(?:cst-visit|applyReviver)\.js$/, /\/yaml\//, 'yaml-unreached'],
  [/\/(?:code|definition|(?:footnote|image|link)-reference|inline-code|footer)\.js$/, /\/mdast-util-to-(?:markdown|hast)\/lib\//, 'not-written'],
  [/\/(?:closing|opening)\.js$/, /\/hast-util-to-html\/lib\//, 'not-written'],
  [/\/(?:engine-default-operator-decorators|operator-decorator)$/, /\/json-rules-engine\//, 'operator-decorators'],
];
const onlyWhatIsReached = {
  name: 'only what is reached',
  setup: ({ onResolve }) => onResolve({ filter: /^\.{1,2}\// }, ({ importer, path }) => {
    const instead = unreached.find(([file, library]) => file.test(path) && library.test(importer))?.[2];
    return instead === undefined ? undefined : { path: resolve(leftOut(instead)) };
  }),
};
/** What `src/rules/judge/engine.ts` never asks of the rule engine: to change rules and operators, to stop, to fill in events, and to write itself out. */
const unasked = /\{\n    key: '(?:updateRule|removeRule|setCondition|removeCondition|removeOperator|addOperatorDecorator|removeOperatorDecorator|removeFact|toJSON|getEvent|getPriority|getConditions|getEngine|addRuntimeFact|_addConstantFact|stop|isDynamic|resolveEventParams)',\n[^]*?\n  \}(?:, (?=\{)|(?=\]))/g;
/** The rule engine says at every step what it does, to nobody: these calls go, and the methods that nobody calls. */
let unaskedFound = 0;
const quietEngine = {
  name: 'quiet engine',
  setup: ({ onLoad }) => onLoad({ filter: /\/json-rules-engine\/dist\/[\w-]+\.js$/ }, ({ path }) => {
    const text = readFileSync(path, 'utf8');
    unaskedFound += text.match(unasked)?.length ?? 0;
    return { contents: text.replace(unasked, '').replaceAll('(0, _debug2.default)(', '/* @__PURE__ */ $&') };
  }),
};
/** What the page never asks of a YAML document: copies, additions and aliases, and a visit that waits. */
const unaskedOfYaml = /^    (?:clone|addIn|createAlias|hasIn|streamInfo)\([^]*?^    \}\n|^visitAsync\..*$/gm;
const quietYaml = {
  name: 'quiet YAML',
  setup: ({ onLoad }) => onLoad({ filter: /\/yaml\/browser\/dist\/(?:compose\/composer|doc\/(?:Document|directives)|nodes\/(?:Collection|Node|Pair)|schema\/Schema|visit)\.js$/ }, ({ path }) => {
    const text = readFileSync(path, 'utf8');
    unaskedFound += text.match(unaskedOfYaml)?.length ?? 0;
    return { contents: text.replace(unaskedOfYaml, '') };
  }),
};
let [script] = (await build({
  ...common, entryPoints: ['src/page/main.tsx'], platform: 'browser', format: 'iife', plugins: [onlyWhatIsReached, onlyWhatIsUsed, quietEngine, quietYaml], jsx: 'automatic', jsxImportSource: 'preact',
  define: { 'window.ResizeObserver': 'globalThis.ResizeObserver' },
  alias: {
    ...usedByNeither, '@ungap/structured-clone': leftOut('structured-clone'), 'character-entities-html4': leftOut('named-entities'), 'character-entities-legacy': leftOut('named-entities'), 'property-information': leftOut('property-information'),
  },
})).outputFiles.map(({ text }) => text);
if (unaskedFound !== 38) throw new Error(`the rule engine or YAML's documents have other methods than they had: ${unaskedFound}`);
const [style] = (await build({ ...common, entryPoints: ['src/page/style/page.css'] })).outputFiles.map(({ text }) => text.trim());
// The editor's templates carry styles of their own, which the policy forbids: they stand in `src/page/style/text.css`.
const ownStyles = [
  ['<div style=position:absolute;top:0;opacity:0;padding-inline-end:inherit>', '<div class=pce-place>'],
  [' style=z-index:5;top:auto;display:flex;overflow-x:clip>', '>'],
  ['<div style="color:#0000;contain:strict;padding:0 var(--_pse) 0 var(--padding-left)" ', '<div class=pce-stops '],
];
for (const [written, instead] of ownStyles) {
  if (!script.includes(written)) throw new Error(`the editor has no ${written} any more`);
  script = script.replaceAll(written, instead);
}
// A second look at the whole bundle takes off another thirtieth. It may drop no read of a property: signals are listened to by being read.
const minified = minifySync('page.js', script, { compress: { target: 'es2022' }, mangle: { toplevel: true } });
if (minified.errors.length > 0) throw new Error(minified.errors.map(({ message }) => message).join('\n'));
script = minified.code.trim().replaceAll('<!--', '<\\x21--');
if (/<[a-z][^<>]* style=/.test(script)) throw new Error('a template carries a style that the policy forbids');
for (const text of [script, style]) if (/<\/(?:script|style)|<!--|\r/i.test(text)) throw new Error('the bundle would end its own element');

const hash = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const policy = [
  "default-src 'none'", `script-src ${hash(script)}`, 'worker-src blob:', `style-src ${hash(style)} ${['A4', 'Letter', 'any', 'across'].map((sheet) => hash(pageStyle(sheet))).join(' ')}`, 'img-src data:', "base-uri 'none'", "form-action 'none'",
].join('; ');
const icon = `data:image/svg+xml,${encodeURIComponent('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="none" stroke="#8a5a2b" stroke-width="3" d="M2.5 2.5h11v11h-11z"/></svg>')}`;

writeFileSync('dist/page.html', `<!doctype html><!-- ${madeBy} --><html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="referrer" content="no-referrer">
<link rel="icon" href="${icon}">
<title>sightdown: a frame, looked at before it is cut</title>
<style>${style}</style>
</head>
<body>
<div id="page"><noscript>This page checks a planned frame with a program inside it. Let it run scripts: it asks nothing of any network.</noscript></div>
<script type="application/json" id="data">@data@</script>
<script id="script">${script}</script>
</body>
</html>
`);
