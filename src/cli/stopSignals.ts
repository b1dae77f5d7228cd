// Ctrl-C and SIGTERM while a plan is being made: the first asks for the best plan so far, the second quits at once.
import type { Surroundings } from './surroundings.ts';

/** One press of Ctrl-C reaches us twice when npm passes it on as well; within this time it counts as one. */
const ONE_PRESS_MS = 300;

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** Signal numbers as POSIX shells report them: 128 plus the number. */
const EXIT_CODE = { SIGINT: 130, SIGTERM: 143 } as const;

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, Math.max(0, milliseconds)));
}

export function stopSignals(now: () => number, onAsked: () => void): Surroundings['stoppable'] {
  return async (work) => {
    let askedAtMs: number | undefined;
    const onSignal = (signal: NodeJS.Signals) => {
      if (askedAtMs === undefined) {
        askedAtMs = now();
        onAsked();
      } else if (now() - askedAtMs > ONE_PRESS_MS) {
        process.exit(signal === 'SIGTERM' ? EXIT_CODE.SIGTERM : EXIT_CODE.SIGINT);
      }
    };
    for (const signal of SIGNALS) process.on(signal, onSignal);
    try {
      return await work(() => askedAtMs !== undefined);
    } finally {
      // The same press may still arrive a second time. A process that is winding up would die of it and lose its exit code.
      if (askedAtMs !== undefined) await wait(askedAtMs + ONE_PRESS_MS - now());
      else for (const signal of SIGNALS) process.off(signal, onSignal);
    }
  };
}
