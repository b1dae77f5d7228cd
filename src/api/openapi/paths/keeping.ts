// Answers of what is kept and fetched with ETags, and of what is changed. Used by the paths of scenarios and days.
import type { Answer, Content, Ref } from '../openapiShape.ts';
import { problems } from '../problemAnswers.ts';
import { headerRefs, schemaRef } from '../refer.ts';
import type { SchemaName } from '../schemas.ts';

type Answers = Readonly<Record<string, Answer | Ref>>;

export function json(schema: SchemaName): Content {
  return { 'application/json': { schema: schemaRef(schema) } };
}

/** Fetched with its ETag, or 304 when the client has it; 412 when If-Match names another. */
export function fetched(description: string, content: Content): Answers {
  const headers = headerRefs('ETag', 'Cache-Control');
  return {
    200: { description, headers, content },
    304: { description: 'Unchanged: what If-None-Match names.', headers },
    ...problems(400, 404, 406, 412, 503),
  };
}

/** Put: 201 the first time, 200 afterwards. */
export function put(entry: SchemaName, headers: Readonly<Record<string, Ref>> = {}): Answers {
  const told = Object.keys(headers).length === 0 ? {} : { headers };
  return {
    200: { description: 'Kept as the next revision; or as it was, when nothing has changed.', ...told, content: json(entry) },
    201: { description: 'Kept: the first of it.', ...told, content: json(entry) },
    ...problems(400, 406, 412, 413, 415, 422, 503),
  };
}
