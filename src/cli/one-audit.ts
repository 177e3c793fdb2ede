import { addAudit } from './audit.js';
import { start } from './start.js';

/**
 * The command as far as an audit of one plan needs it: a program of half the size is ready in half the time. It starts
 * where `audit` was typed; what else a class needs is in the whole program, which then starts instead.
 */
start({ audit: addAudit });
