import type { Applied } from '../../src/findings/applied.js';

/** A ruleset made up for tests that relaxes nothing. */
export const trial: Applied = { name: 'Trial', version: null, date: null, fingerprint: '0a1b2c3d', switched_off: [], loosened: [], replaced: [] };
