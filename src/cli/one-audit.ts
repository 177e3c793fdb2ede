import { addAudit } from './audit.js';
import { runAudit } from './audit-run.js';
import { start } from './start.js';

/**
 * The command as far as an audit of one plan needs it: a program of half the size, in one piece, is ready in half the
 * time. It starts where `audit` was typed; what more an audit can be is in the whole program, which then starts instead.
 */
start({ audit: (program) => addAudit(program, async () => runAudit) });
