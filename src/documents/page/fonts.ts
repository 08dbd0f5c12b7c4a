/**
 * The one place where documents take their fonts from: what is measured here is the very font that is printed.
 */
export { fontFaceCss } from '../../print/fonts.js';
export { measureText } from '../../print/measure.js';
