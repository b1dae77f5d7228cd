// The version of the program that is measured, from its package.json. Plans carry it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { root } from '../planners/childProcess.ts';

export function programVersion(): string {
  return z.object({ version: z.string() }).parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))).version;
}
