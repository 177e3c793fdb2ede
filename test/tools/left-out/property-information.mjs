// Stands in for the list of names of attributes in the page: drawings say attributes by their SVG names already, so that the long list of SVG's changes none of them.
import { aria } from '../../../node_modules/property-information/lib/aria.js';
import { html as onlyHtml } from '../../../node_modules/property-information/lib/html.js';
import { merge } from '../../../node_modules/property-information/lib/util/merge.js';
import { xlink } from '../../../node_modules/property-information/lib/xlink.js';
import { xml } from '../../../node_modules/property-information/lib/xml.js';
import { xmlns } from '../../../node_modules/property-information/lib/xmlns.js';

export { find } from '../../../node_modules/property-information/lib/find.js';
export const html = merge([aria, onlyHtml, xlink, xmlns, xml], 'html');
export const svg = merge([aria, xlink, xmlns, xml], 'svg');
