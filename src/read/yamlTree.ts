// Takes a YAML or JSON text apart into one document tree, refusing what is too deep, too much, or no YAML.
// YAML 1.2.2 (Ben-Kiki, Evans, döt Net, 2021), core schema; JSON is read as the part of YAML it is.
import type { CST } from 'yaml';
import { Composer, type Document, Lexer, LineCounter, Parser } from 'yaml';
import { syntaxError } from './brokenSyntax.ts';
import type { CodedError } from './inputErrorAt.ts';
import { inputErrorAt } from './inputErrorAt.ts';
import { MAX_DEPTH, MAX_LEXEMES } from './limits.ts';

/** A document with what is needed to say where in the text a node stands. */
export type YamlTree = { readonly document: Document; readonly lines: LineCounter };

type Tokens = { readonly ok: true; readonly tokens: readonly CST.Token[] } | { readonly ok: false; readonly error: CodedError };

function placed(error: CodedError, lines: LineCounter, offset: number): CodedError {
  const { line, col } = lines.linePos(offset);
  return { ...error, line: Math.max(1, line), column: Math.max(1, col) };
}

/** Tokens of the text. Stops early: the next stage calls itself once per level, and too deep a text would end the process. */
function tokensOf(text: string, lines: LineCounter): Tokens {
  const parser = new Parser(lines.addNewLine);
  lines.addNewLine(0);
  const tokens: CST.Token[] = [];
  let lexemes = 0;
  let offset = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    offset += lexeme.length;
    lexemes += 1;
    if (parser.stack.length > 2 * MAX_DEPTH) {
      const says = `Lists and objects lie more than ${MAX_DEPTH} levels inside one another.`;
      return {
        ok: false,
        error: placed(inputErrorAt('TOO_DEEP', '', says, 'Write it flatter: a scenario needs 7.'), lines, offset),
      };
    }
    if (lexemes > MAX_LEXEMES) {
      const says = `The text holds more than ${MAX_LEXEMES} words and signs.`;
      const error = inputErrorAt('TOO_MANY_VALUES', '', says, 'Leave out what the day does not need.');
      return { ok: false, error: placed(error, lines, offset) };
    }
  }
  for (const token of parser.end()) tokens.push(token);
  return { ok: true, tokens };
}

function documentsOf(tokens: readonly CST.Token[], lines: LineCounter): readonly Document[] {
  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    lineCounter: lines,
    prettyErrors: false,
    strict: true,
    merge: false,
    stringKeys: false,
    uniqueKeys: false,
  });
  return [...composer.compose(tokens)];
}

function secondDocument(tokens: readonly CST.Token[], lines: LineCounter): CodedError | undefined {
  const second = tokens.filter((token) => token.type === 'document')[1];
  if (second === undefined) return undefined;
  const says = 'A second document begins here; a file holds one.';
  const error = inputErrorAt('SEVERAL_DOCUMENTS', '', says, 'Put each in a file of its own, and take out the line "---".');
  return placed(error, lines, second.offset);
}

/** What follows a fault on its line is mostly the same fault once more. */
function firstOfEachLine(errors: readonly CodedError[]): readonly CodedError[] {
  const firstByLine = new Map<number | undefined, CodedError>();
  for (const error of errors) {
    const first = firstByLine.get(error.line);
    if (first === undefined || (error.column ?? 0) < (first.column ?? 0)) firstByLine.set(error.line, error);
  }
  return [...firstByLine.values()];
}

/** The tree of a text, or every syntax error in it. A text without any value gives an undefined tree. */
export function yamlTree(
  text: string,
): { readonly ok: true; readonly tree: YamlTree | undefined } | { readonly ok: false; readonly errors: readonly CodedError[] } {
  const lines = new LineCounter();
  const read = tokensOf(text, lines);
  if (!read.ok) return { ok: false, errors: [read.error] };
  const second = secondDocument(read.tokens, lines);
  if (second !== undefined) return { ok: false, errors: [second] };
  const document = documentsOf(read.tokens, lines)[0];
  if (document === undefined) {
    const stray = read.tokens.find((token) => token.type === 'error' || token.type === 'directive');
    if (stray === undefined) return { ok: true, tree: undefined };
    const says = 'This is neither a key with a value nor a list entry.';
    const error = inputErrorAt('SYNTAX', '', says, 'Write "key: value" lines, or take this line out.');
    return { ok: false, errors: [placed(error, lines, stray.offset)] };
  }
  if (document.errors.length > 0) {
    return {
      ok: false,
      errors: firstOfEachLine(document.errors.map((fault) => placed(syntaxError(fault), lines, fault.pos[0]))),
    };
  }
  return { ok: true, tree: { document, lines } };
}
