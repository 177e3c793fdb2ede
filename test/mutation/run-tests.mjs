import { createVitest } from 'vitest/node';
import { compiledCopy } from './compiled-copy.mjs';

/** The order in which files are handed over is the order in which they run. */
class AsGiven {
  sort(files) {
    return files;
  }
  shard(files) {
    return files;
  }
}

/** One run of the tests that stays open, so that only what a fault touches is read anew. */
export async function testsOpen(root) {
  const copy = compiledCopy(root);
  process.env['COMPILED_COPY'] = copy.folder;
  const open = () => createVitest('test', { root, config: 'test/mutation/vitest.config.ts', watch: false, bail: 1, maxWorkers: 1, silent: true, reporters: [{}], sequence: { sequencer: AsGiven } });
  let vitest = await open();

  /** Runs test files in the order given, until one fails: its name (and how many seconds each took), or `too long`. */
  async function run(files, { bail, seconds }) {
    const project = vitest.getRootProject();
    vitest.state.filesMap.clear();
    vitest.state.idMap.clear();
    vitest.config.bail = bail;
    const asked = vitest.runTestSpecifications(files.map((file) => project.createSpecification(file)));
    let timer;
    const late = new Promise((done) => { timer = setTimeout(() => done('late'), seconds * 1000); });
    const ended = await Promise.race([asked, late]);
    clearTimeout(timer);
    process.exitCode = 0;
    if (ended === 'late') {
      vitest.cancelCurrentRun('keyboard-input').catch(() => {});
      vitest.cancelCurrentRun('keyboard-input').catch(() => {});
      vitest = await open();
      return { failed: ['too long'], seconds: new Map() };
    }
    const modules = ended.testModules;
    const failed = modules.filter((one) => one.state() === 'failed').map((one) => one.moduleId);
    return {
      failed: failed.length === 0 && ended.unhandledErrors.length > 0 ? ['an error outside the tests'] : failed,
      seconds: new Map(modules.map((one) => [one.moduleId, (one.diagnostic().duration + one.diagnostic().collectDuration) / 1000])),
    };
  }

  return {
    files: async () => (await vitest.globTestSpecifications()).map((one) => one.moduleId).sort(),
    run,
    put: copy.put,
    close: async () => {
      await vitest.close();
      copy.remove();
    },
  };
}
