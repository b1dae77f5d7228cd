// Tests mirror src. Chromium is looked up here too, so that `npx vitest run tests/draw` works like `npm test`.
import { defineConfig } from 'vitest/config';
import { findChromium } from './scripts/chromium.mjs';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    env: { CHROMIUM: findChromium() ?? '' },
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // A test that started a program waits for it; two files at a time leave the machine room to keep time limits.
    maxWorkers: 2,
  },
});
