// Requests as bytes on a socket: nothing in between puts right what is sent wrong. Used by the hostile requests.
import { connect } from 'node:net';

export type RawRequest = {
  /** What is hostile about it, for people who read a failure. */
  readonly what: string;
  readonly bytes: Buffer;
  /** Leave after so many milliseconds, answered or not. */
  readonly leaveAfterMs?: number;
  /** Whether more than one answer would mean that something was smuggled in. */
  readonly isOne?: boolean;
  /** Whether the answer may be that the connection ends: the request is no HTTP, or nobody waits for an answer. */
  readonly mayEnd?: boolean;
};

export type RawAnswer = {
  /** 0: the connection ended without one. */
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly text: string;
  /** How many answers came on the connection. */
  readonly count: number;
  /** Whether the answer had no end. */
  readonly isStuck?: boolean;
};

/** A request that has no end by then is stuck. */
const MOST_MS = 60_000;

const NO_ANSWER: RawAnswer = { status: 0, headers: {}, text: '', count: 0 };
const LINE_END = '\r\n';

/** A request from its parts; header values may be anything that bytes can say. */
export function rawBytes(
  method: string,
  target: string,
  headers: readonly (readonly [name: string, value: string])[],
  body: string | Uint8Array = '',
): Buffer {
  const head = [`${method} ${target} HTTP/1.1`, ...headers.map(([name, value]) => `${name}: ${value}`), '', ''].join(LINE_END);
  return Buffer.concat([Buffer.from(head, 'latin1'), typeof body === 'string' ? Buffer.from(body, 'utf8') : body]);
}

/** The body of chunks put together: RFC 9112 (Fielding, Nottingham, Reschke, 2022), section 7.1. */
function unchunked(body: Buffer): Buffer {
  const pieces: Buffer[] = [];
  let at = 0;
  for (;;) {
    const end = body.indexOf(LINE_END, at);
    const size = end === -1 ? 0 : Number.parseInt(body.toString('latin1', at, end), 16);
    if (!(size > 0)) return Buffer.concat(pieces);
    pieces.push(body.subarray(end + 2, end + 2 + size));
    at = end + 2 + size + 2;
  }
}

function answerIn(received: Buffer): RawAnswer {
  const all = received.toString('latin1');
  const count = [...all.matchAll(/(^|\n|\r)HTTP\/1\.1 [2-5]\d\d /g)].length;
  // An interim answer such as 100 comes before the answer.
  const from = all.search(/HTTP\/1\.1 [2-5]\d\d /);
  const headEnd = all.indexOf(`${LINE_END}${LINE_END}`, from);
  if (from === -1 || headEnd === -1) return NO_ANSWER;
  const [first = '', ...lines] = all.slice(from, headEnd).split(LINE_END);
  const headers = Object.fromEntries(
    lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 1).trim()]),
  );
  const body = received.subarray(headEnd + 4);
  const whole = headers['transfer-encoding'] === 'chunked' ? unchunked(body) : body;
  return { status: Number(first.split(' ')[1]), headers, text: whole.toString('utf8'), count };
}

/** Sends the bytes and reads until the connection ends. */
export function sendRaw(port: number, { bytes, leaveAfterMs }: RawRequest): Promise<RawAnswer> {
  return new Promise((resolve) => {
    let isStuck = false;
    const received: Buffer[] = [];
    const socket = connect({ port, host: '127.0.0.1' });
    const leave = setTimeout(() => {
      isStuck = leaveAfterMs === undefined;
      socket.destroy();
    }, leaveAfterMs ?? MOST_MS);
    socket.on('connect', () => socket.write(bytes));
    socket.on('data', (chunk) => received.push(chunk));
    // A server that has said what is wrong may hang up while the rest is still on its way.
    socket.on('error', () => socket.destroy());
    socket.on('close', () => {
      clearTimeout(leave);
      resolve({ ...answerIn(Buffer.concat(received)), isStuck });
    });
  });
}
