// One operation on the page: what it is for, what it takes, what it answers, examples.
import type { Answer, Content, Method, OpenapiDocument, Operation, Parameter } from '../openapiShape.ts';
import { fieldTable, parameterTable } from './fieldTable.ts';
import { all, type Html, joined, prose, tag, words } from './html.ts';
import { kindWords } from './kindWords.ts';
import { answerOf, parameterOf } from './lookUp.ts';
import { requestLine } from './requestLine.ts';
import { referredIn } from './schemaAt.ts';

export type Placed = { readonly method: Method; readonly path: string; readonly operation: Operation };

const PLACES = [
  ['path', 'In the address'],
  ['query', 'In the query'],
  ['header', 'In headers'],
] as const;

function parameters(document: OpenapiDocument, { operation }: Placed): readonly Html[] {
  const taken: readonly Parameter[] = (operation.parameters ?? []).map((ref) => parameterOf(document, ref));
  return PLACES.flatMap(([place, title]) =>
    parameterTable(
      title,
      taken.filter((parameter) => parameter.in === place),
    ),
  );
}

function mediaTypes(content: Content): Html {
  const types = Object.entries(content).map(([type, { schema }]) => {
    const kind = referredIn(schema) === undefined ? [] : [words(': '), kindWords(schema)];
    return all(tag('code', {}, type), ...kind);
  });
  return joined(types, '; ');
}

function shown(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value, null, 2);
}

function examples(content: Content): readonly Html[] {
  return Object.entries(content).flatMap(([type, media]) =>
    Object.values(media.examples ?? {}).map(({ summary, value }) =>
      tag(
        'figure',
        {},
        tag('figcaption', {}, 'Example: ', summary, ', as ', tag('code', {}, type)),
        tag('pre', { tabindex: '0' }, shown(value)),
      ),
    ),
  );
}

function body({ operation }: Placed): readonly Html[] {
  const { requestBody } = operation;
  if (requestBody === undefined) return [];
  const { description, content } = requestBody;
  const tables = Object.values(content).flatMap(({ schema }) => fieldTable('Fields of the body', schema));
  return [
    tag('p', {}, tag('b', {}, 'Body. '), prose(description), ' ', mediaTypes(content), '.'),
    ...tables,
    ...examples(content),
  ];
}

function answerLine(status: string, answer: Answer): Html {
  const headers = Object.keys(answer.headers ?? {}).map((name) => tag('code', {}, name));
  const withHeaders = headers.length === 0 ? [] : [tag('p', { class: 'small' }, 'Headers: ', joined(headers, ', '))];
  const content = answer.content === undefined ? [] : [tag('p', { class: 'small' }, mediaTypes(answer.content))];
  return tag(
    'tr',
    {},
    tag('th', { scope: 'row' }, status),
    tag('td', {}, tag('p', {}, prose(answer.description)), ...content, ...withHeaders),
  );
}

function isProblem(answer: Answer): boolean {
  return Object.keys(answer.content ?? {}).includes('application/problem+json');
}

function answers(document: OpenapiDocument, { operation }: Placed): readonly Html[] {
  const told = Object.entries(operation.responses).map(([status, answer]) => [status, answerOf(document, answer)] as const);
  const good = told.filter(([, answer]) => !isProblem(answer));
  const links = told
    .filter(([, answer]) => isProblem(answer))
    .map(([status]) => tag('a', { href: `#problem-${status}` }, status));
  const lines = good.map(([status, answer]) => answerLine(status, answer));
  const samples = good.flatMap(([, { content = {} }]) => examples(content));
  return [
    tag('table', { class: 'answers' }, tag('caption', {}, 'Answers'), tag('tbody', {}, ...lines)),
    tag('p', { class: 'small' }, 'Problems: ', joined(links, ', '), '.'),
    ...samples,
  ];
}

export function operationSection(document: OpenapiDocument, placed: Placed): Html {
  const { operation } = placed;
  const description = operation.description === undefined ? [] : [tag('p', {}, prose(operation.description))];
  return tag(
    'section',
    { id: operation.operationId },
    tag('h3', {}, operation.summary),
    tag('p', { class: 'request' }, requestLine(placed)),
    ...description,
    ...parameters(document, placed),
    ...body(placed),
    ...answers(document, placed),
  );
}
