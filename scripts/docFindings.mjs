// What can be wrong with a page of the docs as text: dead links, files that are not there, words that must not be there.
// Used by scripts/docs.mjs and tests/docs.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

/** Words of unfinished work, and paths that exist on one machine only. */
const UNWANTED =
  /\b(?:TODO|FIXME|XXX|TBD|lorem ipsum|coming soon|placeholder)\b|\bshared\/|(?:^|[\s`"'(])\/(?:work|tmp|home|root)\//i;

/** Folders whose files the docs may name in backticks. */
const OUR_PATH = /^(?:src|docs|tests|scripts|scenarios|benchmarks|\.ci)\/[\w./-]+$/;

/** The text with fenced blocks emptied, line numbers kept. */
function withoutFences(text) {
  let fence;
  return text.split('\n').map((line) => {
    const mark = /^\s*(```+|~~~+)/.exec(line)?.[1];
    if (fence === undefined && mark === undefined) return line;
    if (fence === undefined) fence = mark;
    else if (mark?.startsWith(fence)) fence = undefined;
    return '';
  });
}

/** A heading as the anchor that leads to it. */
function anchorOf(heading) {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .trim()
    .replace(/\s/g, '-');
}

function anchorsIn(file) {
  const seen = new Map();
  return withoutFences(readFileSync(file, 'utf8')).flatMap((line) => {
    const heading = /^#{1,6}\s+(.*)$/.exec(line)?.[1];
    if (heading === undefined) return [];
    const anchor = anchorOf(heading);
    const times = seen.get(anchor) ?? 0;
    seen.set(anchor, times + 1);
    return [times === 0 ? anchor : `${anchor}-${times}`];
  });
}

function deadLink(root, file, target) {
  if (/^[a-z][a-z0-9+.-]*:/i.test(target)) return undefined;
  const [path, anchor] = target.split('#');
  const to = path === '' ? file : join(dirname(file), decodeURI(path));
  if (!existsSync(to)) return `links to ${relative(root, to)}, which is not there`;
  if (anchor === undefined || !to.endsWith('.md')) return undefined;
  return anchorsIn(to).includes(anchor) ? undefined : `links to #${anchor}, a heading that ${relative(root, to)} does not have`;
}

function linksIn(line) {
  return [...line.matchAll(/\]\(\s*<?([^)\s>]+)>?(?:\s+"[^"]*")?\s*\)/g), ...line.matchAll(/^\[[^\]]+\]:\s*(\S+)/g)].map(
    ([, target]) => target,
  );
}

function pathsIn(line) {
  return [...line.matchAll(/`([^`]+)`/g)].map(([, code]) => code).filter((code) => OUR_PATH.test(code));
}

/** Everything wrong with one page, as `file:line  what`. `file` is absolute, `root` the top of the repository. */
export function docFindings(root, file) {
  const name = relative(root, file);
  const whole = readFileSync(file, 'utf8').split('\n');
  const at = (index, what) => `${name}:${index + 1}  ${what}`;
  const unwanted = whole.flatMap((line, index) => {
    const word = UNWANTED.exec(line)?.[0];
    return word === undefined ? [] : [at(index, `has "${word.trim()}", which does not belong in the docs`)];
  });
  const dead = withoutFences(whole.join('\n')).flatMap((line, index) => [
    ...linksIn(line).flatMap((target) => {
      const what = deadLink(root, file, target);
      return what === undefined ? [] : [at(index, what)];
    }),
    ...pathsIn(line).flatMap((path) => (existsSync(join(root, path)) ? [] : [at(index, `names ${path}, which is not there`)])),
  ]);
  return [...unwanted, ...dead];
}
