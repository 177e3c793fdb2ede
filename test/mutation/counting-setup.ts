import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';

/**
 * Notes which places of faults a test file reached, a file of ones and zeros for each; only while places are counted.
 */
const folder = process.env['FAULTS_REACHED'];
if (folder !== undefined && folder !== '') {
  const reached = new Uint8Array(Number(process.env['FAULTS_COUNT']));
  (globalThis as { faultsReached?: Uint8Array }).faultsReached = reached;
  afterAll(() => {
    const file = expect.getState().testPath;
    if (file !== undefined) writeFileSync(join(folder, `${file.replace(/[^\w]/gu, '_')}.reached`), reached);
  });
}
