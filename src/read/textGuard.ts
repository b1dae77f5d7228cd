// The first look at a text: not too large, no control characters, not empty. Used before anything takes it apart.
import type { CodedError } from './inputErrorAt.ts';
import { inputErrorAt } from './inputErrorAt.ts';

// biome-ignore lint/suspicious/noControlCharactersInRegex: finding control characters is the point.
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/;

/** What is wrong with the text as a whole; empty when it may be taken apart. */
export function textGuard(text: string, maxBytes: number, file: string): readonly CodedError[] {
  const isTooLong = text.length > maxBytes || new TextEncoder().encode(text).length > maxBytes;
  if (isTooLong) {
    const says = `${file} is larger than ${maxBytes / 1_000_000} MB.`;
    return [{ ...inputErrorAt('TOO_LARGE', '', says, 'Leave out what the day does not need.'), line: 1, column: 1 }];
  }
  const at = text.search(CONTROL);
  if (at >= 0) {
    const before = text.slice(0, at);
    const line = before.split('\n').length;
    const says = `${file} holds a control character or a broken letter, so it is no plain text.`;
    const column = at - before.lastIndexOf('\n');
    return [{ ...inputErrorAt('BINARY_TEXT', '', says, 'Save it as plain text in UTF-8.'), line, column }];
  }
  return [];
}
