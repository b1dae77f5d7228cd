// JSON text at the door: the value, or 400. YAML is a wider language, so JSON is asked of JSON's own parser first.
import type { InputError } from '../model/inputError.ts';
import { Problem } from './problem.ts';

const NO_JSON: InputError = {
  code: 'SYNTAX',
  path: '',
  says: 'The body is no JSON.',
  doThis: 'Write it as JSON, or send YAML with the content type application/yaml where the page of the API says so.',
};

/** `placed` may find the fault with its line and column; what it finds is told instead of the bare fact. */
export function jsonBody(text: string, placed: () => readonly InputError[] = () => []): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const found = placed().filter(({ code }) => code === 'SYNTAX' || code === 'EMPTY' || code === 'BINARY_TEXT');
    throw new Problem(400, NO_JSON.says, { errors: found.length === 0 ? [NO_JSON] : found });
  }
}
