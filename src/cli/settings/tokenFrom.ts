// The token from whichever of its two places names one: a variable, or a file. Used by `serve` and `post`.
import { readFileSync } from 'node:fs';
import type { InputError } from '../../model/inputError.ts';
import { errorCode } from '../errorCode.ts';
import { tokenText } from './tokenText.ts';

/** A place that names a token: what it is called, and what it says. */
export type TokenPlace = { readonly name: string; readonly text: string };

export type TokenReading = { readonly token: string | null; readonly errors: readonly InputError[] };

function wrong(path: string, says: string, doThis: string): TokenReading {
  return { token: null, errors: [{ code: 'SETTING_WRONG', path, says, doThis }] };
}

function fromFile({ name, text }: TokenPlace): TokenReading {
  let content: string;
  try {
    content = readFileSync(text, 'utf8');
  } catch (error) {
    return wrong(
      name,
      `the file ${text} cannot be read (${errorCode(error)})`,
      'name a file that holds the token and nothing else',
    );
  }
  // Editors end a file with a line end; it is no part of the token.
  const reading = tokenText(content.trim());
  if ('value' in reading) return { token: reading.value, errors: [] };
  return wrong(name, `the token in ${text} cannot be used: ${reading.says}`, reading.doThis);
}

/** `token` is the token itself, `file` the name of a file; both only when nobody can tell which is meant. */
export function tokenFrom(token: TokenPlace | null, file: TokenPlace | null): TokenReading {
  if (token !== null && file !== null) {
    const says = `${token.name} and ${file.name} both name a token`;
    return { token: null, errors: [{ code: 'SETTING_TWICE', path: file.name, says, doThis: 'take one of them away' }] };
  }
  if (file !== null) return fromFile(file);
  if (token === null) return { token: null, errors: [] };
  const reading = tokenText(token.text);
  return 'value' in reading ? { token: reading.value, errors: [] } : wrong(token.name, reading.says, reading.doThis);
}
