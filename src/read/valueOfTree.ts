// Turns a YAML tree into a plain value, refusing what has no place in one: strange keys, tags, repeated keys, endless repeats.
import { type Alias, isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { FORBIDDEN_KEYS, PLAIN } from './forbiddenKeys.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { MAX_DEPTH, MAX_VALUES } from './limits.ts';
import { pointerOf, type Segment } from './pointer.ts';
import { shown } from './shown.ts';

const CORE_TAGS = new Set([
  '!',
  ...['str', 'int', 'float', 'bool', 'null', 'map', 'seq'].map((tag) => `tag:yaml.org,2002:${tag}`),
]);

/** A plain value, what was refused on the way, and which node each alias repeats. */
export type TreeValue = {
  readonly value: unknown;
  readonly errors: readonly CodedError[];
  readonly targets: ReadonlyMap<Alias, Node>;
};

type Walk = {
  readonly errors: CodedError[];
  readonly anchors: Map<string, Node>;
  readonly targets: Map<Alias, Node>;
  readonly open: Set<Node>;
  readonly met: Set<Node>;
  values: number;
  isFull: boolean;
};

function refuse(walk: Walk, ...error: Parameters<typeof inputErrorAt>): undefined {
  walk.errors.push(inputErrorAt(...error));
  return undefined;
}

function keyOf(pair: Pair): string | undefined {
  const key = pair.key;
  if (isScalar(key)) return key.value === null ? '' : String(key.value);
  return undefined;
}

function mapValue(walk: Walk, map: YAMLMap, path: readonly Segment[]): unknown {
  const value: Record<string, unknown> = {};
  for (const pair of map.items) {
    const key = keyOf(pair);
    if (key === undefined || FORBIDDEN_KEYS.has(key)) {
      const says = key === undefined ? 'A key is a list, an object or an alias.' : `The key ${shown(key)} may not be used.`;
      refuse(
        walk,
        'FORBIDDEN_KEY',
        pointerOf(key === undefined ? path : [...path, key]),
        says,
        'Use a plain word, or take it out.',
      );
      continue;
    }
    if (Object.hasOwn(value, key)) {
      const says = `The key ${shown(key)} stands here a second time.`;
      refuse(walk, 'DUPLICATE_KEY', pointerOf([...path, key]), says, 'Keep one of them.');
      continue;
    }
    value[key] = nodeValue(walk, pair.value, [...path, key]);
    if (walk.isFull) break;
  }
  return value;
}

function listValue(walk: Walk, list: YAMLSeq, path: readonly Segment[]): unknown {
  const value: unknown[] = [];
  for (const item of list.items) {
    value.push(nodeValue(walk, item, [...path, value.length]));
    if (walk.isFull) break;
  }
  return value;
}

function aliasValue(walk: Walk, alias: Alias, path: readonly Segment[]): unknown {
  const target = walk.targets.get(alias) ?? walk.anchors.get(alias.source);
  const name = shown(alias.source).slice(1, -1);
  if (target === undefined) {
    const says = `*${name} repeats something that is not marked &${name} above it.`;
    return refuse(walk, 'ALIAS_UNKNOWN', pointerOf(path), says, 'Mark it above, or write it out here.');
  }
  walk.targets.set(alias, target);
  if (walk.open.has(target)) {
    return refuse(walk, 'ALIAS_LOOP', pointerOf(path), `*${name} stands inside the very thing it repeats.`, 'Write it out here.');
  }
  return nodeValue(walk, target, path);
}

function scalarValue(walk: Walk, value: unknown, path: readonly Segment[]): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return refuse(walk, 'NOT_A_NUMBER', pointerOf(path), 'This is no number that can be counted with.', 'Write a plain number.');
  }
  return PLAIN.has(typeof value) || value === null ? value : String(value);
}

function contentOf(walk: Walk, node: Node, path: readonly Segment[]): unknown {
  if (isMap(node)) return mapValue(walk, node, path);
  if (isSeq(node)) return listValue(walk, node, path);
  return scalarValue(walk, isScalar(node) ? node.value : null, path);
}

function isTooMuch(walk: Walk, path: readonly Segment[]): boolean {
  walk.values += 1;
  if (walk.values > MAX_VALUES) {
    walk.isFull = true;
    const says = `There are more than ${MAX_VALUES} values, repeated ones counted each time.`;
    refuse(walk, 'TOO_MANY_VALUES', pointerOf(path), says, 'Leave out what the day does not need.');
    return true;
  }
  if (path.length <= MAX_DEPTH) return false;
  walk.isFull = true;
  const says = `Lists and objects lie more than ${MAX_DEPTH} levels inside one another.`;
  refuse(walk, 'TOO_DEEP', pointerOf(path), says, 'Write it flatter: a scenario needs 7.');
  return true;
}

function nodeValue(walk: Walk, node: unknown, path: readonly Segment[]): unknown {
  if (walk.isFull || isTooMuch(walk, path)) return undefined;
  if (isAlias(node)) return aliasValue(walk, node, path);
  if (!isMap(node) && !isSeq(node) && !isScalar(node)) return null;
  if (node.tag !== undefined && !CORE_TAGS.has(node.tag)) {
    const says = `The tag ${shown(node.tag.replace('tag:yaml.org,2002:', '!!'))} asks for a kind of value that has no place here.`;
    return refuse(walk, 'TAG_REFUSED', pointerOf(path), says, 'Take the tag out and write the value plainly.');
  }
  if (node.anchor !== undefined && !walk.met.has(node)) {
    walk.met.add(node);
    walk.anchors.set(node.anchor, node);
  }
  walk.open.add(node);
  const value = contentOf(walk, node, path);
  walk.open.delete(node);
  return value;
}

/** The plain value of a tree. */
export function valueOfTree(contents: unknown): TreeValue {
  const walk: Walk = {
    errors: [],
    anchors: new Map(),
    targets: new Map(),
    open: new Set(),
    met: new Set(),
    values: 0,
    isFull: false,
  };
  const value = nodeValue(walk, contents, []);
  return { value, errors: walk.errors, targets: walk.targets };
}
