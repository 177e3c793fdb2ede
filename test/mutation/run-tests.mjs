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
  /** A worker that a fault kills ends nothing any more, which counts as caught in a loop. */
  process.on('uncaughtException', (error) => {
    if (!/^Worker exited/u.test(error.message)) throw error;
  });
  /** When a test file last ended: a worker that ends none for too long is caught in a loop. */
  let ended = 0;
  const reporter = {
    onTestModuleEnd: () => {
      ended = Date.now();
    },
  };
  const open = (settings = {}) =>
    createVitest('test', {
      root,
      config: 'test/mutation/vitest.config.ts',
      watch: false,
      bail: 1,
      maxWorkers: 1,
      silent: true,
      reporters: [reporter],
      sequence: { sequencer: AsGiven },
      ...settings,
    });
  let vitest = await open();

  /**
   * Runs test files in the order given, until one fails: which (and how many seconds each took), or `too long` where
   * no file ends within so many seconds.
   */
  async function run(files, { bail, seconds, on = vitest }) {
    const project = on.getRootProject();
    on.state.filesMap.clear();
    on.state.idMap.clear();
    on.config.bail = bail;
    ended = Date.now();
    const asked = on.runTestSpecifications(files.map((file) => project.createSpecification(file)));
    let timer;
    const late = new Promise((done) => {
      timer = setInterval(() => {
        if (Date.now() - ended > seconds * 1000) done('late');
      }, 500);
    });
    const outcome = await Promise.race([asked, late]);
    clearInterval(timer);
    process.exitCode = 0;
    if (outcome === 'late') {
      vitest.cancelCurrentRun('keyboard-input').catch(() => {});
      vitest.cancelCurrentRun('keyboard-input').catch(() => {});
      vitest = await open();
      return { failed: ['too long'], seconds: new Map() };
    }
    const modules = outcome.testModules;
    const failed = modules.filter((one) => one.state() === 'failed').map((one) => one.moduleId);
    return {
      failed: failed.length === 0 && outcome.unhandledErrors.length > 0 ? ['an error outside the tests'] : failed,
      seconds: new Map(
        modules.map((one) => [one.moduleId, (one.diagnostic().duration + one.diagnostic().collectDuration) / 1000]),
      ),
    };
  }

  const filesWhere = async (wanted) =>
    (await vitest.globTestSpecifications())
      .map((one) => one.moduleId)
      .filter(wanted)
      .sort();
  const storesOutputs = (file) => /\.(golden\.test|check)\.ts$/.test(file);
  return {
    /**
     * The test files that say why; and those that compare with stored outputs, which say only that something changed.
     */
    files: () => filesWhere((file) => !storesOutputs(file)),
    examples: () => filesWhere((file) => storesOutputs(file) && !/\/(class|timetable)\//.test(file)),
    run,
    put: copy.put,
    /**
     * Runs test files once without a fault, each in a worker of its own, two at a time, so that each says for itself
     * which places it reached.
     */
    async counting(files, faults, folder) {
      Object.assign(process.env, { FAULTS_REACHED: folder, FAULTS_COUNT: String(faults.length) });
      copy.count(faults, true);
      const alone = await open({ isolate: true, maxWorkers: 2 });
      const outcome = await run(files, { bail: 0, seconds: 600, on: alone });
      await alone.close();
      copy.count(faults, false);
      process.env['FAULTS_REACHED'] = '';
      return outcome;
    },
    close: async () => {
      await vitest.close();
      copy.remove();
    },
  };
}
