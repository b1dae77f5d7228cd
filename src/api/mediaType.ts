// Which media types a route reads and writes: 415 before a body of another kind is read, 406 before work nobody can use.
import type { Request } from 'express';
import { Problem } from './problem.ts';

/** What readers of an answer may ask for, the first when they do not say. */
export function wantedType<T extends string>(request: Request, types: readonly T[]): T {
  const type = request.accepts([...types]);
  const wanted = types.find((each) => each === type);
  if (wanted === undefined) throw new Problem(406, `Answers here are ${types.join(', ')}.`);
  return wanted;
}

const CHARSET = /;\s*charset\s*=\s*"?([^\s;"]*)/i;

/** The media type of the body, which must be one of `types` in UTF-8. */
export function bodyType<T extends string>(request: Request, types: readonly [T, ...T[]]): T {
  const header = request.headers['content-type'] ?? '';
  const named = header.split(';')[0]?.trim().toLowerCase();
  const type = types.find((each) => each === named);
  const charset = CHARSET.exec(header)?.[1]?.toLowerCase() ?? 'utf-8';
  if (type !== undefined && (charset === 'utf-8' || charset === 'utf8')) return type;
  // RFC 9110 (Fielding, Nottingham, Reschke, 2022), section 15.5.16: Accept in the answer says what would have been read.
  throw new Problem(415, `Send ${types.join(' or ')} in UTF-8, and say so in Content-Type.`, {
    headers: { Accept: types.join(', ') },
  });
}
