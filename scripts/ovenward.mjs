#!/usr/bin/env node
// Starts the command: installs what is missing, builds what changed, then hands over to src/cli/main.ts.
import { existsSync } from 'node:fs';

/** The commands that open the store. */
const KEEPING = ['serve', 'post', 'backup'];

const isClone = existsSync(new URL('../src/', import.meta.url));
let installed = false;
if (isClone) {
  const { ready } = await import('./ready.mjs');
  installed = ready();
  if (KEEPING.includes(process.argv[2])) {
    const { readyStore } = await import('./readyStore.mjs');
    installed = readyStore() || installed;
  }
  const { build } = await import('./build.mjs');
  build();
}
const { main } = await import('../dist/program/main.js');
// Time limits count from the start of the process; the one install of a fresh clone is not the planner's time.
await main({ startedAtMs: installed ? performance.now() : 0 });
