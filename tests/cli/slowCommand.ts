// The command around a planner that searches until it is stopped, as a program of its own. Started by signals.test.ts.
import { writeSync } from 'node:fs';
import { processSurroundings } from '../../src/cli/processSurroundings.ts';
import { run } from '../../src/cli/run.ts';
import { partsFor } from './fakes.ts';
import { samplePlan } from './samplePlan.ts';

const parts = partsFor({
  makePlan: async (_, { cancelled, pause }) => {
    // At once and past our own streams: the test waits for it before it sends a signal.
    writeSync(2, 'searching\n');
    while (!cancelled?.()) await pause?.();
    // A stubborn planner, so that a second signal finds it still at work.
    if (process.env.STUBBORN === '1') for (;;) await pause?.();
    return { ...samplePlan, stopped: 'cancelled' };
  },
  // Enough text that writing it takes a while.
  drawPlan: () => ['<svg/>'.padEnd(30_000_000, ' ')],
});

process.exitCode = await run(process.argv.slice(2), async () => parts, processSurroundings(0));
