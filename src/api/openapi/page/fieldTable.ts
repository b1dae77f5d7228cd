// Fields and parameters as a table: name, what it takes, what it means. Used by the sections of operations and schemas.
import type { Parameter, Schema } from '../openapiShape.ts';
import { type FieldRow, fieldRows } from './fieldRows.ts';
import { type Html, prose, tag } from './html.ts';
import { kindWords } from './kindWords.ts';

function defaultSaid({ schema, says }: FieldRow): string {
  const usual = schema.default;
  const isSaid = /default/i.test(says) || usual === undefined || typeof usual === 'object';
  return isSaid ? says : `${says} Default ${JSON.stringify(usual)}.`.trim();
}

/** Long names may be broken where one object ends and the next begins. */
function nameParts(name: string): readonly (Html | string)[] {
  return name.split(/(?<=\.)/).flatMap((part, index) => (index === 0 ? [part] : [tag('wbr', {}), part]));
}

function line(row: FieldRow): Html {
  const needed = row.isNeeded ? [tag('span', { class: 'needed' }, 'needed')] : [];
  return tag(
    'tr',
    {},
    tag('th', { scope: 'row' }, tag('code', {}, ...nameParts(row.name)), ...needed),
    tag('td', { class: 'kind' }, kindWords(row.schema)),
    tag('td', {}, prose(defaultSaid(row))),
  );
}

/** A line of its own before the fields of each kind of object. */
function lines(rows: readonly FieldRow[]): readonly Html[] {
  return rows.flatMap((row, index) => {
    const isNew = row.when !== undefined && row.when !== rows[index - 1]?.when;
    const heading = tag('tr', { class: 'when' }, tag('th', { colspan: '3', scope: 'rowgroup' }, row.when ?? ''));
    return isNew ? [heading, line(row)] : [line(row)];
  });
}

function table(caption: string, rows: readonly FieldRow[]): Html {
  const head = tag('tr', {}, ...['name', 'takes', 'meaning'].map((title) => tag('th', { scope: 'col' }, title)));
  return tag('table', {}, tag('caption', {}, caption), tag('thead', {}, head), tag('tbody', {}, ...lines(rows)));
}

export function fieldTable(caption: string, schema: Schema): readonly Html[] {
  const rows = fieldRows(schema);
  return rows.length === 0 ? [] : [table(caption, rows)];
}

export function parameterTable(caption: string, parameters: readonly Parameter[]): readonly Html[] {
  const rows = parameters.map(
    ({ name, schema, required = false, description }): FieldRow => ({ name, schema, isNeeded: required, says: description }),
  );
  return rows.length === 0 ? [] : [table(caption, rows)];
}
