// Finds the line and column of a JSON Pointer in a YAML tree. Used to place errors.
import { type Alias, isAlias, isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import type { CodedError } from './inputErrorAt.ts';
import { segmentsOf } from './pointer.ts';
import type { YamlTree } from './yamlTree.ts';

/** Errors that speak of the key itself; the others speak of its value. */
const ABOUT_KEYS: ReadonlySet<string> = new Set(['UNKNOWN_KEY', 'DUPLICATE_KEY', 'FORBIDDEN_KEY']);

type Spot = { readonly offset: number; readonly node: unknown };

function startOf(node: unknown): number | undefined {
  return isMap(node) || isSeq(node) || isScalar(node) || isAlias(node) ? node.range?.[0] : undefined;
}

function isKey(pair: Pair, key: string): boolean {
  return isScalar(pair.key) && (pair.key.value === null ? '' : String(pair.key.value)) === key;
}

function spotIn(node: unknown, segment: string, isAboutKey: boolean): Spot | undefined {
  if (isSeq(node)) {
    const item = node.items[Number(segment)];
    const offset = startOf(item);
    return offset === undefined ? undefined : { offset, node: item };
  }
  if (!isMap(node)) return undefined;
  const pair = isAboutKey ? node.items.findLast((each) => isKey(each, segment)) : node.items.find((each) => isKey(each, segment));
  if (pair === undefined) return undefined;
  const isInner = isMap(pair.value) || isSeq(pair.value);
  const offset = isAboutKey || isInner ? startOf(pair.key) : (startOf(pair.value) ?? startOf(pair.key));
  return offset === undefined ? undefined : { offset, node: pair.value };
}

/** An error with the line and column of its place, or of the nearest place around it. */
export function placeInText(error: CodedError, tree: YamlTree, targets: ReadonlyMap<Alias, Node>): CodedError {
  if (error.line !== undefined) return error;
  const segments = segmentsOf(error.path);
  let offset = startOf(tree.document.contents) ?? 0;
  let node: unknown = tree.document.contents;
  for (const [depth, segment] of segments.entries()) {
    const inner: unknown = isAlias(node) ? targets.get(node) : node;
    const spot = spotIn(inner, segment, ABOUT_KEYS.has(error.code) && depth === segments.length - 1);
    if (spot === undefined) break;
    ({ offset, node } = spot);
  }
  const { line, col } = tree.lines.linePos(offset);
  return { ...error, line: Math.max(1, line), column: Math.max(1, col) };
}
