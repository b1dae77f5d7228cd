// Method and address of an operation, in code; a long address is broken where a part of it begins. Used by the contents and the sections.
import type { Method } from '../openapiShape.ts';
import { type Attributes, type Html, tag, words } from './html.ts';

type Addressed = { readonly method: Method; readonly path: string };

export function requestLine({ method, path }: Addressed, attributes: Attributes = {}): Html {
  const pieces = path.split(/(?=\/)/).flatMap((piece) => [tag('wbr', {}), words(piece)]);
  return tag('code', attributes, `${method.toUpperCase()} `, ...pieces);
}
