// An answer that is an error: status, sentence, headers and the input errors. Thrown anywhere in the service, told by answerProblem.ts.
import { STATUS_CODES } from 'node:http';
import type { InputError } from '../model/inputError.ts';

export type ProblemStatus = 400 | 401 | 404 | 405 | 406 | 409 | 412 | 413 | 415 | 421 | 422 | 428 | 429 | 500 | 503;

type Extras = { readonly errors?: readonly InputError[]; readonly headers?: Readonly<Record<string, string>> };

/** Problem details as in RFC 9457 (Nottingham, Wilde, Dalal, 2023), with our input errors beside its own members. */
type ProblemBody = {
  readonly type: 'about:blank';
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly errors?: readonly InputError[];
};

export class Problem extends Error {
  readonly status: ProblemStatus;
  readonly headers: Readonly<Record<string, string>>;
  readonly errors: readonly InputError[];

  constructor(status: ProblemStatus, detail: string, { errors = [], headers = {} }: Extras = {}) {
    super(detail);
    this.name = 'Problem';
    this.status = status;
    this.errors = errors;
    this.headers = headers;
  }

  /** With the type about:blank the title is the phrase of the status (RFC 9457, section 4.2.1). */
  body(): ProblemBody {
    const { status, message, errors } = this;
    const told = errors.length === 0 ? {} : { errors };
    return { type: 'about:blank', title: STATUS_CODES[status] ?? '', status, detail: message, ...told };
  }
}
