// The version of this program, from its package.json. Used by --version and by reports of faults.
import { readFileSync } from 'node:fs';
import { z } from 'zod';

export function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return z.object({ version: z.string() }).parse(JSON.parse(text)).version;
}
