// The version of this program, from its package.json. Used by --version, plans and reports of faults.
import { readFileSync } from 'node:fs';

export function version(): string {
  const stated: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  if (typeof stated === 'object' && stated !== null && 'version' in stated && typeof stated.version === 'string')
    return stated.version;
  throw new Error('package.json names no version');
}
