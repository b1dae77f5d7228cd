// Requests that are wrong as HTTP, written by hand: two lengths, folded headers, a request within a request, half a request. What a
// server must do with them is in RFC 9112 (HTTP/1.1), sections 2.2, 3, 5 and 6.
import { type RawRequest, rawBytes } from './rawRequest.ts';

const HOST = ['Host', 'localhost'] as const;
const CLOSE = ['Connection', 'close'] as const;
const JSON_TYPE = ['Content-Type', 'application/json'] as const;
const WITHIN = 'GET /metrics HTTP/1.1\r\nHost: localhost\r\n\r\n';

type Headers = readonly (readonly [string, string])[];

function posted(what: string, headers: Headers, body = ''): RawRequest {
  const bytes = rawBytes('POST', '/v1/plans?effort=1', [HOST, CLOSE, JSON_TYPE, ...headers], body);
  return { what, bytes, isOne: true, mayEnd: true };
}

function got(what: string, headers: Headers, target = '/healthz'): RawRequest {
  return { what, bytes: rawBytes('GET', target, [HOST, CLOSE, ...headers]), isOne: true, mayEnd: true };
}

function text(what: string, bytes: string): RawRequest {
  return { what, bytes: Buffer.from(bytes, 'latin1'), leaveAfterMs: 300, mayEnd: true };
}

const LENGTHS: readonly RawRequest[] = [
  posted(
    'length and chunks',
    [
      ['Content-Length', '6'],
      ['Transfer-Encoding', 'chunked'],
    ],
    `0\r\n\r\n${WITHIN}`,
  ),
  posted(
    'chunks and length',
    [
      ['Transfer-Encoding', 'chunked'],
      ['Content-Length', '3'],
    ],
    `1\r\nx\r\n0\r\n\r\n${WITHIN}`,
  ),
  posted(
    'two lengths',
    [
      ['Content-Length', '2'],
      ['Content-Length', '60'],
    ],
    `{}${WITHIN}`,
  ),
  posted('two equal lengths', [['Content-Length', '2, 2']], '{}'),
  posted('a length below nothing', [['Content-Length', '-1']], '{}'),
  posted('a length with a plus', [['Content-Length', '+2']], '{}'),
  posted('a length in hex', [['Content-Length', '0x2']], '{}'),
  posted('a length no number holds', [['Content-Length', '99999999999999999999']], '{}'),
  posted('chunks in another hand', [['Transfer-Encoding', 'xchunked']], `0\r\n\r\n${WITHIN}`),
  posted('chunks, then none', [['Transfer-Encoding', 'chunked, identity']], `0\r\n\r\n${WITHIN}`),
  posted('chunks under a blank', [['Transfer-Encoding ', 'chunked']], `0\r\n\r\n${WITHIN}`),
  posted('chunks under a tab', [['Transfer-Encoding', '\tchunked']], '2\r\n{}\r\n0\r\n\r\n'),
  posted('a chunk of no size', [['Transfer-Encoding', 'chunked']], 'zz\r\n{}\r\n0\r\n\r\n'),
  posted('a chunk of a size no number holds', [['Transfer-Encoding', 'chunked']], 'fffffffffffffffff\r\n{}\r\n0\r\n\r\n'),
  posted('a chunk with a long name', [['Transfer-Encoding', 'chunked']], `2;${'x'.repeat(20_000)}\r\n{}\r\n0\r\n\r\n`),
  posted('a trailer that is a length', [['Transfer-Encoding', 'chunked']], '2\r\n{}\r\n0\r\nContent-Length: 9\r\n\r\n'),
];

const HEADERS: readonly RawRequest[] = [
  got('two hosts', [['Host', 'bakery.example']]),
  got('a folded header', [['X-A', 'a\r\n b']]),
  got('a blank before the colon', [['Host ', 'localhost']]),
  got('a header of no name', [['', 'x']]),
  got('a name with blanks', [['X A', 'x']]),
  got('a zero in a header', [['X-A', 'a\u0000b']]),
  got('a bare line end in a header', [['X-A', 'a\rX-Injected: 1']]),
  got('a name of the request with a line end', [['X-Request-Id', 'a\nX-Injected: 1']]),
  got('a huge header', [['X-A', 'x'.repeat(40_000)]]),
  got(
    'a thousand headers',
    Array.from({ length: 1000 }, (_, n) => [`X-${n}`, 'x'] as const),
  ),
  got('many hosts in one', [
    ['X-Forwarded-Host', 'bakery.example'],
    ['X-Forwarded-For', '127.0.0.1, ::1'],
  ]),
  got('a cookie nobody set', [['Cookie', `a=${'%'.repeat(3000)}`]]),
  got('a language of a thousand parts', [['Accept', `${'a/b;q=0.1,'.repeat(700)}*/*`]]),
  got('an Accept that is none', [['Accept', ';;;,,,q=/']]),
  got('two tokens', [
    ['Authorization', 'Bearer a'],
    ['Authorization', 'Bearer b'],
  ]),
  got('wants another protocol', [
    ['Upgrade', 'websocket'],
    ['Connection', 'Upgrade'],
  ]),
  got('wants HTTP/2', [
    ['Upgrade', 'h2c'],
    ['HTTP2-Settings', 'AAMAAABkAAQAoAAAAAIAAAAA'],
  ]),
  got('a range past everything', [['Range', 'bytes=0-,0-,0-,5-1']], '/openapi.json'),
  got('a tag list without end', [['If-None-Match', `"x",${'W/"a",'.repeat(2000)}`]], '/v1/days/today/posted.svg'),
  posted(
    'expects what nobody does',
    [
      ['Expect', 'the-impossible'],
      ['Content-Length', '2'],
    ],
    '{}',
  ),
  posted(
    'expects 100',
    [
      ['Expect', '100-continue'],
      ['Content-Length', '2'],
    ],
    '{}',
  ),
  posted(
    'waits for ever',
    [
      ['Prefer', 'wait=99999999999999999999, wait=-1'],
      ['Content-Length', '2'],
    ],
    '{}',
  ),
  posted(
    'a key of odd letters',
    [
      ['Idempotency-Key', '"\u00ff\\"'],
      ['Content-Length', '2'],
    ],
    '{}',
  ),
  posted(
    'a huge key',
    [
      ['Idempotency-Key', 'k'.repeat(9000)],
      ['Content-Length', '2'],
    ],
    '{}',
  ),
];

const LINES: readonly RawRequest[] = [
  text('no HTTP', 'hello\r\n\r\n'),
  text('HTTP/0.9', 'GET /healthz\r\n\r\n'),
  text('HTTP/9.9', 'GET /healthz HTTP/9.9\r\nHost: localhost\r\n\r\n'),
  text('the words HTTP/2 begins with', 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'),
  text('the first bytes of TLS', '\u0016\u0003\u0001\u0002\u0000\u0001\u0000\u0001\u00fc\u0003\u0003'),
  text('no host', 'GET /healthz HTTP/1.1\r\nConnection: close\r\n\r\n'),
  text('bare line ends', 'GET /healthz HTTP/1.1\nHost: localhost\nConnection: close\n\n'),
  text('a way through', 'CONNECT example.org:443 HTTP/1.1\r\nHost: example.org:443\r\n\r\n'),
  text('an echo', 'TRACE /healthz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n'),
  text(
    'another server as address',
    'GET http://bakery.example/healthz HTTP/1.1\r\nHost: bakery.example\r\nConnection: close\r\n\r\n',
  ),
  text('an asterisk', 'OPTIONS * HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n'),
  text('a path of 20 kB', `GET /${'a'.repeat(20_000)} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`),
  text('half a request', 'POST /v1/plans HTTP/1.1\r\nHost: localhost\r\nContent-'),
  text(
    'half a body',
    'POST /v1/plans HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"a',
  ),
  text('many requests at once', 'GET /v1/scenarios HTTP/1.1\r\nHost: localhost\r\n\r\n'.repeat(40)),
];

export const SMUGGLING: readonly RawRequest[] = [...LENGTHS, ...HEADERS, ...LINES];
