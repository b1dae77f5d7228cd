// Where the store is kept when nobody says: the folder for data of the XDG Base Directory Specification 0.8. Used by `serve`, `post`, `backup`.
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import type { Environment } from './setting.ts';

/** A path in XDG_DATA_HOME that is not absolute is to be ignored (section 2, "Basics"). */
export function storeFile(env: Environment): string {
  const named = env.XDG_DATA_HOME ?? '';
  const data = isAbsolute(named) ? named : join(homedir(), '.local/share');
  return join(data, 'ovenward', 'ovenward.db');
}
