// SHA-256 of a text, as hexadecimal digits. Used by workTable.ts and postedTable.ts, to know a posted plan among the answers.
import { createHash } from 'node:crypto';

export function fingerprintOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}
