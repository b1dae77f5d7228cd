// Each compiled core is what its source compiles to: whoever changes the one and forgets the other hears of it here.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CORES, compiledCore } from '../../scripts/compileCore.mjs';

test.each(CORES)('the core of %s that is loaded is the one in the sources', { timeout: 120_000 }, async (folder) => {
  const { path, content } = await compiledCore(folder);
  expect(readFileSync(path, 'utf8') === content, 'run `npm run core`').toBe(true);
});
