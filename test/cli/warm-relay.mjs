// Between a test, which waits, and the process that keeps the command: asks it and wakes the test with its answer.
import { fork } from 'node:child_process';
import { workerData } from 'node:worker_threads';

const { port, flag, file, env } = workerData;
// compiled for speed as late as the tests themselves are: see vitest.config.ts
const child = fork(file, { stdio: 'ignore', env, execArgv: ['--interrupt-budget=500000'] });
const answer = (said) => {
  port.postMessage(said);
  Atomics.store(flag, 0, 1);
  Atomics.notify(flag, 0);
};
port.on('message', (asked) => child.send(asked));
child.on('message', answer);
child.on('exit', (code) => answer({ ended: code }));
