// HTML by small pure functions: whatever is text is escaped, so that no word of a schema can become markup. Used by the page of the document.

/** Sound markup. Made by `tag` and `words` alone. */
export type Html = { readonly html: string };

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? '');
}

export function words(text: string): Html {
  return { html: escaped(text) };
}

/** Elements that have no end tag and no content. */
const EMPTY: ReadonlySet<string> = new Set(['meta', 'link', 'br', 'hr', 'wbr']);

export type Attributes = Readonly<Record<string, string>>;

export function tag(name: string, attributes: Attributes, ...children: readonly (Html | string)[]): Html {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  const open = `<${name}${written.join('')}>`;
  if (EMPTY.has(name)) return { html: open };
  const inside = children.map((child) => (typeof child === 'string' ? escaped(child) : child.html)).join('');
  return { html: `${open}${inside}</${name}>` };
}

export function all(...parts: readonly Html[]): Html {
  return { html: parts.map(({ html }) => html).join('') };
}

/** The parts with something between each two. */
export function joined(parts: readonly Html[], between: string): Html {
  return { html: parts.map(({ html }) => html).join(escaped(between)) };
}

/** Text in which `code` stands between backticks, as our descriptions have it. */
export function prose(text: string): Html {
  const pieces = text.split('`').map((piece, index) => (index % 2 === 0 ? words(piece) : tag('code', {}, piece)));
  return all(...pieces);
}
