// What a token may be: checked where it is set and where it is sent. Used by `serve` and `post`.
import type { SettingReading } from './setting.ts';

/** What a bearer token may be made of (RFC 6750, section 2.1, b64token). */
const TOKEN = /^[A-Za-z0-9._~+/-]+=*$/;
const LEAST = 16;

export function tokenText(text: string): SettingReading<string> {
  if (TOKEN.test(text) && text.length >= LEAST) return { value: text };
  // The text itself is not repeated: it is a secret, or was meant to be one.
  return {
    says: `it is shorter than ${LEAST} characters, or has others than letters, digits and -._~+/=`,
    doThis: 'give one such as "openssl rand -hex 32" prints',
  };
}
