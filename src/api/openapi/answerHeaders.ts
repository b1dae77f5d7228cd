// Headers of answers, by name. Shared components of the document.
import type { Header } from './openapiShape.ts';

function header(description: string, type: 'string' | 'integer' = 'string'): Header {
  return { description, schema: { type } };
}

export const HEADERS = {
  Location: header('Where the work, or what was kept, is to be found.'),
  'Preference-Applied': header('wait=n when the request waited (RFC 7240, section 3).'),
  'Retry-After': header('In how many seconds to ask again.', 'integer'),
  ETag: header('Names what was answered, for If-None-Match and If-Match (RFC 9110, section 8.8.3).'),
  'Cache-Control': header('How long the answer may be kept without asking.'),
  Accept: header('Media types that are read here.'),
  'WWW-Authenticate': header('Bearer: send the token of the service in Authorization (RFC 6750, section 3).'),
  RateLimit: header('How many requests are left in the minute.'),
  'RateLimit-Policy': header('How many requests a minute are answered.'),
} as const satisfies Readonly<Record<string, Header>>;

export type HeaderName = keyof typeof HEADERS;
