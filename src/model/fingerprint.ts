// A scenario's fingerprint: what a plan carries to say which scenario it was made for. Used by planning and by the judge.
import { createHash } from 'node:crypto';
import type { Scenario } from './scenario.ts';

/** JSON with sorted keys and nothing undefined, so that equal scenarios give equal text however they were written. */
function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const parts = Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, part]) => `${JSON.stringify(key)}:${canonicalJson(part)}`);
  return `{${parts.join(',')}}`;
}

/** SHA-256 over the scenario with every default in it, as sha256: and 64 hexadecimal digits. */
export function fingerprint(scenario: Scenario): string {
  return `sha256:${createHash('sha256').update(canonicalJson(scenario)).digest('hex')}`;
}
