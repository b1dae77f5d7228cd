// Hostile requests from a seed: any method, path, query, headers and body, and those written by hand. Used by the suite and by run.ts.
import fc from 'fast-check';
import { type HostileBody, hostileBody } from './hostileBodies.ts';
import { namedScenario } from './namedScenario.ts';
import { type RawRequest, rawBytes } from './rawRequest.ts';
import { SMUGGLING } from './smuggling.ts';

/** What others have asked the service before: ids to look at, stop and mix up. */
export type World = { readonly ids: readonly string[] };

type Header = readonly [string, string];

const METHODS = ['GET', 'GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'PROPFIND', 'TRACE'];
const KINDS = ['plans', 'fits', 'comparisons', 'replans'];
const NO_IDS = [
  '__proto__',
  'constructor',
  '0',
  '-1',
  'x'.repeat(300),
  '%00',
  '%2e%2e%2f',
  '..',
  "' OR 1=1 --",
  '<script>',
  '%ff',
  '%',
];
const DATES = ['today', 'tomorrow', '2026-02-30', '2026-05-16', '0000-00-00', '99999-01-01', '%00', '__proto__', '-1'];
const NAMES = [
  'saturday',
  '__proto__',
  '..',
  '%2e%2e',
  '%2fetc%2fpasswd',
  'a/../../b',
  '<script>',
  '%E2%80%AE',
  'x'.repeat(400),
  "a';DROP TABLE scenarios",
];
const SUFFIXES = ['', '.svg', '.ics', '.txt', '.json', '.html', '.svg/', '/events', '/events/', '.svg.svg', '.%73vg', '%00.svg'];
const PATHS = [
  '/',
  '//',
  '/%',
  '/%00',
  '/.git/config',
  '/package.json',
  '/../../../etc/passwd',
  '/..%2f..%2fetc%2fpasswd',
  '/v1',
  '/v1/',
  '/V1/plans',
  '/v1/plans/',
  '/v1//plans',
  '/v1/plans/%2e%2e/days',
  '/healthz',
  '/readyz',
  '/metrics',
  '/openapi.json',
  '/docs',
  '/docs/',
  '/docs/../package.json',
  '/v1/checks',
  '/v1/scenarios',
  '/\\\\bakery.example/x',
  '/v1/plans;a=b',
  '/v1/plans#x',
  '/v1/plans?',
];
const QUERIES = [
  '',
  '',
  '?effort=1&seconds=0.2',
  '?effort=1&effort=2',
  '?effort[]=1',
  '?__proto__[x]=1',
  '?seconds=1e99',
  '?seconds=-1',
  '?seed=NaN',
  '?page=0',
  '?page=99999999999',
  '?page=1;drop',
  '?%',
  '?%00=%ff',
  `?${'a=1&'.repeat(900)}`,
  '?x=<script>alert(1)</script>',
  '?\u00e4=\u00ff',
];
const ODD_HEADERS: readonly Header[] = [
  ['Accept', 'image/svg+xml'],
  ['Accept', 'text/plain'],
  ['Accept', 'text/calendar'],
  ['Accept', 'text/html,*/*;q=0.1'],
  ['Accept', 'application/pdf'],
  ['Accept', 'text/event-stream'],
  ['Prefer', 'wait=0'],
  ['Prefer', 'wait=1'],
  ['Prefer', 'respond-async, wait=abc'],
  ['Idempotency-Key', 'same'],
  ['Idempotency-Key', '"a b"'],
  ['If-Match', '*'],
  ['If-Match', '"1"'],
  ['If-Match', 'W/"x", y'],
  ['If-None-Match', '*'],
  ['If-Unmodified-Since', 'soon'],
  ['X-Request-Id', '<script>alert(1)</script>'],
  ['X-Request-Id', 'fine-1'],
  ['Content-Encoding', 'gzip'],
  ['Content-Encoding', 'br, gzip'],
  ['Origin', 'http://bakery.example'],
  ['X-HTTP-Method-Override', 'DELETE'],
  ['Last-Event-ID', '99999999999999999999'],
  ['Last-Event-ID', 'end'],
  ['Forwarded', 'for="[::1]";host=bakery.example'],
  ['Accept-Charset', 'utf-7'],
  ['Transfer-Encoding', 'gzip'],
  ['Host', 'bakery.example'],
];

const from = (texts: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...texts);

function pathTo({ ids }: World): fc.Arbitrary<string> {
  const id = from([...ids, ...NO_IDS]);
  return fc.oneof(
    {
      weight: 3,
      arbitrary: fc.tuple(from(KINDS), id, from(SUFFIXES)).map(([kind, one, suffix]) => `/v1/${kind}/${one}${suffix}`),
    },
    { weight: 2, arbitrary: from([...KINDS, 'checks']).map((kind) => `/v1/${kind}`) },
    {
      weight: 2,
      arbitrary: fc
        .tuple(
          from(DATES),
          from(['/posted', '/posted.svg', '/posted.ics', '/posted/history', '/posted/history/1', '/happened', '']),
        )
        .map(([date, what]) => `/v1/days/${date}${what}`),
    },
    {
      weight: 2,
      arbitrary: fc
        .tuple(from(NAMES), from(['', '/history', '/history/-1', '/history/1e9', '/plans']))
        .map(([name, what]) => `/v1/scenarios/${name}${what}`),
    },
    { weight: 2, arbitrary: from(PATHS) },
    { weight: 1, arbitrary: fc.webPath() },
  );
}

/** The target of a request may hold no blanks and line ends as they are: RFC 9112, section 3.2. */
function target(path: string, query: string): string {
  return `${path}${query}`.replace(/\s/g, '%20');
}

function anyRequest(world: World): fc.Arbitrary<RawRequest> {
  const parts = fc.record({
    method: from(METHODS),
    path: pathTo(world),
    query: from(QUERIES),
    headers: fc.array(fc.constantFrom(...ODD_HEADERS), { maxLength: 4 }),
    sent: fc.option(hostileBody, { nil: undefined, freq: 2 }),
  });
  return parts.map(({ method, path, query, headers, sent }) => {
    const body = sent === undefined ? '' : sent.body;
    const about: readonly Header[] =
      sent === undefined
        ? []
        : [
            ['Content-Type', sent.type],
            ['Content-Length', String(Buffer.byteLength(body))],
          ];
    const own: readonly Header[] = headers.some(([name]) => name === 'Host') ? [] : [['Host', 'localhost']];
    const bytes = rawBytes(method, target(path, query), [...own, ['Connection', 'close'], ...about, ...headers], body);
    const follows = /\/events\/?$/.test(path) && method === 'GET';
    const what = `${method} ${path}${query.slice(0, 40)} with ${sent?.what ?? 'no body'} and ${headers.map((header) => header.join(': ').slice(0, 50)).join(', ') || 'no odd header'}`;
    // Two headers of one kind, or chunks that are none, are refused before the app: the connection then ends as it may.
    return {
      what,
      bytes,
      mayEnd: headers.some(([name]) => name === 'Transfer-Encoding'),
      ...(follows ? { leaveAfterMs: 300 } : {}),
    };
  });
}

const FORMATS = ['image/svg+xml', 'text/plain', 'text/calendar', 'application/json'];

function posting(path: string, { what, type, body }: HostileBody, accept: string): RawRequest {
  const headers: readonly Header[] = [
    ['Host', 'localhost'],
    ['Connection', 'close'],
    ['Content-Type', type],
    ['Content-Length', String(Buffer.byteLength(body))],
    ['Accept', `${accept}, application/json;q=0.5`],
    ['Prefer', 'wait=3'],
  ];
  const query = path === '/v1/checks' ? '' : '?effort=1&seconds=0.2';
  return { what: `POST ${path} with ${what} for ${accept}`, bytes: rawBytes('POST', `${path}${query}`, headers, body) };
}

/** Good in all but the body. */
const wellAddressed = fc
  .tuple(from(['/v1/plans', '/v1/checks', '/v1/fits', '/v1/comparisons', '/v1/replans']), hostileBody, from(FORMATS))
  .map(([path, body, accept]) => posting(path, body, accept));

/** Good in all but the names: these are planned, judged and drawn. */
const wellMade = fc.tuple(namedScenario, from(FORMATS)).map(([body, accept]) => posting('/v1/plans', body, accept));

export function hostileRequest(world: World): fc.Arbitrary<RawRequest> {
  return fc.oneof(
    { weight: 5, arbitrary: anyRequest(world) },
    { weight: 3, arbitrary: wellAddressed },
    { weight: 2, arbitrary: wellMade },
    { weight: 2, arbitrary: fc.constantFrom(...SMUGGLING) },
  );
}
