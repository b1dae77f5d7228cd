// The compiled core is what its source compiles to: whoever changes the one and forgets the other hears of it here.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { compiledCore } from '../../../scripts/compileCore.mjs';

test('the core that is loaded is the one in the sources', { timeout: 120_000 }, async () => {
  const { path, content } = await compiledCore();
  expect(readFileSync(path, 'utf8') === content, 'run `npm run core`').toBe(true);
});
