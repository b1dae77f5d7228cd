// The smallest SVG builder: nodes as data, escaped once when they are rendered. Everything in draw/ returns these nodes.

export type Attributes = Readonly<Record<string, string | number | undefined>>;

export type SvgNode = {
  readonly tag: string;
  readonly attributes: Attributes;
  readonly children: readonly (SvgNode | string)[];
};

/** Builds one element. Numbers are millimetres and are written with at most two decimals. */
export function el(tag: string, attributes: Attributes, children: readonly (SvgNode | string)[] = []): SvgNode {
  return { tag, attributes, children };
}

/** A group that a screen reader announces by its label. */
export function group(label: string, children: readonly SvgNode[]): SvgNode {
  return el('g', { role: 'group', 'aria-label': label }, children);
}

// Characters XML 1.0 forbids (section 2.2), and the marks that would turn the writing direction of the whole line.
// biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the point.
const UNWANTED = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/g;
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text made safe for XML content and attribute values. */
export function escapeXml(text: string): string {
  return text
    .replace(UNWANTED, '')
    .replace(LONE_SURROGATE, '\ufffd')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '');
}

function numberText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a length: ${value}`);
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}

function attributeText([name, value]: readonly [string, string | number | undefined]): string {
  if (value === undefined) return '';
  return ` ${name}="${typeof value === 'number' ? numberText(value) : escapeXml(value)}"`;
}

/** SVG text of a node and all below it. */
export function render(node: SvgNode): string {
  const attributes = Object.entries(node.attributes).map(attributeText).join('');
  if (node.children.length === 0) return `<${node.tag}${attributes}/>`;
  const isText = node.children.some((child) => typeof child === 'string');
  const inside = node.children.map((child) => (typeof child === 'string' ? escapeXml(child) : render(child)));
  // Inside text a line break would be drawn as a blank.
  if (isText || node.tag === 'text') return `<${node.tag}${attributes}>${inside.join('')}</${node.tag}>`;
  return `<${node.tag}${attributes}>\n${inside.join('\n')}\n</${node.tag}>`;
}
