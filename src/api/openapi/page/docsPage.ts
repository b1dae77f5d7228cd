// The document as a page for people: contents, every operation, problems, every schema. Plain HTML without scripts. Served at /docs.
import { METHODS, type OpenapiDocument } from '../openapiShape.ts';
import { DOCS_STYLE } from './docsStyle.ts';
import { fieldTable } from './fieldTable.ts';
import { all, type Html, joined, prose, tag } from './html.ts';
import { kindWords, schemaAnchor } from './kindWords.ts';
import { answerOf } from './lookUp.ts';
import { operationSection, type Placed } from './operationSection.ts';
import { requestLine } from './requestLine.ts';
import { textOf } from './schemaAt.ts';

function placedOperations({ paths }: OpenapiDocument): readonly Placed[] {
  return Object.entries(paths).flatMap(([path, item]) =>
    METHODS.flatMap((method) => {
      const operation = item[method];
      return operation === undefined ? [] : [{ method, path, operation }];
    }),
  );
}

function groupAnchor(name: string): string {
  return `group-${name.toLowerCase().replace(/[^a-z]+/g, '-')}`;
}

const CONTENTS = 'contents';

/** The page is long: from each of its parts a way back. */
function part(anchor: string, title: string): Html {
  return tag('div', { class: 'part', id: anchor }, tag('h2', {}, title), tag('a', { href: `#${CONTENTS}` }, 'Contents'));
}

function contents({ tags, components }: OpenapiDocument, operations: readonly Placed[]): Html {
  const entry = (placed: Placed) =>
    tag(
      'li',
      {},
      tag('a', { href: `#${placed.operation.operationId}` }, placed.operation.summary),
      ' ',
      requestLine(placed, { class: 'at' }),
    );
  const groups = tags.map(({ name }) => {
    const own = operations.filter(({ operation }) => operation.tags[0] === name);
    return tag('li', {}, tag('a', { href: `#${groupAnchor(name)}` }, name), tag('ol', {}, ...own.map(entry)));
  });
  const problems = tag('li', {}, tag('a', { href: '#problems' }, 'Problems'));
  const kinds = Object.keys(components.schemas).map((name) => tag('a', { href: `#${schemaAnchor(name)}` }, name));
  const schemas = tag(
    'li',
    {},
    tag('a', { href: '#schemas' }, 'What is sent and answered'),
    tag('p', { class: 'kinds' }, joined(kinds, ', ')),
  );
  return tag(
    'nav',
    { 'aria-label': 'Contents', id: CONTENTS },
    tag('h2', {}, 'Contents'),
    tag('ol', {}, ...groups, problems, schemas),
  );
}

function groups(document: OpenapiDocument, operations: readonly Placed[]): readonly Html[] {
  return document.tags.flatMap(({ name, description }) => [
    part(groupAnchor(name), name),
    tag('p', {}, prose(description)),
    ...operations.filter(({ operation }) => operation.tags[0] === name).map((placed) => operationSection(document, placed)),
  ]);
}

function problemTable(document: OpenapiDocument): Html {
  const lines = Object.entries(document.components.responses).map(([name, answer]) => {
    const status = name.replace('Problem', '');
    return tag(
      'tr',
      { id: `problem-${status}` },
      tag('th', { scope: 'row' }, status),
      tag('td', {}, prose(answerOf(document, answer).description)),
    );
  });
  return tag('table', { class: 'answers' }, tag('tbody', {}, ...lines));
}

function problemSection(document: OpenapiDocument): readonly Html[] {
  const problem = tag('a', { href: `#${schemaAnchor('Problem')}` }, 'Problem');
  return [
    part('problems', 'Problems'),
    tag('p', {}, 'An answer that is an error is ', tag('code', {}, 'application/problem+json'), ' (RFC 9457): ', problem, '.'),
    problemTable(document),
  ];
}

function schemaSections({ components }: OpenapiDocument): readonly Html[] {
  const sections = Object.entries(components.schemas).map(([name, schema]) => {
    const fields = fieldTable('Fields', schema);
    const kind = fields.length === 0 ? [tag('p', {}, kindWords(schema))] : fields;
    return tag(
      'section',
      { id: schemaAnchor(name) },
      tag('h3', {}, name),
      tag('p', {}, prose(textOf(schema, 'description') ?? '')),
      ...kind,
    );
  });
  return [part('schemas', 'What is sent and answered'), ...sections];
}

function head(title: string): Html {
  return tag(
    'head',
    {},
    tag('meta', { charset: 'utf-8' }),
    tag('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    tag('title', {}, title),
    // An icon of its own, empty, so that no browser asks for one.
    tag('link', { rel: 'icon', href: 'data:,' }),
    // The style sheet is ours and holds nothing that would end the element.
    { html: `<style>${DOCS_STYLE}</style>` },
  );
}

export function docsPage(document: OpenapiDocument): string {
  const { info } = document;
  const operations = placedOperations(document);
  const title = `${info.title} ${info.version}`;
  const about = info.description.split('\n\n').map((paragraph) => tag('p', {}, prose(paragraph)));
  const own = tag(
    'p',
    { class: 'small' },
    'For programs: ',
    tag('a', { href: 'openapi.json' }, 'openapi.json'),
    ` (OpenAPI ${document.openapi}).`,
  );
  const page = tag(
    'html',
    { lang: 'en' },
    head(title),
    tag(
      'body',
      {},
      tag(
        'header',
        {},
        tag('h1', {}, info.title),
        tag('p', { class: 'small' }, `Version ${info.version}. ${info.summary}`),
        ...about,
        own,
      ),
      contents(document, operations),
      tag('main', {}, ...groups(document, operations), ...problemSection(document), ...schemaSections(document)),
      tag(
        'footer',
        {},
        tag(
          'p',
          { class: 'small' },
          'A plan is advice. Oven safety, people’s hours and rest, allergens and electrical work follow local law and licensed trades.',
        ),
      ),
    ),
  );
  return `<!doctype html>\n${all(page).html}\n`;
}
