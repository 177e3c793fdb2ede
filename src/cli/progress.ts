import type { SingleBar } from 'cli-progress';

/** Tells how far a long piece of work has come. */
export interface Progress {
  step(): void;
  end(): void;
}

/** Shorter work than this needs no bar, ms. */
const short_ms = 700;

const silent: Progress = { step: () => undefined, end: () => undefined };

/** A bar on stderr for work of many steps, only on a terminal and only once it has taken a while; it leaves nothing behind. */
export async function progress(total: number, what: string): Promise<Progress> {
  if (process.stderr.isTTY !== true || total < 2) return silent;
  const { SingleBar, Presets } = (await import('cli-progress')).default;
  const started = performance.now();
  let bar: SingleBar | null = null;
  let done = 0;
  return {
    step: () => {
      done += 1;
      if (bar === null && performance.now() - started > short_ms) {
        bar = new SingleBar({ format: `{bar} {value} of {total} ${what}, {eta} s left`, stream: process.stderr, hideCursor: true, clearOnComplete: true }, Presets.shades_classic);
        bar.start(total, done);
      }
      bar?.update(done);
    },
    end: () => bar?.stop(),
  };
}
