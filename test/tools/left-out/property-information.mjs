// Stands in for the lists of names of attributes in the page: those that the engine's pages have. Drawings do not come this way.
import { find as findAny } from '../../../node_modules/property-information/lib/find.js';
import { create } from '../../../node_modules/property-information/lib/util/create.js';
import { number, spaceSeparated } from '../../../node_modules/property-information/lib/util/types.js';

export const html = create({
  space: 'html',
  attributes: { arialabel: 'aria-label', arialabelledby: 'aria-labelledby', classname: 'class', httpequiv: 'http-equiv' },
  transform: (attributes, property) => attributes[property.toLowerCase()] ?? property.toLowerCase(),
  properties: {
    align: null, alt: null, ariaLabel: null, ariaLabelledBy: spaceSeparated, charSet: null, className: spaceSeparated, colSpan: null, content: null, href: null, httpEquiv: spaceSeparated, id: null,
    lang: null, name: null, role: null, scope: null, src: null, start: number, tabIndex: number, title: null,
  },
});

export const svg = html;

/** What is known of an attribute. One that the list above lacks has to be put there. */
export function find(schema, name) {
  if (schema === html && !(name.toLowerCase() in schema.normal) && !/^data/.test(name)) throw new Error(`the page's writer does not know the attribute ${name}`);
  return findAny(schema, name);
}
