// Says in plain words what is wrong with the YAML or JSON text at one place.
import type { YAMLParseError, ErrorCode as YamlCode } from 'yaml';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';

type Sentences = { readonly says: string; readonly doThis: string };

const QUOTE = 'Put the text in double quotes: "like this".';
const INDENT = 'Line the keys of one object up under one another, with spaces, and close every bracket.';

const SENTENCES: { readonly [Code in YamlCode]?: Sentences } = {
  BAD_DQ_ESCAPE: {
    says: 'A backslash in double quotes is followed by a letter that means nothing.',
    doThis: 'Write \\\\ for a backslash.',
  },
  BAD_INDENT: {
    says: 'The spaces at the start of this line do not match the lines around it, or a bracket above is not closed.',
    doThis: INDENT,
  },
  BAD_SCALAR_START: { says: 'A text may not begin with this sign.', doThis: QUOTE },
  BLOCK_AS_IMPLICIT_KEY: { says: 'There is a second "key:" where a value is needed.', doThis: `${INDENT} ${QUOTE}` },
  BLOCK_IN_FLOW: {
    says: 'Lines with "-" or "key:" stand inside brackets.',
    doThis: 'Inside [ ] and { } put commas between the entries.',
  },
  DUPLICATE_KEY: { says: 'The same key stands twice in one object.', doThis: 'Keep one of them.' },
  MISSING_CHAR: { says: 'A sign is missing: a closing quote, a comma, a colon or a closing bracket.', doThis: 'Add it.' },
  MULTILINE_IMPLICIT_KEY: {
    says: 'A key runs over more than one line, or its colon is missing.',
    doThis: 'Write "key: value" on one line.',
  },
  KEY_OVER_1024_CHARS: { says: 'A key is longer than 1024 letters.', doThis: 'Shorten it.' },
  TAB_AS_INDENT: { says: 'This line begins with a tab.', doThis: 'Use spaces at the start of lines.' },
  UNEXPECTED_TOKEN: {
    says: 'Something stands here that does not belong: a sign too many, or one missing before it.',
    doThis: QUOTE,
  },
};

/** The error for one fault the YAML reader found. */
export function syntaxError(fault: YAMLParseError): CodedError {
  const known = SENTENCES[fault.code];
  const says = known?.says ?? 'The text is not well-formed here.';
  return inputErrorAt('SYNTAX', '', says, known?.doThis ?? 'Compare it with the example in docs/scenario.md.');
}
