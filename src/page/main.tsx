import { startWorker } from './engine/worker.js';
import { startPage } from './start.js';

// The same script is the page and, without a document, the engine in its worker.
if (typeof document === 'undefined') startWorker(globalThis as never);
else startPage(document);
