// Stands in for the quick way to write Markdown: in the page the library writes all of it, when somebody saves a report; the same bytes, as a law holds.
export const isPlain = () => false;
export const plainMarkdown = () => null;
