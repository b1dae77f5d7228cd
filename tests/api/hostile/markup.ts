// Whether SVG or HTML is what it should be and nothing that could run: every tag well formed, no element that loads or scripts, no
// attribute that does. Used on every answer to the hostile requests.

/** Beside prologue, comments and styles the empty icon, which keeps browsers from asking for one. */
const LEFT_OUT = /<link rel="icon" href="data:,">|<\?xml[^>]*\?>|<!doctype [a-z]+>|<!--[\s\S]*?-->|<style>[^<]*<\/style>/gi;
const TAG = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+(?:="[^"<]*")?)*)\s*\/?>/g;
const ATTRIBUTE = /([\w:-]+)(?:="([^"]*)")?/g;
const ELEMENTS =
  /^(script|foreignobject|iframe|frame|object|embed|image|use|set|animate\w*|base|link|form|input|button|audio|video)$/i;

function wrongAttribute([, name = '', value = '']: RegExpMatchArray): string | undefined {
  if (/^on/i.test(name)) return `the attribute ${name}`;
  if (/^(xlink:)?(href|src|action)$/i.test(name) && /^\s*(javascript|data|vbscript):/i.test(value)) return `${name} to ${value}`;
  return undefined;
}

/** What is wrong with it; empty when nothing is. */
export function wrongInMarkup(text: string): readonly string[] {
  const plain = text.replace(LEFT_OUT, '');
  const tags = [...plain.matchAll(TAG)];
  const elements = tags.map(([, , name = '']) => name).filter((name) => ELEMENTS.test(name));
  const attributes = tags.flatMap(([, , , attributes = '']) => [...attributes.matchAll(ATTRIBUTE)].map(wrongAttribute));
  const rest = plain.replace(TAG, '');
  return [
    ...elements.map((name) => `the element ${name}`),
    ...attributes.filter((wrong) => wrong !== undefined),
    ...(rest.includes('<') ? [`a < that begins no tag: ${rest.slice(rest.indexOf('<'), rest.indexOf('<') + 40)}`] : []),
  ];
}
