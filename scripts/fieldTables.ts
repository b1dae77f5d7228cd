// Fills the tables of docs/scenario.md from the schemas' own descriptions. Used by writeSchemas.ts and its test.
type Json = Readonly<Record<string, unknown>>;

const TABLE = /(<!-- table: (\S+) -->\n)[\s\S]*?(<!-- end -->)/g;

function isJson(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function jsonAt(value: unknown, key: string): Json {
  const inner = isJson(value) ? value[key] : undefined;
  return isJson(inner) ? inner : {};
}

function listAt(value: Json, key: string): readonly unknown[] {
  const inner = value[key];
  return Array.isArray(inner) ? inner : [];
}

function stepNamed(items: Json, step: string): Json {
  const found = listAt(items, 'oneOf').find((option) => jsonAt(jsonAt(option, 'properties'), 'do').const === step);
  if (!isJson(found)) throw new Error(`the schema has no step ${step}`);
  return found;
}

/** The object a table is about: "scenario.products[].steps[bake]". */
function objectAt(schemas: ReadonlyMap<string, Json>, place: string): Json {
  const [root = '', ...parts] = place.split('.');
  const object = parts.reduce<Json>((schema, part) => {
    const [, key = '', brackets, step = ''] = /^(\w+)(\[(\w*)\])?$/.exec(part) ?? [];
    const value = jsonAt(jsonAt(schema, 'properties'), key);
    if (brackets === undefined) return value;
    const items = jsonAt(value, 'items');
    return step === '' ? items : stepNamed(items, step);
  }, schemas.get(root) ?? {});
  if (!isJson(object.properties)) throw new Error(`the schema has no object at ${place}`);
  return object;
}

/** Bounds worth telling: the largest whole number a computer holds exactly is none. */
function boundsOf({ minimum, maximum }: Json): string {
  const low = typeof minimum === 'number' && minimum > Number.MIN_SAFE_INTEGER ? minimum : undefined;
  const high = typeof maximum === 'number' && maximum < Number.MAX_SAFE_INTEGER ? maximum : undefined;
  if (low === undefined) return high === undefined ? '' : `, at most ${high}`;
  return high === undefined ? `, at least ${low}` : `, ${low} to ${high}`;
}

function textKind({ pattern, format }: Json): string {
  if (format === 'date') return 'date';
  if (typeof pattern !== 'string') return 'text';
  if (pattern.startsWith('^[A-Za-z0-9]')) return 'id';
  return pattern.includes(':[0-5]') ? 'clock time' : 'text';
}

function countOf({ minItems, maxItems }: Json): string {
  if (typeof maxItems !== 'number') return '';
  return typeof minItems === 'number' ? `, ${minItems} to ${maxItems}` : `, at most ${maxItems}`;
}

function choiceText(options: readonly unknown[]): string {
  const [first, second] = options.filter(isJson);
  const isRange = second?.type === 'array';
  if (isRange) return `${kindOf(first ?? {})}, or [at least, at most] of such`;
  return options.filter(isJson).map(kindOf).join(', or ');
}

/** What may stand as the value, in words. */
function kindOf(schema: Json): string {
  const words = listAt(schema, 'enum');
  if (words.length > 0) return words.map((word) => `\`${word}\``).join(', ');
  if (schema.const !== undefined) return `\`${schema.const}\``;
  const options = listAt(schema, 'anyOf');
  if (options.length > 0) return choiceText(options);
  switch (schema.type) {
    case 'integer':
      return `whole number${boundsOf(schema)}`;
    case 'number':
      return `number${boundsOf(schema)}`;
    case 'boolean':
      return 'true or false';
    case 'string':
      return textKind(schema);
    case 'array': {
      const inner = jsonAt(schema, 'items');
      const of = inner.type === 'object' || inner.oneOf !== undefined ? 'objects' : kindOf(inner);
      return `list of ${of}${countOf(schema)}`;
    }
    default:
      return isJson(schema.additionalProperties) ? `ingredients, each a ${kindOf(schema.additionalProperties)}` : 'object';
  }
}

function whenAbsent(schema: Json, isNeeded: boolean): string {
  if (isNeeded) return 'needed';
  const value = schema.default;
  if (value === undefined) return 'may be absent';
  return isJson(value) ? 'see its table' : `\`${JSON.stringify(value)}\``.replaceAll('"', '');
}

function meaningOf(schema: Json): string {
  const text = typeof schema.description === 'string' ? schema.description : '';
  return schema.default === undefined ? text : text.replace(/ ?Default:? [^.]*\.$/, '');
}

function tableOf(object: Json): string {
  const needed = new Set(listAt(object, 'required'));
  const rows = Object.entries(jsonAt(object, 'properties')).map(([key, value]) => {
    const schema = isJson(value) ? value : {};
    const cells = [`\`${key}\``, kindOf(schema), whenAbsent(schema, needed.has(key)), meaningOf(schema)];
    return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  });
  return ['| key | value | absent | meaning |', '| --- | --- | --- | --- |', ...rows, ''].join('\n');
}

/** The page with every table written anew. */
export function fieldTables(page: string, schemas: ReadonlyMap<string, Json>): string {
  return page.replaceAll(
    TABLE,
    (_, before: string, place: string, after: string) => `${before}\n${tableOf(objectAt(schemas, place))}\n${after}`,
  );
}

/** Places in the page that have a table. */
export function tablePlaces(page: string): readonly string[] {
  return [...page.matchAll(TABLE)].map((match) => match[2] ?? '');
}
