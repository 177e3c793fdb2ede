// Stands in for the writers of what no report has: code, references, footnotes, and HTML with tags left out. One that is called all the same says so.
function notWritten() {
  throw new Error('the page has no writer for this: see test/tools/page-template.mjs');
}
export { notWritten as closing, notWritten as code, notWritten as definition, notWritten as footnoteReference, notWritten as imageReference, notWritten as inlineCode, notWritten as linkReference, notWritten as opening };
/** Notes at the foot of a page: none. */
export const footer = () => undefined;
