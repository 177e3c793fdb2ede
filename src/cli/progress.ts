import type { SingleBar } from 'cli-progress';
import { exitCode } from './exit.js';
import { warn } from './terminal.js';

/** Tells how far a long piece of work has come. */
export interface Progress {
  /** One step is done. Resolves when the terminal has been heard, so that Ctrl-C is felt in the middle of the work. */
  step(): Promise<void>;
  end(): void;
}

/** Shorter work than this needs no bar; without a terminal a line comes this often, ms. */
const short_ms = 700;
const line_ms = 5000;
/** Columns kept free beside the bar: its blanks, and a time left that has one figure more. */
const spare = 4;
/** How often the work pauses to hear the terminal, ms. */
const breath_ms = 100;

/**
 * Progress on stderr for work of many steps, only once it has taken a while: a bar on a terminal, which it leaves as it
 * was, also when it is broken off; elsewhere a line every few seconds. Where the total is a `bound` that is rarely
 * reached, no time is told.
 */
export function progress(total: number, what: string, bound = false): Progress {
  const started = performance.now();
  const terminal = process.stderr.isTTY === true && process.env['TERM'] !== 'dumb';
  let [done, heard_ms, told_ms] = [0, started, started];
  let bar: SingleBar | null = null;
  const breakOff = (): void => {
    bar?.stop();
    process.exit(exitCode.interrupted);
  };
  process.on('SIGINT', breakOff);
  const left = (now_ms: number): string =>
    bound ? 'at most' : `about ${Math.ceil((((now_ms - started) / done) * (total - done)) / 1000)} s left`;
  const show = async (now_ms: number): Promise<void> => {
    if (!terminal) {
      if (now_ms - told_ms > line_ms) warn(`${done} of ${total} ${what}, ${left(now_ms)}`);
      if (now_ms - told_ms > line_ms) told_ms = now_ms;
      return;
    }
    if (bar === null && now_ms - started > short_ms && total > 1) {
      const { SingleBar: Bar, Presets } = (await import('cli-progress')).default;
      const format = `{bar} {value} of {total} ${what}, {left}`;
      // The bar takes what the words leave, also when the count has all its figures.
      const beside = `${total} of ${total} ${what}, ${left(now_ms)}`.length + spare;
      const barsize = Math.max(5, Math.min(40, (process.stderr.columns || 80) - beside));
      bar = new Bar(
        { format, barsize, stream: process.stderr, clearOnComplete: true, linewrap: true },
        Presets.shades_classic,
      );
      bar.start(total, done, { left: left(now_ms) });
    }
    bar?.update(done, { left: left(now_ms) });
  };
  return {
    step: async () => {
      done += 1;
      const now_ms = performance.now();
      if (now_ms - heard_ms < breath_ms) return;
      heard_ms = now_ms;
      await show(now_ms);
      await new Promise((resolve) => setImmediate(resolve));
    },
    end: () => {
      bar?.stop();
      process.off('SIGINT', breakOff);
    },
  };
}
