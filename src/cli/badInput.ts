// An input that cannot be used, thrown by whatever met it and told to people in one place (run.ts).
import type { InputError, Reading } from '../model/inputError.ts';

export class BadInput extends Error {
  /** The file the errors are in, as the person named it; `-` is standard input. */
  readonly fileName: string;
  readonly errors: readonly InputError[];

  constructor(fileName: string, errors: readonly InputError[]) {
    super(errors.map((error) => error.code).join(', '));
    this.name = 'BadInput';
    this.fileName = fileName;
    this.errors = errors;
  }
}

/** The value of a reading; throws its errors as BadInput. */
export function mustRead<T>(fileName: string, reading: Reading<T>): T {
  if (!reading.ok) throw new BadInput(fileName, reading.errors);
  return reading.value;
}
