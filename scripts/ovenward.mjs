#!/usr/bin/env node
// Starts the command: installs what is missing, builds what changed, then hands over to src/cli/main.ts.
import { existsSync } from 'node:fs';

/** The commands that open the store. */
const KEEPING = ['serve', 'post', 'backup'];

const isClone = existsSync(new URL('../src/', import.meta.url));
let isPrepared = false;
if (isClone) {
  const { ready } = await import('./ready.mjs');
  isPrepared = ready();
  if (KEEPING.includes(process.argv[2])) {
    const { readyStore } = await import('./readyStore.mjs');
    isPrepared = readyStore() || isPrepared;
  }
  const { build } = await import('./build.mjs');
  isPrepared = build() || isPrepared;
}
const { main } = await import('../dist/program/main.js');
// Time limits count from the start of the process; installing and building, once in a changed clone, are not the planner's time.
await main({ startedAtMs: isPrepared ? performance.now() : 0 });
