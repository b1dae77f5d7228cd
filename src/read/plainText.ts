// Text in, plain value out, with a way to place errors in the text. The shared door of scenarios and written plans.
import { isScalar } from 'yaml';
import type { InputError, Reading } from '../model/inputError.ts';
import { errorList } from './errorList.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { MAX_TEXT_BYTES } from './limits.ts';
import { placeInText } from './placeInText.ts';
import { textGuard } from './textGuard.ts';
import { valueOfTree } from './valueOfTree.ts';
import { yamlTree } from './yamlTree.ts';

/** A value with what was refused in it, and the function that lists errors with their line and column. */
export type PlainText = {
  readonly value: unknown;
  readonly refused: readonly CodedError[];
  readonly list: (further: readonly CodedError[]) => readonly InputError[];
};

const asItIs = (error: CodedError): CodedError => error;

function unreadable(errors: readonly CodedError[]): Reading<PlainText> {
  return { ok: false, errors: errorList(errors, [], asItIs) };
}

/** Reads YAML or JSON text into a plain value. `file` names it in sentences; `example` is the page that shows one. */
export function plainText(text: string, file: string, example = 'docs/scenario.md'): Reading<PlainText> {
  const withoutMark = text.startsWith('\ufeff') ? text.slice(1) : text;
  const guarded = textGuard(withoutMark, MAX_TEXT_BYTES, file);
  if (guarded.length > 0) return unreadable(guarded);
  const read = yamlTree(withoutMark);
  if (!read.ok) return unreadable(read.errors);
  const { tree } = read;
  const contents = tree?.document.contents ?? null;
  if (tree === undefined || contents === null || (isScalar(contents) && contents.value === null)) {
    const doThis = `Start from the example in ${example}.`;
    return unreadable([{ ...inputErrorAt('EMPTY', '', `${file} holds nothing.`, doThis), line: 1, column: 1 }]);
  }
  const { value, errors, targets } = valueOfTree(contents);
  const list = (further: readonly CodedError[]): readonly InputError[] =>
    errorList(errors, further, (error) => placeInText(error, tree, targets));
  return { ok: true, value: { value, refused: errors, list } };
}
