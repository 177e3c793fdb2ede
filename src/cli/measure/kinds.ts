export { joint } from './joint.js';
export { sag } from './sag.js';
export { twist } from './twist.js';
export { spread } from './spread.js';
export { tap, push } from './pull.js';
