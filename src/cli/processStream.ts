// One of the process's own output streams, with broken pipes and full disks told apart. Used by processSurroundings.ts.
import type { WriteStream } from 'node:tty';
import type { Stream } from './surroundings.ts';

type Output = NodeJS.WritableStream & Partial<Pick<WriteStream, 'isTTY'>>;

/** NO_COLOR (any text but the empty one) and dumb terminals are respected; FORCE_COLOR turns colours on elsewhere. */
function hasColours(isTerminal: boolean, env: NodeJS.ProcessEnv): boolean {
  if (env.NO_COLOR) return false;
  if (env.FORCE_COLOR) return env.FORCE_COLOR !== '0';
  return isTerminal && env.TERM !== 'dumb';
}

export function processStream(output: Output, env: NodeJS.ProcessEnv): Stream {
  const isTerminal = output.isTTY === true;
  let pending = Promise.resolve();
  let isClosed = false;
  let hasFailed = false;
  output.on('error', (error: NodeJS.ErrnoException) => {
    isClosed = true;
    // Whoever read us has seen enough (as in `| head`): nothing more to say, and nothing went wrong.
    if (error.code !== 'EPIPE') hasFailed = true;
  });
  return {
    write(text) {
      if (isClosed) return;
      const written = new Promise<void>((resolve) => output.write(text, () => resolve()));
      pending = pending.then(() => written);
    },
    async settled() {
      await pending;
      // The error event comes after the callback of the write that failed.
      await new Promise((resolve) => setImmediate(resolve));
      return !hasFailed;
    },
    isTerminal,
    hasColours: hasColours(isTerminal, env),
  };
}
