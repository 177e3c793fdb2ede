// Stands in the bundled command for the SHA-256 that the library brings along for browsers: Node has its own, which
// need not be compiled first.
import { createHash } from 'node:crypto';

export const sha256 = (bytes) => createHash('sha256').update(bytes).digest();
